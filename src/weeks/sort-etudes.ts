import { groupBy } from '../base/index.js';
import { foldName } from './fold-name.js';
import type { KeptResult, PlacedResult } from './types.js';

/** Results of one étude that may be compared with each other. */
export interface Etude {
  readonly title: string;
  readonly part: string;
  readonly notes: number;
  /** versions of the file, the earliest first */
  readonly files: readonly { readonly file: string; readonly sha256: string; readonly firstDate: string | null }[];
  readonly change: 'none' | 'compared' | 'apart';
  readonly results: readonly KeptResult[];
}

/** An étude and its players' results, by folded name. */
export interface Played {
  readonly etude: Etude;
  readonly players: readonly (readonly PlacedResult[])[];
}

/**
 * Brings results of one étude together. The same file is the same étude, whatever title a brief gave it. Another file is
 * the same étude when title, part, bars and notes agree; with the same title and part but other bars or notes it is
 * another version, which is followed by itself.
 *
 * @param results in a fixed order
 * @returns études by title; of one title the earlier version first
 */
export function sortEtudes(results: readonly KeptResult[]): Etude[] {
  const byFile = [...groupBy(results, ({ result }) => result.score.sha256).values()];
  const etudes = [...groupBy(byFile, (group) => keyOf(group)).values()].map((groups) => groups.flat());
  const versions = groupBy(etudes, (etude) => workOf(etude));
  return etudes
    .map((etude) => etudeOf(etude, (versions.get(workOf(etude)) ?? []).length > 1))
    .sort((a, b) => compare(foldName(a.title), foldName(b.title)) || compare(firstDay(a), firstDay(b)) || byHash(a, b));
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
const firstDay = (etude: Etude) => etude.files[0]?.firstDate ?? '';
const byHash = (a: Etude, b: Etude) => compare(a.files[0]?.sha256 ?? '', b.files[0]?.sha256 ?? '');

/** The title of the latest document; a brief may have changed it. */
function titleOf(group: readonly KeptResult[]): string {
  const { score } = latest(group).result;
  return score.title.trim() === '' ? score.file : score.title;
}

function workOf(group: readonly KeptResult[]): string {
  return JSON.stringify([foldName(titleOf(group)), foldName(latest(group).result.score.part)]);
}

function keyOf(group: readonly KeptResult[]): string {
  const { bars, notes } = latest(group).result.score;
  return JSON.stringify([workOf(group), bars, notes]);
}

function latest(group: readonly KeptResult[]): KeptResult {
  const dated = group.toSorted((a, b) => compare(a.result.take.date ?? '', b.result.take.date ?? ''));
  return dated.at(-1) as KeptResult;
}

function etudeOf(results: readonly KeptResult[], hasOtherVersions: boolean): Etude {
  const files = [...groupBy(results, ({ result }) => result.score.sha256)].map(([sha256, group]) => ({
    ...{ file: latest(group).result.score.file, sha256 },
    firstDate: group.flatMap(({ result }) => (result.take.date === null ? [] : [result.take.date])).sort()[0] ?? null,
  }));
  files.sort((a, b) => compare(a.firstDate ?? '', b.firstDate ?? '') || compare(a.sha256, b.sha256));
  const { score } = latest(results).result;
  const change = hasOtherVersions ? 'apart' : files.length > 1 ? 'compared' : 'none';
  return { title: titleOf(results), part: score.part, notes: score.notes, files, change, results };
}
