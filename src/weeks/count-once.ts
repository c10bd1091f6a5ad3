import { groupBy } from '../base/index.js';
import { foldName } from './fold-name.js';
import type { KeptResult } from './types.js';

/** Results with each recording counted once. */
export interface CountedOnce {
  readonly results: readonly KeptResult[];
  readonly repeated: readonly {
    readonly sha256: string;
    readonly counted: string;
    readonly passedOver: readonly string[];
    readonly differ: boolean;
  }[];
}

/**
 * A recording whose result lies in several folders counts once: the result that was reviewed, of these the one with a name
 * instead of a number, of these the one that has player and day, of these the newest program's, of these the first file.
 *
 * @param results of one étude, in order of their files
 * @returns results in the same order, and what was passed over
 */
export function countOnce(results: readonly KeptResult[]): CountedOnce {
  const repeated: CountedOnce['repeated'][number][] = [];
  const kept = new Set<KeptResult>();
  for (const [sha256, group] of groupBy(results, recordingOf)) {
    const [counted, ...others] = group.toSorted(preferred);
    if (counted === undefined) continue;
    kept.add(counted);
    if (others.length === 0) continue;
    const differ = new Set(group.map(whoAndWhen)).size > 1;
    repeated.push({ sha256, counted: counted.file, passedOver: others.map((one) => one.file).sort(), differ });
  }
  return { results: results.filter((one) => kept.has(one)), repeated };
}

/** Where names must not be known, a result does not say which recording it is of: then it stands for itself. */
function recordingOf({ file, result }: KeptResult): string {
  return result.take.sha256 || file;
}

function whoAndWhen({ result }: KeptResult): string {
  return JSON.stringify([foldName(result.take.player ?? ''), result.take.date]);
}

function preferred(a: KeptResult, b: KeptResult): number {
  const reviewed = (one: KeptResult) => (one.result.outcome === 'reviewed' ? 0 : 1);
  const known = ({ result: { take } }: KeptResult) => (take.player !== null && take.date !== null ? 0 : 1);
  const numbered = ({ result: { take } }: KeptResult) => (take.blind ? 1 : 0);
  return reviewed(a) - reviewed(b) || numbered(a) - numbered(b) || known(a) - known(b) || newer(a, b);
}

function newer(a: KeptResult, b: KeptResult): number {
  const [one, other] = [a, b].map(({ result }) => result.toolVersion.split(/\D+/).map(Number));
  const place = [0, 1, 2].find((i) => (one?.[i] ?? 0) !== (other?.[i] ?? 0));
  return place === undefined ? 0 : (other?.[place] ?? 0) - (one?.[place] ?? 0);
}
