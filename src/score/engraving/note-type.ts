import { SAME_PLACE } from '../printed/types.js';

const TYPES: readonly (readonly [quarters: number, name: string])[] = [
  [8, 'breve'],
  [4, 'whole'],
  [2, 'half'],
  [1, 'quarter'],
  [0.5, 'eighth'],
  [0.25, '16th'],
  [0.125, '32nd'],
  [0.0625, '64th'],
];

/**
 * @param quarters sounding length outside tuplets
 * @returns name of the note value and number of dots, null when no single note lasts so long
 *
 * Source: MusicXML 4.0, `note-type-value`.
 */
export function noteTypeOf(quarters: number): { readonly type: string; readonly dots: number } | null {
  for (const [plain, type] of TYPES) {
    for (const [dots, factor] of [1, 1.5, 1.75].entries()) {
      if (Math.abs(plain * factor - quarters) < SAME_PLACE) return { type, dots };
    }
  }
  return null;
}
