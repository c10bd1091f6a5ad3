import type { NoteLetter, WrittenPitch } from '../../score/index.js';

const SIGNS: ReadonlyMap<number, string> = new Map([
  [-2, '♭♭'],
  [-1, '♭'],
  [0, ''],
  [1, '♯'],
  [2, '♯♯'],
]);
const SEMITONES: Readonly<Record<NoteLetter, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
const LETTERS: readonly NoteLetter[] = ['C', 'D', 'E', 'F', 'G', 'A', 'B'];

/**
 * @param pitch letter and alteration
 * @returns name without octave, e.g. `B♭`; a natural is just its letter
 *
 * Source: common practice.
 */
export function noteName(pitch: Pick<WrittenPitch, 'step' | 'alter'>): string {
  return pitch.step + (SIGNS.get(pitch.alter) ?? '');
}

/**
 * Names a played pitch as the player would think of it: a plain letter where there is one (C, never B♯), else on the letter
 * of the written note if that is close, else with the simplest sign, flats beside flats.
 *
 * @param writtenMidi played pitch as the player would write it, MIDI number
 * @param written the note on the page
 * @returns name without octave
 *
 * Source: common practice.
 */
export function playedName(writtenMidi: number, written: WrittenPitch): string {
  const onLetter = ((((writtenMidi - SEMITONES[written.step]) % 12) + 18) % 12) - 6;
  const pitchClass = ((writtenMidi % 12) + 12) % 12;
  const plain = LETTERS.find((letter) => SEMITONES[letter] === pitchClass);
  if (plain !== undefined) return plain;
  if (Math.abs(onLetter) === 1) return noteName({ step: written.step, alter: onLetter });
  const alter = written.alter < 0 ? -1 : 1;
  return noteName({ step: LETTERS.find((letter) => (SEMITONES[letter] + alter + 12) % 12 === pitchClass)!, alter });
}
