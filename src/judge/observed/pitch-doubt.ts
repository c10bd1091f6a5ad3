import { midiToHz } from '../../base/index.js';
import type { JudgeInput } from './judge-input.js';

/** Where the pitch changes is seen no more exactly than so many periods of the lower note are long. */
const PERIODS = 3;

/**
 * What low notes add to the error of an onset: three periods take 20 ms on the lowest note of a trombone's staff, 60 ms at the
 * bottom of a tuba.
 *
 * @param input one take
 * @param from first note
 * @param to last note
 * @returns seconds beyond the error of any onset; 0 for notes above about 200 Hz
 *
 * Source: a pitch is told from three to four periods of the lowest note (see `features`); standard onsetError.
 */
export function pitchDoubt({ part, alignment, standards }: JudgeInput, from: number, to: number): number {
  const pitches = part.notes.slice(from, to + 1).map((n) => n.soundingMidi + alignment.offsetSemitones);
  return Math.max(0, PERIODS / midiToHz(Math.min(...pitches)) - standards.onsetError.value);
}
