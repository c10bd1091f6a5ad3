import type { Sheet } from '../../page/index.js';
import type { TakeResult } from '../../result/index.js';
import type { Part } from '../../score/index.js';
import { loudnessRowHeight } from './loudness-panel.js';

/** Points at the left of a row for the numbers of its scale. */
export const SCALE_WIDTH = 26;
/** Height of the tempo under the loudness, and the white between both, points. */
export const TEMPO_HEIGHT = 36;
export const TEMPO_GAP = 6;

/**
 * @param sheet pages being filled
 * @returns points a row of bars may take beside its scale
 */
export function rowWidth(sheet: Sheet): number {
  return sheet.width - SCALE_WIDTH;
}

/**
 * @param part the part
 * @param tempo of the take
 * @returns points a row takes beyond its loudness panel
 */
export function heightAroundPanel(part: Part, tempo: TakeResult['tempo']): number {
  return loudnessRowHeight(part, 0) + ('notMeasured' in tempo ? 0 : TEMPO_GAP + TEMPO_HEIGHT);
}
