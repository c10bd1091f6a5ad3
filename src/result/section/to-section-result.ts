import {
  byCodePoint,
  codeAsData,
  type Failure,
  groupBy,
  isMeasured,
  type Language,
  type MaybeNumberTold,
} from '../../base/index.js';
import { failureSaid, wordsIn } from '../../words/index.js';
import { reasonOf, toldReason } from '../told-reason.js';
import { latestTakes } from './latest-takes.js';
import { sameRecordings } from './same-recordings.js';
import {
  type SectionFailure,
  type SectionResult,
  type SectionScore,
  type SectionTake,
  sectionResultSchema,
} from './section-result-schema.js';
import type { SectionRow } from './section-row.js';
import { playerOf, sectionTroubles } from './section-troubles.js';

/** A take that got no document. */
export interface LostTake extends Omit<SectionFailure, 'message' | 'fault'> {
  readonly fault: Failure;
}

/** Everything the section's document is assembled from. */
export interface SectionInput {
  readonly tool: { readonly name: string; readonly version: string };
  /** in the order in which they are to be listed */
  readonly rows: readonly SectionRow[];
  /** takes that got no document */
  readonly failures: readonly LostTake[];
  /** of all that is told in sentences; English when it is left out */
  readonly language?: Language | undefined;
  /** named when there is no row to take it from */
  readonly score?: SectionScore;
}

/**
 * Brings the takes of one review together: who needs what, and which bars trouble the section as a whole. A finding is
 * counted in the bar where it begins; findings about a whole take count in no bar. Bars of different scores are never
 * added up. Of several takes of one player the latest counts; what was mended since is nobody's trouble.
 *
 * @param input what is known of each take, and the failures
 * @returns the section's document
 */
export function toSectionResult({ tool, rows, failures, score, language = 'en' }: SectionInput): SectionResult {
  const scores = scoresOf(rows, score);
  const latest = latestTakes(rows);
  const same = sameRecordings(rows);
  return sectionResultSchema.parse({
    format: 'section-result',
    version: 1,
    tool: { name: tool.name, version: tool.version },
    language,
    score: scores.length === 1 ? scores[0] : null,
    scores: scores.length === 1 ? scores : scores.map((one) => ({ ...one, barNumbers: barsOf(one, rows) })),
    players: new Set(rows.map(playerOf)).size,
    bars: scores.length === 1 ? (rows[0]?.bars ?? []) : [],
    takes: rows.map((row) => ({ ...takeIn(language, row), latest: latest.has(row) })),
    troubles: sectionTroubles(rows.filter((row) => latest.has(row))),
    ...(same.length === 0 ? {} : { same }),
    failures: failures.map(({ fault, ...one }) => ({
      ...one,
      message: failureSaid(language, fault),
      fault: codeAsData(fault),
    })),
  });
}

/** A take's line, told in the language of the document. */
function takeIn(language: Language, { take, first, language: from, roster }: SectionRow): SectionTake {
  const told = (value: MaybeNumberTold): MaybeNumberTold =>
    isMeasured<number>(value) ? value : toldReason(language, reasonOf(value, from));
  const words = wordsIn(language);
  return {
    ...take,
    notesAsWritten: told(take.notesAsWritten),
    playedQuarterBpm: told(take.playedQuarterBpm),
    centsFromA440: told(take.centsFromA440),
    first: first.map((finding) => `${words.place(finding)}: ${words.finding(finding).headline}`),
    ...(roster === undefined ? {} : { roster }),
  };
}

/** Each score once, by file and content. */
function scoresOf(rows: readonly SectionRow[], score: SectionScore | undefined): SectionScore[] {
  const byContent = groupBy(rows, (row) => JSON.stringify([row.score.file, row.score.sha256, row.score.title]));
  const scores = [...byContent.entries()]
    .sort(([a], [b]) => byCodePoint(a, b))
    .flatMap(([, group]) => group[0]?.score ?? []);
  return scores.length === 0 && score !== undefined ? [score] : scores;
}

/** All takes of one score have the same bars. */
function barsOf({ file, sha256 }: SectionScore, rows: readonly SectionRow[]): SectionRow['bars'] {
  return rows.find(({ score }) => score.file === file && score.sha256 === sha256)?.bars ?? [];
}
