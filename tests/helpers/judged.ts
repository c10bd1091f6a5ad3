import type { Alignment } from '../../src/align/index.js';
import type { Brief } from '../../src/brief/index.js';
import { type Finding, type FindingKind, judgeTake, standardsFor } from '../../src/judge/index.js';
import type { JudgeInput } from '../../src/judge/observed/judge-input.js';
import { type MeasureContext, type Measurements, measureTake } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { handContext, playEvenly } from './hand-context.js';
import { type SaidFinding, said } from './said.js';

/** What a test changes in a take that is played evenly, in tune and at one level. */
export interface JudgedOptions {
  readonly alignment?: Partial<Alignment>;
  readonly measurements?: Partial<Measurements>;
  /** changes to single notes of the alignment, by index */
  readonly aligned?: Readonly<Record<number, Partial<Alignment['notes'][number]>>>;
  readonly standards?: Parameters<typeof judgeTake>[0]['standards'];
  readonly brief?: Brief;
}

/** What was judged, as codes and in English words. */
export type Judged = ReturnType<typeof said>;

/** What was heard and measured of an even take, once a part: every case of a part starts from the same. */
const EVEN = new WeakMap<Part, { readonly context: MeasureContext; readonly measured: Measurements }>();

function evenTake(part: Part) {
  const kept = EVEN.get(part);
  if (kept !== undefined) return kept;
  const context = handContext(part, playEvenly(part));
  const even = { context, measured: measureTake(context) };
  EVEN.set(part, even);
  return even;
}

/** What a judge is given of an even take of a part, with some of what was heard or measured replaced by hand. */
export function judgeInput(part: Part, options: JudgedOptions = {}): JudgeInput {
  const { context, measured } = evenTake(part);
  const notes = context.alignment.notes.map((note) => ({ ...note, ...options.aligned?.[note.index] }));
  const alignment = { ...context.alignment, notes, ...options.alignment };
  const measurements = { ...measured, ...options.measurements };
  const { brief, standards = standardsFor(brief) } = options;
  return { part, alignment, measurements, standards, ...(brief === undefined ? {} : { brief }) };
}

/** Judges an even take of a part, with some of what was heard or measured replaced by hand. */
export function judged(part: Part, options: JudgedOptions = {}): Judged {
  return said(judgeTake(judgeInput(part, options)));
}

export const ofKind = (judgement: Judged, kind: FindingKind): SaidFinding[] =>
  judgement.findings.filter((finding) => finding.kind === kind);

/** Weight of the one finding of a kind, null when there is none. */
export function weightOf(judgement: Judged, kind: FindingKind): Finding['weight'] | null {
  const found = ofKind(judgement, kind);
  if (found.length > 1) throw new Error(`${found.length} findings of kind ${kind}`);
  return found[0]?.weight ?? null;
}
