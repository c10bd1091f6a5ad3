import { InputError } from '../../base/index.js';
import type { Part } from '../types.js';

/** An étude without barlines has some hundred quarters. */
const LONGEST_BAR_QUARTERS = 4000;
/** MIDI numbers: from below the lowest to above the highest note of any instrument. */
const LOWEST_MIDI = 0;
const HIGHEST_MIDI = 127;

/**
 * @param part a part as read
 * @throws InputError `score-refused` when a bar is longer, or a note lower or higher, than anyone can play
 *
 * Source: MIDI 1.0 detailed specification (note numbers 0 to 127); the length: definition.
 */
export function checkPlayable({ bars, notes }: Pick<Part, 'bars' | 'notes'>): void {
  const long = bars.find((bar) => bar.lengthQuarters > LONGEST_BAR_QUARTERS);
  if (long !== undefined) {
    const quarters = Number(long.lengthQuarters.toPrecision(3));
    throw new InputError('bar-too-long', { bar: long.bar, quarters, most: LONGEST_BAR_QUARTERS });
  }
  const strange = notes.find(({ soundingMidi }) => soundingMidi < LOWEST_MIDI || soundingMidi > HIGHEST_MIDI);
  if (strange === undefined) return;
  const where = strange.soundingMidi < LOWEST_MIDI ? 'lower' : 'higher';
  throw new InputError('note-beyond-instruments', { bar: strange.bar, where });
}
