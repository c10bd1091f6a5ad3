import { byCodePoint, groupBy, type Language } from '../../base/index.js';
import type { Criterion } from '../../judge/index.js';
import type { TakeResult } from '../schema/take-result-schema.js';
import { latestTakes } from '../section/latest-takes.js';
import { type SectionRow, sectionRow } from '../section/section-row.js';
import { kendallW } from './kendall-w.js';
import { type PlaceRange, placesOf } from './places.js';
import { pointsError } from './points-error.js';
import { type Standing, type StandingGroup, type StandingTake, standingSchema } from './standing-schema.js';

/** What a table needs of one take. */
export interface StandingRow {
  readonly row: SectionRow;
  readonly criteria: readonly {
    readonly criterion: Criterion;
    readonly given: number | null;
    readonly possible: number;
  }[];
  /** standard error of the points */
  readonly error: number;
}

/** One mark of a panel. */
export interface PanelMark {
  /** name of the take, which is its number where names are hidden, or the player's name */
  readonly take: string;
  readonly judge: string;
  readonly criterion: Criterion;
  readonly points: number;
}

/** Everything the table is made from. */
export interface StandingInput {
  readonly tool: { readonly name: string; readonly version: string };
  readonly rows: readonly StandingRow[];
  readonly marks: readonly PanelMark[];
  /** how many are to be seated in each part; null without that question */
  readonly chairs: number | null;
  readonly language: Language;
}

/**
 * @param name the name the take's documents are written under
 * @param result the take's document
 * @returns what the table needs of it
 */
export function standingRow(name: string, result: TakeResult): StandingRow {
  const criteria = result.criteria.flatMap(({ criterion, points }) =>
    points === undefined ? [] : [{ criterion, ...points }],
  );
  const counted = result.criteria.flatMap(({ points, of = 0, fix, watch }) =>
    points === undefined || points.given === null ? [] : [{ possible: points.possible, of, fix, watch }],
  );
  return { row: sectionRow(name, result), criteria, error: pointsError(counted, result.take.durationSeconds / 60) };
}

/**
 * Points by criterion and in all, the order as far as it is one, who is to be heard for the chairs, and the panel's own marks
 * beside. The latest take of each player counts; takes of different scores are never compared.
 *
 * @param input takes with points, marks of the panel, and how many chairs there are
 * @returns the document
 */
export function toStanding({ tool, rows, marks, chairs, language }: StandingInput): Standing {
  const latest = latestTakes(rows.map(({ row }) => row));
  const counted = rows.filter(({ row }) => latest.has(row));
  const groups = [...groupBy(counted, ({ row }) => JSON.stringify([row.score.file, row.score.sha256])).values()];
  const names = new Set(counted.flatMap(({ row }) => namesOf(row)));
  return standingSchema.parse({
    ...{ format: 'standing', version: 1, tool: { name: tool.name, version: tool.version }, language, chairs },
    groups: groups.map((group) => groupOf(group, marks, chairs)),
    unknown: [...new Set(marks.map(({ take }) => take))].filter((take) => !names.has(take)),
  });
}

/** What a mark may call a take by. */
const namesOf = ({ take }: SectionRow): string[] => [
  take.name,
  take.file,
  ...(take.player === null ? [] : [take.player]),
];

function groupOf(rows: readonly StandingRow[], marks: readonly PanelMark[], chairs: number | null): StandingGroup {
  const { score } = (rows[0] as StandingRow).row;
  const judges = [...new Set(marks.map(({ judge }) => judge))].sort(byCodePoint);
  const takes = rows.map((row) => takeOf(row, marks, judges)).sort(byPoints);
  const ranked = takes.filter((take) => share(take) !== null);
  const places = placesByPoints(ranked);
  const heard = takes.filter(({ panel }) => panel !== null);
  const panelPlaces = panelPlacesOf(heard);
  const both = heard.filter((take) => ranked.includes(take));
  const placesOfBoth = placesByPoints(both);
  const panelOfBoth = panelPlacesOf(both);
  const complete = heard.filter(({ panel }) => panel?.judges.length === judges.length);
  const byJudge = judges.map((judge) => complete.map((take) => pointsBy(take, judge)));
  return {
    ...{ score: score.file, title: score.title, part: score.part, judges, agreement: kendallW(byJudge) },
    criteria: criteriaOf(rows),
    takes: takes.map((take) => {
      const place = places[ranked.indexOf(take)] ?? null;
      const measuredPlace = placesOfBoth[both.indexOf(take)] ?? null;
      const judged = panelOfBoth[both.indexOf(take)] ?? null;
      const apart = measuredPlace !== null && judged !== null && liesApart(measuredPlace, judged);
      const panel =
        take.panel === null
          ? null
          : { ...take.panel, place: panelPlaces[heard.indexOf(take)] ?? take.panel.place, measuredPlace };
      return { ...take, place, panel, partsWays: apart, chair: chairs === null ? null : chairOf(place, chairs) };
    }),
  };
}

function takeOf(
  { row, criteria, error }: StandingRow,
  marks: readonly PanelMark[],
  judges: readonly string[],
): StandingTake {
  const { take } = row;
  const known = criteria.filter(({ given }) => given !== null);
  const earns = take.outcome === 'reviewed' && take.played?.ending !== 'cut-off' && known.length > 0;
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  return {
    ...{ name: take.name, player: take.player, date: take.date, outcome: take.outcome, bars: take.played ?? null },
    criteria: [...criteria],
    given: earns ? sum(known.map(({ given }) => given ?? 0)) : null,
    possible: sum((earns ? known : criteria).map(({ possible }) => possible)),
    error: earns ? error : null,
    ...{ place: null, chair: null, partsWays: false },
    panel: panelOf(
      marks.filter((mark) => namesOf(row).includes(mark.take)),
      judges,
    ),
  };
}

function panelOf(marks: readonly PanelMark[], judges: readonly string[]): StandingTake['panel'] {
  const byJudge = judges.flatMap((judge) => {
    const own = marks.filter((mark) => mark.judge === judge);
    return own.length === 0 ? [] : [{ judge, points: own.reduce((sum, mark) => sum + mark.points, 0) }];
  });
  if (byJudge.length === 0) return null;
  const mean = byJudge.reduce((sum, { points }) => sum + points, 0) / byJudge.length;
  const squares = byJudge.reduce((sum, { points }) => sum + (points - mean) ** 2, 0);
  const spread = byJudge.length < 2 ? null : Math.sqrt(squares / (byJudge.length - 1));
  return { judges: byJudge, mean, spread, place: { best: 1, worst: 1 }, measuredPlace: null };
}

function placesByPoints(takes: readonly StandingTake[]): PlaceRange[] {
  return placesOf(
    takes.map((take) => ({ share: share(take) ?? 0, error: (take.error ?? 0) / Math.max(1e-9, take.possible) })),
  );
}

function liesApart(a: PlaceRange, b: PlaceRange): boolean {
  return b.best > a.worst || b.worst < a.best;
}

/** By the mean of the judges; equal means share their places. */
function panelPlacesOf(takes: readonly StandingTake[]): PlaceRange[] {
  return placesOf(takes.map(({ panel }) => ({ share: panel?.mean ?? 0, error: 0 })));
}

function pointsBy({ panel }: StandingTake, judge: string): number {
  return panel?.judges.find((one) => one.judge === judge)?.points ?? 0;
}

const share = ({ given, possible }: StandingTake): number | null =>
  given === null || possible === 0 ? null : given / possible;

function byPoints(a: StandingTake, b: StandingTake): number {
  return (share(b) ?? -1) - (share(a) ?? -1) || byCodePoint(a.name, b.name);
}

/** Who is surely among so many, who may be, and who is surely not. */
function chairOf(place: PlaceRange | null, chairs: number): 'sure' | 'listen-again' | 'no' {
  if (place === null || place.best > chairs) return 'no';
  return place.worst <= chairs ? 'sure' : 'listen-again';
}

function criteriaOf(rows: readonly StandingRow[]): StandingGroup['criteria'] {
  const [most] = rows.toSorted((a, b) => b.criteria.length - a.criteria.length);
  return (most?.criteria ?? [])
    .filter(({ possible }) => possible > 0)
    .map(({ criterion, possible }) => ({ criterion, possible }));
}
