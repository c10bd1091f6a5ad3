import { isMeasured } from '../base/index.js';
import type { MeasureId } from '../standards/index.js';
import type { BarStory, ProgressPlayer } from './progress-result-schema.js';

/** What the section over weeks needs of one player: little, so that all players need not be in memory. */
export interface SectionShare {
  readonly player: string;
  /** Mondays of the weeks with a take, one a day of takes */
  readonly weeks: readonly string[];
  /** mean of the player's days in a week, by measure and week */
  readonly means: ReadonlyMap<MeasureId, ReadonlyMap<string, number>>;
  readonly bars: readonly (Pick<BarStory, 'bar' | 'criterion' | 'kind' | 'status'> & {
    /** to fix on an earlier day */
    readonly had: boolean;
    /** to fix on the latest day */
    readonly has: boolean;
  })[];
}

/**
 * @param player with one étude, numbers as the document has them
 * @returns what the section needs of it
 */
export function sectionShare({ player, days, measures, bars }: ProgressPlayer): SectionShare {
  const weekOfDay = new Map(days.map(({ date, week }) => [date, week]));
  return {
    player,
    weeks: days.map(({ week }) => week),
    means: new Map(measures.map(({ measure, days: numbers }) => [measure, meansByWeek(numbers, weekOfDay)])),
    bars: bars.map(({ bar, criterion, kind, status, days: marks }) => ({
      ...{ bar, criterion, kind, status },
      ...{ had: marks.slice(0, -1).includes('fix'), has: marks.at(-1) === 'fix' },
    })),
  };
}

function meansByWeek(
  numbers: ProgressPlayer['measures'][number]['days'],
  weekOfDay: ReadonlyMap<string, string>,
): Map<string, number> {
  const byWeek = new Map<string, number[]>();
  for (const { date, value } of numbers) {
    const week = weekOfDay.get(date);
    if (week === undefined || !isMeasured<number>(value)) continue;
    byWeek.set(week, [...(byWeek.get(week) ?? []), value]);
  }
  return new Map(
    [...byWeek].map(([week, values]) => [week, values.reduce((sum, value) => sum + value, 0) / values.length]),
  );
}
