import { isMeasured, type MaybeNumber, median, medianError, notMeasured } from '../../base/index.js';
import type { LevelContext, NoteContext, OwnLoudness } from '../context/context.js';
import type { ContrastMeasure, LevelMeasure } from '../types.js';
import { noteLevels } from './levels.js';

/**
 * Level differences between neighbouring different marks.
 *
 * @param context the take with its notes measured
 * @param levels level under each mark
 * @returns second minus first in dB, raw and with the register curve taken out, with a 95 % interval
 *
 * Interval from the spread of the notes under each mark.
 */
export function measureContrasts(context: LevelContext, levels: readonly LevelMeasure[]): ContrastMeasure[] {
  const own = context.ownLoudness;
  return levels.slice(1).flatMap((to, k): ContrastMeasure[] => {
    const from = levels[k]!;
    if (from.mark === to.mark) return [];
    const place = { from: from.mark, to: to.mark, index: to.index, bar: to.bar, pass: to.pass };
    if (!isMeasured(from.levelDb) || !isMeasured(to.levelDb)) {
      const why = notMeasured('too-few-under-mark', { mark: isMeasured(from.levelDb) ? to.mark : from.mark });
      return [{ ...place, differenceDb: why, registerAdjustedDb: why }];
    }
    const differenceDb = to.levelDb - from.levelDb;
    const error = Math.hypot(errorOf(context, from), errorOf(context, to));
    const intervalDb = [differenceDb - 1.96 * error, differenceDb + 1.96 * error] as const;
    return [{ ...place, differenceDb, registerAdjustedDb: adjusted(context, own, from, to), intervalDb }];
  });
}

function errorOf(context: NoteContext, level: LevelMeasure): number {
  return medianError(noteLevels(context, level.index, level.toIndex));
}

function adjusted(context: NoteContext, own: OwnLoudness | null, from: LevelMeasure, to: LevelMeasure): MaybeNumber {
  if (own === null) return notMeasured('registers-unknown');
  const level = (mark: LevelMeasure) =>
    median(
      context.notes
        .slice(mark.index, mark.toIndex + 1)
        .flatMap((n) => (isMeasured(n.levelDb) ? [n.levelDb - own.of(n.index)] : [])),
    );
  return level(to) - level(from);
}
