import type { Alignment } from '../../src/align/index.js';
import { type Finding, type FindingKind, judgeTake } from '../../src/judge/index.js';
import { type Measurements, measureTake } from '../../src/measure/index.js';
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
}

/** What was judged, as codes and in English words. */
export type Judged = ReturnType<typeof said>;

/** Judges an even take of a part, with some of what was heard or measured replaced by hand. */
export function judged(part: Part, options: JudgedOptions = {}): Judged {
  const context = handContext(part, playEvenly(part));
  const notes = context.alignment.notes.map((note) => ({ ...note, ...options.aligned?.[note.index] }));
  const alignment = { ...context.alignment, notes, ...options.alignment };
  const measurements = { ...measureTake(context), ...options.measurements };
  const { standards } = options;
  return said(judgeTake({ part, alignment, measurements, ...(standards === undefined ? {} : { standards }) }));
}

export const ofKind = (judgement: Judged, kind: FindingKind): SaidFinding[] =>
  judgement.findings.filter((finding) => finding.kind === kind);

/** Weight of the one finding of a kind, null when there is none. */
export function weightOf(judgement: Judged, kind: FindingKind): Finding['weight'] | null {
  const found = ofKind(judgement, kind);
  if (found.length > 1) throw new Error(`${found.length} findings of kind ${kind}`);
  return found[0]?.weight ?? null;
}
