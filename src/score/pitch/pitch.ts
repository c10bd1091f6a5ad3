import type { NoteLetter, WrittenPitch } from '../types.js';

const SEMITONES_ABOVE_C: Readonly<Record<NoteLetter, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

/**
 * @param pitch letter, alteration in semitones, octave (C4 = middle C)
 * @returns MIDI note number as printed; a fraction for microtones
 *
 * Source: MIDI 1.0 detailed specification (middle C = 60); MusicXML 4.0, `octave` (4 = the octave from middle C).
 */
export function midiOfWritten(pitch: WrittenPitch): number {
  return 12 * (pitch.octave + 1) + SEMITONES_ABOVE_C[pitch.step] + pitch.alter;
}

/**
 * @param text content of a MusicXML `step`
 * @returns true when it is one of the seven letters
 *
 * Source: MusicXML 4.0, `step`.
 */
export function isNoteLetter(text: string): text is NoteLetter {
  return Object.hasOwn(SEMITONES_ABOVE_C, text);
}
