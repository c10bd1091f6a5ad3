import { groupBy, isMeasured, median } from '../base/index.js';
import type { MeasureId } from '../standards/index.js';
import { MEASURES } from './measures.js';
import type { ProgressEtude, ProgressPlayer } from './progress-result-schema.js';

type Section = ProgressEtude['section'];

/**
 * The players of one étude together: the middle of each measure week by week, and what became of each bar.
 *
 * @param players all who played it, numbers as the document has them
 * @param bars the étude's bars in order
 * @returns the section's part of the document
 */
export function sectionOverWeeks(players: readonly ProgressPlayer[], bars: readonly string[]): Section {
  const weeks = [...new Set(players.flatMap(({ days }) => days.map(({ week }) => week)))].sort();
  return {
    weeks,
    medians: MEASURES.map(({ id }) => ({
      measure: id,
      weeks: weeks.flatMap((week) => {
        const values = players.flatMap((player) => valueIn(player, id, week));
        return values.length === 0 ? [] : [{ week, value: median(values), players: values.length }];
      }),
    })),
    bars: barsTogether(players, bars),
  };
}

/** Mean of a player's days in one week. */
function valueIn(player: ProgressPlayer, id: MeasureId, week: string): number[] {
  const followed = player.measures.find((one) => one.measure === id);
  const days = new Set(player.days.filter((day) => day.week === week).map(({ date }) => date));
  const values = (followed?.days ?? []).flatMap(({ date, value }) =>
    days.has(date) && isMeasured<number>(value) ? [value] : [],
  );
  return values.length === 0 ? [] : [values.reduce((sum, value) => sum + value, 0) / values.length];
}

function barsTogether(players: readonly ProgressPlayer[], bars: readonly string[]): Section['bars'] {
  const order = new Map(bars.map((bar, i) => [bar, i]));
  const stories = players.flatMap((player) => player.bars.map((story) => ({ player: player.player, story })));
  const together = [...groupBy(stories, ({ story }) => JSON.stringify([story.bar, story.kind])).values()];
  return together
    .flatMap((group) => {
      const { story } = group[0] as (typeof group)[number];
      const who = (of: typeof group) => of.map(({ player }) => player);
      const had = group.filter((one) => one.story.days.slice(0, -1).includes('fix'));
      const have = group.filter((one) => one.story.days.at(-1) === 'fix');
      const open = had.filter((one) => ['eased', 'not-judged'].includes(one.story.status));
      const mastered = had.length > 0 && have.length + open.length === 0;
      const { bar, criterion, kind } = story;
      return [{ bar, criterion, kind, had: who(had), have: who(have), open: who(open), mastered }];
    })
    .sort((a, b) => (order.get(a.bar) ?? 0) - (order.get(b.bar) ?? 0) || (a.kind < b.kind ? -1 : 1));
}
