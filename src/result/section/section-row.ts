import { groupBy, type Language } from '../../base/index.js';
import { concernsWholeTake } from '../../words/index.js';
import type { ResultFinding, TakeResult } from '../schema/take-result-schema.js';
import { toldReason } from '../told-reason.js';
import type { SectionScore, SectionTake } from './section-result-schema.js';

/** All that a section needs to know of one take: small, however long the take and its result are. */
export interface SectionRow {
  /** the score the take was reviewed against */
  readonly score: SectionScore;
  /** its bars as printed, in order */
  readonly bars: readonly string[];
  /** of the recording, hexadecimal */
  readonly sha256: string;
  /** language of the reasons */
  readonly language: Language;
  readonly take: Omit<SectionTake, 'first'>;
  /** the first things to work on */
  readonly first: readonly Pick<ResultFinding, 'kind' | 'misreading' | 'bar' | 'toBar' | 'pass' | 'beat'>[];
  /** findings to fix and to watch, those that another one speaks for not counted */
  readonly toFix: number;
  readonly toWatch: number;
  readonly troubles: readonly RowTrouble[];
  /** what a roster says in further columns, by head */
  readonly roster?: Readonly<Record<string, string>>;
}

/** Criteria whose findings are about one note each. */
const OF_ONE_NOTE: ReadonlySet<ResultFinding['criterion']> = new Set(['notes', 'intonation']);

/** One finding of a take, as the section counts it. */
export interface RowTrouble {
  /** null: the whole take */
  readonly bar: string | null;
  /** of what is about one note: notes of one bar are places of their own */
  readonly beat?: number;
  readonly kind: ResultFinding['kind'];
  readonly criterion: ResultFinding['criterion'];
  readonly weight: 'fix' | 'watch';
}

/**
 * @param name the name the take's own documents are written under
 * @param result the take's document
 * @returns what the section needs of it
 */
export function sectionRow(name: string, result: TakeResult): SectionRow {
  const { barNumbers, ...score } = result.score;
  const bars = barNumbers ?? [...new Set(result.notes.map((note) => note.bar))];
  const findings = result.findings.filter((finding) => finding.weight !== 'well');
  const own = findings.filter((finding) => finding.ledByBar === undefined);
  return {
    score,
    bars,
    sha256: result.take.sha256,
    language: result.language ?? 'en',
    take: takeLine(name, result, bars),
    first: own.slice(0, 3).map(({ kind, misreading, bar, toBar, pass, beat }) => {
      return { kind, misreading, bar, toBar, pass, beat };
    }),
    toFix: own.filter((finding) => finding.weight === 'fix').length,
    toWatch: own.filter((finding) => finding.weight === 'watch').length,
    troubles: findings.map(({ bar, beat, kind, criterion, weight, ownWeight = weight }) => ({
      bar: concernsWholeTake(kind) ? null : bar,
      ...(beat === undefined || !OF_ONE_NOTE.has(criterion) || concernsWholeTake(kind) ? {} : { beat }),
      kind,
      criterion,
      weight: ownWeight === 'fix' ? 'fix' : 'watch',
    })),
  };
}

function takeLine(name: string, result: TakeResult, bars: readonly string[]): SectionRow['take'] {
  const troubles = result.findings.filter((finding) => finding.weight !== 'well');
  const reviewed = result.outcome === 'reviewed';
  const reason =
    'notMeasured' in result.tempo
      ? result.tempo
      : toldReason(result.language ?? 'en', { code: 'not-reviewed', facts: {} });
  return {
    name,
    file: result.take.file,
    player: result.take.player,
    date: result.take.date,
    instrument: result.take.instrument ?? null,
    score: result.score.file,
    outcome: result.outcome,
    notesInPart: result.score.notes,
    notesAsWritten: reviewed ? result.notes.filter((n) => n.status === 'as-written').length : reason,
    playedQuarterBpm: 'notMeasured' in result.tempo ? result.tempo : result.tempo.playedQuarterBpm,
    ...('notMeasured' in result.tempo || result.tempo.countedIn === undefined
      ? {}
      : { countedIn: result.tempo.countedIn }),
    centsFromA440: 'notMeasured' in result.tuning ? result.tuning : result.tuning.centsFromA440,
    criteria: result.criteria
      .filter(({ judged }) => judged !== false)
      .map(({ criterion, fix, watch }) => ({ criterion, fix, watch })),
    ...playedOf(result),
    ...pointsOf(result),
    barTroubles: barCounts(troubles, bars),
  };
}

/** How much was played, and the criteria of which nothing was. */
function playedOf({ played, criteria }: TakeResult): Pick<SectionTake, 'played' | 'notPlayed'> {
  if (played === undefined) return {};
  const out = criteria.filter(({ judged, of = 0, notPlayed }) => judged === false && of > 0 && notPlayed === of);
  return {
    played: { played: played.played, of: played.of, ending: played.ending },
    ...(out.length === 0 ? {} : { notPlayed: out.map(({ criterion }) => criterion) }),
  };
}

/** Points over all criteria that could be measured; nothing where there was no brief, or the take was cut off. */
function pointsOf({ criteria, played }: TakeResult): Pick<SectionTake, 'points'> {
  const points = criteria.flatMap((line) => line.points ?? []);
  if (points.length === 0 || played?.ending === 'cut-off') return {};
  const known = points.filter(({ given }) => given !== null);
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  return { points: { given: sum(known.map((p) => p.given ?? 0)), possible: sum(known.map((p) => p.possible)) } };
}

function barCounts(troubles: readonly ResultFinding[], bars: readonly string[]): SectionTake['barTroubles'] {
  const placed = troubles.filter((finding) => !concernsWholeTake(finding.kind));
  const order = new Map(bars.map((bar, i) => [bar, i]));
  return [...groupBy(placed, (finding) => finding.bar)]
    .map(([bar, here]) => ({
      bar,
      fix: here.filter((f) => f.weight === 'fix').length,
      watch: here.filter((f) => f.weight === 'watch').length,
    }))
    .sort((a, b) => (order.get(a.bar) ?? bars.length) - (order.get(b.bar) ?? bars.length));
}
