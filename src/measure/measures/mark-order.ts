import { isMeasured, median, medianInterval } from '../../base/index.js';
import type { LevelContext } from '../context/context.js';
import type { MarkLevel, MarkOrderMeasure, MarkPair } from '../types.js';

/** Marks from soft to loud. Source: common practice. */
const ORDER = ['pppp', 'ppp', 'pp', 'p', 'mp', 'mf', 'f', 'ff', 'fff', 'ffff'];
const LEAST_NOTES = 6;

/**
 * Whether the marks of the take stand in their order: all passages under one mark together against all under another,
 * neighbours or not.
 *
 * @param context the take with its notes measured
 * @returns the level of each mark with its 95 % interval, dBFS, and the pairs that are surely the wrong way round
 *
 * Error of a median Kenney & Keeping 1962.
 */
export function measureMarkOrder(context: LevelContext): MarkOrderMeasure {
  const marks = ORDER.flatMap((mark) => levelOf(context, mark));
  const reversed = marks.flatMap((softer, k) =>
    marks.slice(k + 1).flatMap((louder): MarkPair[] => {
      if (softer.intervalDb[0] <= louder.intervalDb[1]) return [];
      return [{ softer: softer.mark, louder: louder.mark, byDb: softer.levelDb - louder.levelDb }];
    }),
  );
  return { marks, reversed };
}

function levelOf(context: LevelContext, mark: string): MarkLevel[] {
  const { part, notes, ownLoudness } = context;
  const levels = part.dynamics
    .filter((d) => d.mark === mark)
    .flatMap((d) => notes.slice(d.index, d.toIndex + 1))
    .flatMap((n) =>
      isMeasured(n.levelDb) && !part.notes[n.index]!.grace ? [n.levelDb - (ownLoudness?.of(n.index) ?? 0)] : [],
    );
  if (levels.length < LEAST_NOTES) return [];
  return [{ mark, levelDb: median(levels), count: levels.length, intervalDb: medianInterval(levels) }];
}
