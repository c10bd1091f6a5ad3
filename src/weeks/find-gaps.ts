import { codeAsData, type Language } from '../base/index.js';
import { failureSaid } from '../words/index.js';
import { weekOf } from './calendar.js';
import { foldName } from './fold-name.js';
import type { ProgressPlayer } from './progress-result-schema.js';
import type { LostTake, PlacedResult } from './types.js';

type Gap = ProgressPlayer['gaps'][number];

/**
 * What a player's curves lack, and why: takes that were not reviewed or could not be read, and weeks in which others sent
 * a take of this étude and the player did not.
 *
 * @param placed the player's results of one étude
 * @param lost takes of this étude that could not be read, of all players
 * @param weeks Mondays of all weeks with a take of this étude, in order
 * @param language in which is said why a take could not be read
 * @returns gaps in order of time
 */
export function findGaps(
  placed: readonly PlacedResult[],
  lost: readonly LostTake[],
  weeks: readonly string[],
  language: Language,
): Gap[] {
  const name = foldName(placed[0]?.player ?? '');
  const told = [
    ...placed.flatMap(notReviewed),
    ...lost.filter((one) => isOf(one, name)).map((one) => failed(one, language)),
  ];
  const here = new Set([...placed.map(({ date }) => weekOf(date)), ...told.map((gap) => gap.week)]);
  const first = placed.map(({ date }) => weekOf(date)).sort()[0] ?? '';
  const missing = weeks.filter((week) => week > first && !here.has(week));
  const gaps = [
    ...told,
    ...missing.map((week): Gap => ({ week, date: null, why: 'no-take', file: null, detail: null })),
  ];
  return gaps.sort((a, b) => (keyOf(a) < keyOf(b) ? -1 : 1));
}

const keyOf = (gap: Gap) => `${gap.date ?? gap.week ?? ''} ${gap.file ?? ''}`;

const isOf = (lost: LostTake, name: string) => lost.player !== null && foldName(lost.player) === name;

function notReviewed({ result, file, date }: PlacedResult): Gap[] {
  const { outcome } = result;
  return outcome === 'reviewed' ? [] : [{ week: weekOf(date), date, why: outcome, file, detail: null }];
}

function failed({ date, file, fault }: LostTake, language: Language): Gap {
  const week = date === null ? null : weekOf(date);
  return { week, date, why: 'failed', file, detail: failureSaid(language, fault), fault: codeAsData(fault) };
}
