import {
  type FoundResult,
  keepResult,
  type ProgressResult,
  type ProgressSheet,
  progressInParts,
  progressSheets,
} from '../../src/weeks/index.js';

type Input = Omit<Parameters<typeof progressInParts>[0], 'results'> & { readonly results: readonly FoundResult[] };

/** All players on one sheet. */
export function wholeSheet({ results, ...input }: Input): ProgressSheet {
  const parts = progressInParts({ ...input, results: results.map((found) => keepResult(found)) });
  const [sheet] = progressSheets(parts, Number.POSITIVE_INFINITY);
  return sheet as ProgressSheet;
}

/** The whole document. */
export function progressOf(input: Input): ProgressResult {
  return wholeSheet(input).progress;
}
