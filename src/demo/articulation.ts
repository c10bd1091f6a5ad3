import type { Part, PartNote } from '../score/index.js';
import { findNote } from './find-note.js';
import type { TimedNote } from './plan-timing.js';
import type { Random } from './random.js';
import type { Fault, TakePlan } from './types.js';

/** Sounded share of the time to the next onset. Source: common practice; staccato after Bresin & Battel 2000. */
const SHARES = { tongued: 0.9, staccato: 0.42, staccatissimo: 0.3, tenuto: 0.97, 'detached-legato': 0.8 } as const;
const BREATH_SECONDS = 0.32;
/** A breath never takes more of a note than this. */
const BREATH_SHARE = 0.45;
const BROKEN_SLUR_GAP_SECONDS = 0.045;

/** All that decides how the notes of one performance are shaped. */
export interface Context {
  readonly part: Part;
  readonly plan: TakePlan;
  readonly faults: readonly Fault[];
  readonly timed: readonly TimedNote[];
  readonly dynamicAt: (quarters: number) => number;
  readonly random: Random;
}

/**
 * @param context the performance
 * @param kind kind of fault
 * @param note the part's note
 * @returns the fault of that kind at that note, if any
 */
export function faultAt<K extends 'misread' | 'wrong-note' | 'missed-note' | 'broken-slur' | 'length'>(
  { part, faults }: Context,
  kind: K,
  note: PartNote,
): Extract<Fault, { kind: K }> | undefined {
  return faults.find(
    (fault): fault is Extract<Fault, { kind: K }> =>
      fault.kind === kind && 'at' in fault && fault.at !== undefined && findNote(part, fault.at).index === note.index,
  );
}

function staccatoShare({ part, faults }: Context, note: PartNote): number {
  let share: number = SHARES.staccato;
  for (const fault of faults) {
    if (fault.kind !== 'staccato') continue;
    if (fault.at === undefined || findNote(part, fault.at).index === note.index) share = fault.share;
  }
  return share;
}

function soundedShare(context: Context, note: PartNote): number {
  const length = faultAt(context, 'length', note);
  if (length !== undefined) return length.share;
  if (note.articulations.includes('staccato')) return staccatoShare(context, note);
  const marked = (['staccatissimo', 'detached-legato', 'tenuto'] as const).find((a) => note.articulations.includes(a));
  return SHARES[marked ?? 'tongued'];
}

/** Seconds of gap for breath after a note, 0 when none is taken. */
function breathGap({ part, faults }: Context, note: PartNote): number {
  for (const fault of faults) {
    if (fault.kind === 'breath' && findNote(part, fault.after).index === note.index) return fault.seconds;
  }
  return note.breathAfter === null ? 0 : BREATH_SECONDS;
}

/**
 * @param context the performance
 * @param at place in the performance
 * @returns whether that note is slurred into: the part says so, the player does it, and the note before it sounds
 */
export function isLegatoInto(context: Context, at: number): boolean {
  const now = context.timed[at];
  const before = context.timed[at - 1];
  if (!now || !before?.leadsOn || now.note.index !== before.note.index + 1) return false;
  if (!now.note.slurredFromPrevious || now.note.restBeforeQuarters > 0) return false;
  const brokenBy = faultAt(context, 'broken-slur', now.note) ?? faultAt(context, 'missed-note', now.note);
  if (brokenBy || faultAt(context, 'missed-note', before.note)) return false;
  return !context.faults.some(
    (f) => f.kind === 'breath' && findNote(context.part, f.after).index === before.note.index,
  );
}

/**
 * @param context the performance
 * @param at place in the performance
 * @returns seconds at which that note stops sounding when no other is slurred to it
 */
export function releaseOf(context: Context, at: number): number {
  const now = context.timed[at] as TimedNote;
  const next = context.timed[at + 1];
  const follows = next !== undefined && now.leadsOn && next.note.restBeforeQuarters === 0;
  const end = follows ? next.onsetSeconds : Math.max(now.endSeconds, now.onsetSeconds + 0.05);
  const interval = end - now.onsetSeconds;
  const gap = Math.min(breathGap(context, now.note), interval * BREATH_SHARE);
  if (gap > 0) return end - gap;
  if (follows && faultAt(context, 'broken-slur', next.note)) return end - BROKEN_SLUR_GAP_SECONDS;
  const held = now.note.fermata ? SHARES.tenuto : soundedShare(context, now.note);
  return now.onsetSeconds + interval * (follows ? held : Math.min(0.96, held + 0.06));
}
