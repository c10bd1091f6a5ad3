import { byCodePoint, groupBy } from '../../base/index.js';
import type { Criterion } from '../../judge/index.js';
import type { SectionResult } from './section-result-schema.js';
import type { RowTrouble, SectionRow } from './section-row.js';

/** Criteria in which one habit shows in many bars: for the same players it is one cause. */
const HABITS: ReadonlySet<Criterion> = new Set(['tempo', 'rhythm', 'dynamics', 'articulation', 'breath']);

type SectionTrouble = SectionResult['troubles'][number];

/** What several players were told about one place. */
interface Told {
  readonly trouble: RowTrouble;
  readonly row: SectionRow;
  readonly who: ReadonlySet<string>;
  /** those of them for whom it is a fix */
  readonly fix: ReadonlySet<string>;
  /** further bars in which it shows for no other players */
  readonly alsoBars: readonly string[];
}

/**
 * What troubles the players, place by place: what is to be fixed before what is to be watched, then most players first. Notes of
 * one bar are places of their own. What shows for the same players in several bars is one habit, and counted once.
 *
 * @param rows the take of each player that counts
 * @returns places of each score; players of one score are never counted in another
 */
export function sectionTroubles(rows: readonly SectionRow[]): SectionTrouble[] {
  const scores = groupBy(rows, scoreOf);
  const told = [...scores.values()].flatMap((ofScore) => onceForEachHabit(places(ofScore)));
  const players = (row: SectionRow) => {
    const reviewed = scores.get(scoreOf(row))?.filter(({ take }) => take.outcome === 'reviewed') ?? [];
    return new Set(reviewed.map(playerOf)).size;
  };
  return told
    .toSorted((a, b) => inOrder(a, b) || placeOf(a) - placeOf(b) || (a.trouble.kind < b.trouble.kind ? -1 : 1))
    .map(({ trouble: { bar, beat, kind, criterion }, row, who, fix, alsoBars }) => ({
      ...{ score: row.score.file, bar, ...(beat === undefined ? {} : { beat }), kind, criterion },
      ...(alsoBars.length === 0 ? {} : { alsoBars: [...alsoBars] }),
      ...{ players: who.size, of: players(row), fix: fix.size, who: [...who] },
    }));
}

/** Who played: by name, or else each take is taken for a player of its own. */
export const playerOf = ({ take }: SectionRow): string => take.player ?? take.name;

const scoreOf = ({ score }: SectionRow): string => JSON.stringify([score.file, score.sha256]);

function places(rows: readonly SectionRow[]): Told[] {
  const all = rows.flatMap((row) => row.troubles.map((trouble) => ({ trouble, row, player: playerOf(row) })));
  const groups = groupBy(all, ({ trouble: { bar, beat, kind } }) => JSON.stringify([bar, beat ?? null, kind]));
  return [...groups.values()].flatMap((group): Told[] => {
    const [first] = group;
    if (first === undefined) return [];
    const players = (some: typeof group) => new Set(some.map(({ player }) => player));
    const fix = players(group.filter(({ trouble }) => trouble.weight === 'fix'));
    return [{ trouble: first.trouble, row: first.row, who: players(group), fix, alsoBars: [] }];
  });
}

/** A habit's place with most players speaks for the places where it shows for some of these only. */
function onceForEachHabit(told: readonly Told[]): Told[] {
  const kept: Told[] = [];
  for (const one of told.toSorted(
    (a, b) => b.who.size - a.who.size || b.fix.size - a.fix.size || placeOf(a) - placeOf(b),
  )) {
    const { kind, criterion, bar } = one.trouble;
    const at = kept.findIndex(
      ({ trouble, who }) => trouble.kind === kind && [...one.who].every((name) => who.has(name)),
    );
    const lead = kept[at];
    if (lead === undefined || bar === null || !HABITS.has(criterion)) {
      kept.push(one);
      continue;
    }
    const fix = new Set([...lead.fix, ...one.fix]);
    const alsoBars = [...new Set([...lead.alsoBars, bar])].filter((other) => other !== lead.trouble.bar);
    kept[at] = {
      ...lead,
      fix,
      alsoBars: alsoBars.toSorted((a, b) => lead.row.bars.indexOf(a) - lead.row.bars.indexOf(b)),
    };
  }
  return kept;
}

/** The whole take first, then bars as printed, and their beats. */
function placeOf({ trouble: { bar, beat = 0 }, row: { bars } }: Told): number {
  if (bar === null) return -1;
  return (bars.includes(bar) ? bars.indexOf(bar) : bars.length) + Math.min(beat, 99) / 100;
}

function inOrder(a: Told, b: Told): number {
  return (
    Number(b.fix.size > 0) - Number(a.fix.size > 0) ||
    b.who.size - a.who.size ||
    b.fix.size - a.fix.size ||
    byCodePoint(a.row.score.file, b.row.score.file)
  );
}
