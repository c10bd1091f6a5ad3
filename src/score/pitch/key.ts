import type { NoteLetter } from '../types.js';

/** Alteration of each letter by the key signature, in semitones; letters that are not named are natural. */
export type KeySignature = Readonly<Partial<Record<NoteLetter, number>>>;

const ORDER_OF_SHARPS: readonly NoteLetter[] = ['F', 'C', 'G', 'D', 'A', 'E', 'B'];

/**
 * @param fifths sharps (positive) or flats (negative) in the signature; beyond 7 the first letters are altered twice
 * @returns what the signature does to each letter
 *
 * Source: order of sharps F C G D A E B, of flats backwards: common practice; MusicXML 4.0, `fifths`.
 */
export function keyOfFifths(fifths: number): KeySignature {
  const key: Partial<Record<NoteLetter, number>> = {};
  const signs = Math.min(Math.abs(Math.trunc(fifths)), 14);
  for (let i = 0; i < signs; i++) {
    const letter = ORDER_OF_SHARPS[fifths > 0 ? i % 7 : 6 - (i % 7)] as NoteLetter;
    key[letter] = (key[letter] ?? 0) + Math.sign(fifths);
  }
  return key;
}
