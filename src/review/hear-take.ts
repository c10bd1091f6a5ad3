import { type Alignment, alignTake } from '../align/index.js';
import type { Take } from '../decode/index.js';
import { type Features, listen, type PitchRange } from '../features/index.js';
import type { Part } from '../score/index.js';
import { listeningRange } from './listening-range.js';

/** A take that fits nothing may still be the part an octave lower, or transposed: then it is heard with more room. */
const MORE_ROOM_SEMITONES = 12;

/** A take as heard, and where the part is in it. */
export interface HeardTake {
  readonly features: Features;
  readonly alignment: Alignment;
}

/**
 * Listens in the range of the part; a take that turns out to sound in another range is listened to again in that one,
 * so that its lowest notes get windows long enough and its highest ones are within reach.
 *
 * @param take decoded recording
 * @param part the part
 * @returns what was heard and how it fits
 */
export function hearTake(take: Take, part: Part): HeardTake {
  const range = listeningRange(part);
  const first = hear(take, part, range);
  const { fit, offsetSemitones } = first.alignment;
  if (fit === 'other') {
    const wider = hear(take, part, { ...range, lowestMidi: range.lowestMidi - MORE_ROOM_SEMITONES });
    return wider.alignment.fit === 'this-part' ? wider : first;
  }
  if (offsetSemitones === 0) return first;
  return hear(take, part, {
    lowestMidi: range.lowestMidi + offsetSemitones,
    highestMidi: range.highestMidi + offsetSemitones,
  });
}

function hear(take: Take, part: Part, range: PitchRange): HeardTake {
  const features = listen(take, range);
  return { features, alignment: alignTake(features, part) };
}
