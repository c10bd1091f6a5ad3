import { byCodePoint, groupBy, median } from '../base/index.js';
import { MEASURES } from './measures.js';
import type { ProgressEtude } from './progress-result-schema.js';
import type { SectionShare } from './section-share.js';

type Section = ProgressEtude['section'];

/**
 * The players of one étude together: the middle of each measure week by week, and what became of each bar.
 *
 * @param players what is needed of all who played it
 * @param bars the étude's bars in order
 * @returns the section's part of the document
 */
export function sectionOverWeeks(players: readonly SectionShare[], bars: readonly string[]): Section {
  const weeks = [...new Set(players.flatMap((player) => player.weeks))].sort();
  return {
    weeks,
    medians: MEASURES.map(({ id }) => ({
      measure: id,
      weeks: weeks.flatMap((week) => {
        const values = players.flatMap(({ means }) => means.get(id)?.get(week) ?? []);
        return values.length === 0 ? [] : [{ week, value: median(values), players: values.length }];
      }),
    })),
    bars: barsTogether(players, bars),
  };
}

function barsTogether(players: readonly SectionShare[], bars: readonly string[]): Section['bars'] {
  const order = new Map(bars.map((bar, i) => [bar, i]));
  const stories = players.flatMap(({ player, bars: told }) => told.map((story) => ({ player, story })));
  const together = [...groupBy(stories, ({ story }) => JSON.stringify([story.bar, story.kind])).values()];
  return together
    .flatMap((group) => {
      const { story } = group[0] as (typeof group)[number];
      const who = (of: typeof group) => of.map(({ player }) => player);
      const had = group.filter((one) => one.story.had);
      const have = group.filter((one) => one.story.has);
      const open = had.filter((one) => ['eased', 'not-judged'].includes(one.story.status));
      const mastered = had.length > 0 && have.length + open.length === 0;
      const { bar, criterion, kind } = story;
      return [{ bar, criterion, kind, had: who(had), have: who(have), open: who(open), mastered }];
    })
    .sort((a, b) => (order.get(a.bar) ?? 0) - (order.get(b.bar) ?? 0) || byCodePoint(a.kind, b.kind));
}
