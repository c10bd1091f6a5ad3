import type { ResultFinding, TakeResult } from '../../src/result/index.js';
import type { FoundResult } from '../../src/weeks/index.js';
import { resultOf, sampleReview } from './sample-review.js';

const DAY_MS = 86_400_000;

/** The sample without findings, made once. */
const plain = resultOf(sampleReview({ findings: [] }));

/** What one take is to be like. */
export interface TakeOfWeeks {
  readonly player?: string | null;
  readonly date?: string | null;
  readonly findings?: readonly ResultFinding[];
  /** whatever is to be different */
  readonly changed?: Partial<TakeResult>;
  readonly file?: string;
  readonly sha256?: string;
}

let takes = 0;

/** A result of the sample étude; each has a recording of its own unless it is told otherwise. */
export function takeOfWeeks(options: TakeOfWeeks = {}): FoundResult {
  takes += 1;
  const { player = 'Ada Lindqvist', date = '2026-03-02', findings = [] } = options;
  const sha256 = options.sha256 ?? takes.toString(16).padStart(64, '0');
  const file = options.file ?? `sheets/takes/${date}_${player}_${takes}.json`;
  const take = { ...plain.take, player, date, sha256 };
  return { file, result: { ...plain, take, findings: findings.map((one) => ({ ...one })), ...options.changed } };
}

/** The sample played at a tempo, percent of the mark. */
export function atTempo(percent: number): Partial<TakeResult> {
  if ('notMeasured' in plain.tempo) throw new Error('the sample has a tempo');
  return { tempo: { ...plain.tempo, markedQuarterBpm: 100, playedQuarterBpm: percent } };
}

/** A finding to fix, or to watch, in a bar. */
export function inBar(
  bar: string,
  weight: ResultFinding['weight'] = 'fix',
  kind: ResultFinding['kind'] = 'wrong-note',
): ResultFinding {
  const criterion = kind === 'slur-broken' ? 'articulation' : 'notes';
  return { kind, criterion, weight, bar, pass: 1, text: 'Another note came out here.', practice: 'Play it slowly.' };
}

/** The day so many days after Monday, 2 March 2026. */
export function day(after: number): string {
  return new Date(Date.parse('2026-03-02T00:00:00Z') + after * DAY_MS).toISOString().slice(0, 10);
}

/** A criterion left out of the judging of a take, with the code of the reason unless an earlier program wrote it. */
export function notJudged(criterion: string, summary: string, code?: string): Partial<TakeResult> {
  const criteria = plain.criteria.map((line) =>
    line.criterion === criterion
      ? { ...line, judged: false, summary, ...(code === undefined ? {} : { reason: { code } }) }
      : line,
  );
  return { criteria };
}
