import { isMeasured, median, notMeasured } from '../../base/index.js';
import type { NoteContext } from '../context/context.js';
import type { LevelMeasure } from '../types.js';

const LEAST_NOTES = 2;

/**
 * @param context the take with its notes measured
 * @param index first note
 * @param toIndex last note
 * @returns levels in dBFS of the notes of the stretch that were played and measured
 */
export function noteLevels(context: NoteContext, index: number, toIndex: number): number[] {
  return context.notes
    .slice(index, toIndex + 1)
    .filter((n) => context.part.notes[n.index]?.grace === false)
    .map((n) => n.levelDb)
    .filter(isMeasured<number>);
}

/**
 * Level under each dynamic mark: median of its notes, before the next mark and before a hairpin begins.
 *
 * @param context the take with its notes measured
 * @returns one entry a mark, in performed order
 *
 * The median so that one accent or one cracked note does not count.
 */
export function measureLevels(context: NoteContext): LevelMeasure[] {
  return context.part.dynamics.map((d) => {
    const levels = noteLevels(context, d.index, d.toIndex);
    const place = { mark: d.mark, index: d.index, toIndex: d.toIndex, bar: d.bar, pass: d.pass };
    if (levels.length < LEAST_NOTES) return { ...place, levelDb: notMeasured('too-few-under-this-mark') };
    return { ...place, levelDb: median(levels) };
  });
}
