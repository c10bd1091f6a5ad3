import type { Criterion } from '../../judge/index.js';
import { FIRST_CRITERIA, LATER_CRITERIA } from '../schema/criterion-schema.js';

import { csvText, textCell } from '../section/csv-text.js';
import type { Standing, StandingTake } from './standing-schema.js';

/**
 * The table for a spreadsheet: a row a take, most points first; a column a criterion, and one a judge.
 *
 * @param standing the document
 * @returns CSV text, as of the section
 *
 * Source: RFC 4180.
 */
export function standingCsv({ groups }: Standing): string {
  const judges = [...new Set(groups.flatMap((group) => group.judges))];
  const heads = [
    ...['score', 'take', 'player', 'date', 'outcome', 'bars_played', 'bars_to_play', 'ending'],
    ...FIRST_CRITERIA.map(pointsHead),
    ...['points_given', 'points_possible', 'points_error', 'place_best', 'place_worst', 'chair'],
    ...['panel_mean', 'panel_spread', 'panel_place_best', 'panel_place_worst', 'parts_ways'],
    ...judges.map((judge) => textCell(`judge ${judge}`)),
    ...LATER_CRITERIA.map(pointsHead),
  ];
  const rows = groups.flatMap(({ score, takes }) => takes.map((take) => [textCell(score), ...row(take, judges)]));
  return csvText([heads, ...rows]);
}

function row(take: StandingTake, judges: readonly string[]): string[] {
  const { bars, place, panel } = take;
  return [
    ...[textCell(take.name), textCell(take.player ?? ''), textCell(take.date ?? ''), take.outcome],
    ...[cell(bars?.played), cell(bars?.of), bars?.ending ?? ''],
    ...FIRST_CRITERIA.map((criterion) => given(take, criterion)),
    ...[
      cell(take.given),
      cell(take.possible),
      cell(take.error),
      cell(place?.best),
      cell(place?.worst),
      take.chair ?? '',
    ],
    ...[cell(panel?.mean), cell(panel?.spread), cell(panel?.place.best), cell(panel?.place.worst)],
    panel === null ? '' : take.partsWays ? 'yes' : 'no',
    ...judges.map((judge) => cell(panel?.judges.find((one) => one.judge === judge)?.points)),
    ...LATER_CRITERIA.map((criterion) => given(take, criterion)),
  ];
}

const pointsHead = (criterion: Criterion): string => `${criterion}_points`;

const given = (take: StandingTake, name: Criterion): string =>
  cell(take.criteria.find(({ criterion }) => criterion === name)?.given);

const cell = (value: number | null | undefined): string => (value === null || value === undefined ? '' : String(value));
