import { figuresOf } from './figures-of.js';
import { isTrouble, weightOf } from './kinds-of-trouble.js';
import { tonguingOf } from './tonguing-of.js';
import type { FoundResult, KeptResult, KeptTake } from './types.js';

/**
 * Takes from a result what is followed over weeks: a few kilobytes, however long the take and its result are.
 *
 * @param found a result document as it was found
 * @returns what is kept of it
 */
export function keepResult({ file, result, place }: FoundResult): KeptResult {
  const { take, score, tool, outcome, language = 'en', notes, findings, criteria } = result;
  const kept: KeptTake = {
    take: {
      ...{ file: take.file, sha256: take.sha256, player: take.player, date: take.date },
      blind: take.blind === true,
    },
    score: {
      ...{ file: score.file, sha256: score.sha256, title: score.title },
      ...{ part: score.part, bars: score.bars, notes: score.notes },
    },
    toolVersion: tool.version,
    ...{ language, outcome },
    figures: outcome === 'reviewed' ? figuresOf(result) : null,
    tonguing: outcome === 'reviewed' ? tonguingOf(result) : null,
    bars: [...new Set(notes.map(({ bar }) => bar))],
    notes: notes.length,
    barsNotPlayed: barsNotPlayed(result),
    troubles: findings.flatMap((one) =>
      isTrouble(one) ? [{ kind: one.kind, criterion: one.criterion, bar: one.bar, weight: weightOf(one) }] : [],
    ),
    judged: criteria.flatMap(({ criterion, judged }) => (judged === false ? [] : [criterion])),
  };
  return { file, result: kept, ...(place === undefined ? {} : { place }) };
}

/** Bars of which no note was played. */
function barsNotPlayed({ notes, skips }: FoundResult['result']): string[] {
  const skipped = (index: number) => skips.some((skip) => skip.fromIndex <= index && index <= skip.toIndex);
  const played = new Set(
    notes.flatMap(({ bar, status, index }) => (status === 'left-out' || skipped(index) ? [] : [bar])),
  );
  return [...new Set(notes.map(({ bar }) => bar))].filter((bar) => !played.has(bar));
}
