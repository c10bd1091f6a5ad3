import { statSync } from 'node:fs';
import { join } from 'node:path';
import { byCodePoint, InputError } from '../base/index.js';
import { type EngravedPart, engraveInThread } from '../engrave/index.js';
import { drawSectionSheets } from '../report/index.js';
import { type SectionScore, sameRecordings, sectionScore } from '../result/index.js';
import { type Etude, wishesIn } from '../review/index.js';
import { writeWhole } from './disk/write-whole.js';
import { keepScores } from './listen/kept-scores.js';
import { writeRoom } from './listen/write-room.js';
import { BLIND_KEY_FILE, readKey, writeKey } from './plan/blind-key.js';
import { blindPlan } from './plan/blind-plan.js';
import { namesInShard } from './plan/names-in-shard.js';
import { type Plan, planTakes } from './plan/plan-takes.js';
import { readEtudes } from './plan/read-etudes.js';
import { takeLimits } from './pool/limits.js';
import { type Ask, runPool } from './pool/run-pool.js';
import { dependsOn, programHash } from './results/depends-on.js';
import { keptResult } from './results/kept-result.js';
import { leftAlone } from './results/left-alone.js';
import { filesIn, openResults } from './results/open-results.js';
import type { SharedWork, SheetWork, TakeWork, WorkerAnswer } from './results/review-in-worker.js';
import { writeFailure, writeTake } from './results/write-take.js';
import type {
  PlannedTake,
  Recognition,
  ReviewProgress,
  ReviewRequest,
  ReviewSummary,
  TakeEnd,
  TakeFailure,
} from './types.js';
import { type DrawSheets, writeSection } from './write-section.js';

/** Drawing takes a small part of it; a busy machine is given much more. Working values. */
const SHEET_SECONDS = 60;
const SHEET_SECONDS_A_TAKE = 0.1;

/** What a caller may pass to a run beside the request: a function to call after each take, and a signal that stops it. */
export interface ReviewHooks {
  /** told after each take, in the order in which they end */
  readonly onProgress?: (progress: ReviewProgress) => void;
  /** told once, before takes are listened to, where a roster or a pattern was given */
  readonly onPlanned?: (recognition: Recognition) => void;
  /** stops the run: what is finished stays, what is not is not begun */
  readonly signal?: AbortSignal;
}

/**
 * Reviews every take against its part, writes each take's files and then the section's. Takes whose result of an earlier
 * run still stands are not listened to again.
 *
 * @param request scores, takes, where to write and how
 * @param hooks what to call after each take, and what stops the run
 * @returns how every take ended
 * @throws InputError when the request itself is wrong; then nothing has been written
 */
export async function runReview(request: ReviewRequest, hooks: ReviewHooks = {}): Promise<ReviewSummary> {
  const etudes = readEtudes(request);
  const whole = planFor(request, etudes);
  const { unrecognised } = whole;
  if (unrecognised !== null) hooks.onPlanned?.({ takes: whole.takes.length + whole.lost.length, unrecognised });
  const ours = namesInShard(
    [...whole.takes, ...whole.lost].map(({ name }) => name),
    request.shard,
  );
  const takes = whole.takes.filter(({ name }) => ours.has(name));
  const lost = whole.lost.filter(({ name }) => ours.has(name));
  const total = takes.length + lost.length;
  const ends: TakeEnd[] = [];
  const onEnd = (end: TakeEnd): void => {
    ends.push(end);
    hooks.onProgress?.({ done: ends.length, total, end });
  };
  for (const { name, failure, who, roster } of lost) {
    onEnd(writeFailure({ name, failure, who, ...(roster === undefined ? {} : { roster }) }, request));
  }
  if (request.listen === true) keepScores(request);
  const score = scoreOf(etudes);
  const section = { ...request, ...(score === undefined ? {} : { score }) };
  let failures: TakeFailure[] | null = null;
  const afterwards = async (draw: DrawSheets, engraved: () => Promise<Engraved>): Promise<void> => {
    const ordered = inOrder(ends);
    failures = await writeSection(ordered, section, draw);
    if (request.listen === true) {
      failures.push(...(await writeRoom(ordered, async () => roomSource(request, etudes, await engraved()))));
    }
  };
  const notEngraved = await reviewTakes(takes, etudes, request, { onEnd, afterwards, signal: hooks.signal });
  const ordered = inOrder(ends);
  return {
    ends: ordered,
    failures: failures ?? ordered.flatMap((end) => ('failure' in end ? [end.failure] : [])),
    notReached: total - ends.length,
    remarks: {
      ...{ rosterLinesUnused: whole.rosterLinesUnused, notEngraved },
      ...{ leftAlone: leftAlone(request, whole, ordered), same: sameRecordings(rowsOf(ordered)) },
    },
  };
}

const inOrder = (ends: readonly TakeEnd[]): TakeEnd[] => ends.toSorted((a, b) => byCodePoint(a.name, b.name));

const roomSource = ({ outFolder, language = 'en' }: ReviewRequest, etudes: readonly Etude[], engraved: Engraved) => ({
  ...{ folder: outFolder, etudes, engraved, language },
});

const rowsOf = (ends: readonly TakeEnd[]) => ends.flatMap((end) => ('row' in end ? [end.row] : []));

/** Plans the takes and makes the folder for results ready: what is wrong with the request is found out here. */
function planFor(request: ReviewRequest, etudes: readonly Etude[]): Plan {
  const named = planTakes(request, etudes);
  const keyPath = join(request.outFolder, BLIND_KEY_FILE);
  const key = readKey(keyPath);
  if (request.blind !== true) {
    if (key !== null) throw new InputError('results-are-blind').about(request.outFolder);
    openResults(request.outFolder);
    return named;
  }
  if (key === null && filesIn(join(request.outFolder, 'takes')).length > 0) {
    throw new InputError('results-show-names').about(request.outFolder);
  }
  const blind = blindPlan(named, key ?? []);
  openResults(request.outFolder);
  writeWhole(keyPath, writeKey(blind.key), 'owner');
  return blind.plan;
}

/** Études laid out, null where that was not possible; empty where nobody asked. */
type Engraved = readonly (EngravedPart | null)[];

/** What is called while takes are reviewed. */
interface Listeners {
  readonly onEnd: (end: TakeEnd) => void;
  /** when all takes have ended and nobody has stopped the run; given what draws the section's sheets, and what gives études */
  readonly afterwards: (draw: DrawSheets, engraved: () => Promise<Engraved>) => Promise<void>;
  readonly signal: AbortSignal | undefined;
}

/** @returns files of scores whose bars could not be engraved, so that pages show none */
async function reviewTakes(
  takes: readonly PlannedTake[],
  etudes: readonly Etude[],
  request: ReviewRequest,
  { onEnd, afterwards, signal }: Listeners,
): Promise<string[]> {
  const { tool, limits = {}, language = 'en' } = request;
  const program = programHash(tool);
  const hashes = takes.map((take) => dependsOn(take, etudes, language, program));
  const tasks = takes.map((take, i) => {
    const wanted = { ...request, dependsOn: hashes[i] as string };
    const keptSha256 = request.again === true ? null : keptResult(take.name, wanted);
    const work: TakeWork = { take, keptSha256 };
    return { work, limits: takeLimits(sizeOf(take.path), limits) };
  });
  const workerData: SharedWork = { ...wishesIn(request), tool, etudes, language, limits };
  const hasExcerpts = etudes.some(({ musicXml = null }) => musicXml !== null);
  const newPages = request.listen === true || tasks.some(({ work }) => work.keptSha256 === null);
  const engraving = hasExcerpts && newPages ? engraveInThread(etudes.map(({ musicXml = null }) => musicXml)) : null;
  const notEngraved: string[] = [];
  const laidOut = engraving?.parts.then((parts) => {
    const missing = etudes.filter(({ musicXml = null }, i) => musicXml !== null && parts[i] === null);
    notEngraved.push(...missing.map(({ score }) => score.file));
    return parts;
  });
  try {
    await runPool<TakeWork | SheetWork, WorkerAnswer>({
      ...{ tasks, signal, lanes: request.jobs },
      kind: {
        file: new URL('./worker.js', import.meta.url),
        workerData,
        ...(laidOut === undefined ? {} : { later: laidOut }),
      },
      onEnd: (i, end) => onEnd(writeTake(takes[i] as PlannedTake, end, hashes[i] as string, request)),
      afterwards: (ask) => afterwards(drawnBy(ask), async () => (await laidOut) ?? []),
    });
    return [...notEngraved];
  } finally {
    await engraving?.stop();
  }
}

/** A worker that has drawn takes has at hand what sheets need; where there is none, they are drawn here. */
function drawnBy(ask: Ask<TakeWork | SheetWork, WorkerAnswer>): DrawSheets {
  return async function* (sheet) {
    const { takes } = sheet.section;
    const answer = await ask({ sheet }, SHEET_SECONDS + takes.length * SHEET_SECONDS_A_TAKE);
    if (answer?.how === 'drawn') yield* answer.sheets;
    else yield* drawSectionSheets(sheet);
  };
}

/** What cannot be looked at has no size; the worker that is to read it says why. */
function sizeOf(path: string): number {
  try {
    return statSync(path).size;
  } catch {
    return 0;
  }
}

/** Named in the section's documents when no take has a result. */
function scoreOf([etude, ...others]: readonly Etude[]): SectionScore | undefined {
  return etude === undefined || others.length > 0 ? undefined : sectionScore(etude.score, etude.part);
}
