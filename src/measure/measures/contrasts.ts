import { isMeasured, type MaybeNumber, median, notMeasured, robustSpread } from '../../base/index.js';
import type { LevelContext, NoteContext, OwnLoudness } from '../context.js';
import type { ContrastMeasure, LevelMeasure } from '../types.js';
import { noteLevels } from './levels.js';

/** Standard error of a median over that of a mean, for normal data. Source: Kenney & Keeping 1962. */
const MEDIAN_ERROR_FACTOR = 1.2533;

/**
 * Level differences between neighbouring different marks.
 *
 * @param context the take with its notes measured
 * @param levels level under each mark
 * @returns second minus first in dB, raw and with the register curve taken out, with a 95 % interval
 *
 * Source: definition; interval from the spread of the notes under each mark.
 */
export function measureContrasts(context: LevelContext, levels: readonly LevelMeasure[]): ContrastMeasure[] {
  const own = context.ownLoudness;
  return levels.slice(1).flatMap((to, k): ContrastMeasure[] => {
    const from = levels[k]!;
    if (from.mark === to.mark) return [];
    const place = { from: from.mark, to: to.mark, index: to.index, bar: to.bar, pass: to.pass };
    if (!isMeasured(from.levelDb) || !isMeasured(to.levelDb)) {
      const why = notMeasured(`too few notes were heard under ${isMeasured(from.levelDb) ? to.mark : from.mark}`);
      return [{ ...place, differenceDb: why, registerAdjustedDb: why }];
    }
    const differenceDb = to.levelDb - from.levelDb;
    const error = Math.hypot(medianError(context, from), medianError(context, to));
    const intervalDb = [differenceDb - 1.96 * error, differenceDb + 1.96 * error] as const;
    return [{ ...place, differenceDb, registerAdjustedDb: adjusted(context, own, from, to), intervalDb }];
  });
}

function medianError(context: NoteContext, level: LevelMeasure): number {
  const levels = noteLevels(context, level.index, level.toIndex);
  return (MEDIAN_ERROR_FACTOR * robustSpread(levels)) / Math.sqrt(levels.length);
}

function adjusted(context: NoteContext, own: OwnLoudness | null, from: LevelMeasure, to: LevelMeasure): MaybeNumber {
  if (own === null) return notMeasured('too few notes to know how loud the instrument is by itself in each register');
  const level = (mark: LevelMeasure) =>
    median(
      context.notes
        .slice(mark.index, mark.toIndex + 1)
        .flatMap((n) => (isMeasured(n.levelDb) ? [n.levelDb - own.of(n.index)] : [])),
    );
  return level(to) - level(from);
}
