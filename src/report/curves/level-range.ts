import { isMeasured, quantile } from '../../base/index.js';
import type { TakeResult } from '../../result/index.js';
import type { BarRow } from '../bars/bar-rows.js';
import { type Loudness, loudnessCurve } from './loudness-curve.js';
import type { LevelRange } from './loudness-panel.js';
import type { TimeStretch } from './score-axis.js';

/**
 * @param row bars on one axis
 * @param loudness of the recording
 * @param stretches where the recording stands in the score
 * @returns loudness over the row, dBFS a point of width, NaN where nothing was played
 */
export function rowCurve(row: BarRow, loudness: Loudness, stretches: readonly TimeStretch[]): Float64Array {
  const bins = Math.max(2, Math.round((row.toQuarters - row.fromQuarters) * row.scale));
  return loudnessCurve(loudness, stretches, row.fromQuarters, row.toQuarters, bins);
}

/**
 * @param curves loudness of all rows of a take, dBFS
 * @param result the take
 * @returns from the loudest playing, which is called 0, down to a little below the softest
 */
export function levelRange(curves: readonly Float64Array[], result: TakeResult): LevelRange {
  const heard = curves.flatMap((curve) => [...curve].filter((db) => !Number.isNaN(db)));
  const levels = result.levels.map(({ levelDb }) => levelDb).filter(isMeasured<number>);
  const reference = heard.length === 0 ? 0 : quantile(heard, 0.99);
  const soft = Math.min(heard.length === 0 ? reference - 24 : quantile(heard, 0.05), ...levels) - reference;
  return { referenceDb: reference, topDb: 5, bottomDb: Math.max(-42, Math.min(-15, soft - 3)) };
}
