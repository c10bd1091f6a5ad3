import { type KeySignature, keyOfFifths } from '../pitch/key.js';
import { isNoteLetter } from '../pitch/pitch.js';
import { childNamed, childNumber, childrenNamed, type XmlElement } from '../source/xml-element.js';

/** Longest bar a time signature can ask for, in quarters, and the beat-type of its shortest unit. */
const LONGEST_BAR = 1000;
const SHORTEST_BEAT = 1024;
/** No instrument sounds further from what is written, in semitones; what is beyond is not read. */
const FURTHEST_TRANSPOSITION = 60;

/** Time signature; `nominalQuarters` null in unmeasured music. */
export interface TimeSignature {
  readonly beats: number;
  readonly beatType: number;
  readonly nominalQuarters: number | null;
}

/**
 * @param time `time` element
 * @returns the signature; composite ones (3+2 over 8, 2/4 + 3/8) are counted in their shortest unit; null when unreadable
 *
 * Source: MusicXML 4.0, `time`, `beats`, `beat-type`, `senza-misura`.
 */
export function readTime(time: XmlElement): TimeSignature | null {
  if (childNamed(time, 'senza-misura') !== undefined) return { beats: 4, beatType: 4, nominalQuarters: null };
  const beats = childrenNamed(time, 'beats').map((e) => sumOf(e.text));
  const types = childrenNamed(time, 'beat-type').map((e) => Number(e.text));
  let quarters = 0;
  for (let i = 0; i < beats.length; i++) quarters += ((beats[i] ?? Number.NaN) * 4) / (types[i] ?? Number.NaN);
  const beatType = Math.max(...types);
  if (!(quarters > 0) || quarters > LONGEST_BAR || types.some((type) => !(type > 0)) || beatType > SHORTEST_BEAT) {
    return null;
  }
  return { beats: (quarters * beatType) / 4, beatType, nominalQuarters: quarters };
}

function sumOf(text: string): number {
  return text.split('+').reduce((sum, term) => sum + Number(term), 0);
}

/**
 * @param key `key` element
 * @returns what it does to each letter, for the circle of fifths and for signatures of any letters
 *
 * Source: MusicXML 4.0, `key`: `fifths`, or pairs of `key-step` and `key-alter`.
 */
export function readKey(key: XmlElement): KeySignature {
  const fifths = childNumber(key, 'fifths');
  if (fifths !== null) return keyOfFifths(fifths);
  const steps = childrenNamed(key, 'key-step').map((e) => e.text);
  const alters = childrenNamed(key, 'key-alter').map((e) => Number(e.text));
  return Object.fromEntries(steps.flatMap((step, i) => (isNoteLetter(step) ? [[step, alters[i] ?? 0]] : [])));
}

/**
 * @param transpose `transpose` element
 * @param concertScore the document is written at concert pitch, so that only octaves are left to add
 * @returns whole semitones to add to the written pitch to get the sounding one
 *
 * Source: MusicXML 4.0, `transpose` (chromatic steps plus 12 for each octave-change), `concert-score`.
 */
export function readTranspose(transpose: XmlElement, concertScore: boolean): number {
  const chromatic = concertScore ? 0 : (childNumber(transpose, 'chromatic') ?? 0);
  const semitones = Math.round(chromatic + 12 * (childNumber(transpose, 'octave-change') ?? 0));
  return Math.abs(semitones) <= FURTHEST_TRANSPOSITION ? semitones : 0;
}
