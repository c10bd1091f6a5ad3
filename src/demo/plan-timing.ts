import type { Part, PartNote } from '../score/index.js';
import { findNote } from './find-note.js';
import type { Random } from './random.js';
import { tempoMap } from './tempo-map.js';
import type { Fault, TakePlan } from './types.js';

/** A note with the place it has in the performance. */
export interface TimedNote {
  readonly note: PartNote;
  /** the passage was broken off and is played again later */
  readonly abandoned: boolean;
  onsetSeconds: number;
  /** where its written value ends, a fermata's hold included */
  endSeconds: number;
  /** the note after it in the part follows it in the performance too */
  readonly leadsOn: boolean;
}

/** Notes played in one go, and what happens before them. */
interface Run {
  readonly from: number;
  readonly to: number;
  /** null: goes on in tempo after a skip */
  readonly pauseSeconds: number | null;
}

const LEAST_SECONDS_BETWEEN_ONSETS = 0.04;
const GRACE_SECONDS = 0.08;
const CAESURA_SECONDS = 0.4;
const LONG_NOTE_QUARTERS = 1;
/** Held times written: longer notes freely, short ones modestly. Source: common practice. */
const FERMATA_RATIO = { long: 1.8, short: 1.4 };

function splitByRestart(part: Part, runs: readonly Run[], fault: Extract<Fault, { kind: 'restart' }>): Run[] {
  const stop = findNote(part, fault.after).index;
  const resume = findNote(part, fault.resumeAt).index;
  return runs.flatMap((run) => {
    if (stop < run.from || stop >= run.to) return [run];
    return [
      { ...run, to: stop },
      { from: resume, to: run.to, pauseSeconds: fault.pauseSeconds },
    ];
  });
}

function splitBySkip(part: Part, runs: readonly Run[], fault: Extract<Fault, { kind: 'skip' }>): Run[] {
  const from = findNote(part, fault.from).index;
  const to = findNote(part, fault.to).index;
  return runs.flatMap((run) => {
    // to the end of the part: the player breaks off
    if (from > run.from && from <= run.to && to === run.to && to === part.notes.length - 1) {
      return [{ ...run, to: from - 1 }];
    }
    if (from <= run.from || to >= run.to) return [run];
    return [
      { ...run, to: from - 1 },
      { from: to + 1, to: run.to, pauseSeconds: null },
    ];
  });
}

function planRuns(part: Part, faults: readonly Fault[]): Run[] {
  let runs: Run[] = [{ from: 0, to: part.notes.length - 1, pauseSeconds: 0 }];
  for (const fault of faults) {
    if (fault.kind === 'restart') runs = splitByRestart(part, runs, fault);
    if (fault.kind === 'skip') runs = splitBySkip(part, runs, fault);
  }
  return runs;
}

function fermataRatio(part: Part, note: PartNote, faults: readonly Fault[]): number {
  for (const fault of faults) {
    if (fault.kind === 'fermata' && findNote(part, fault.at).index === note.index) return fault.ratio;
  }
  return note.durationQuarters > LONG_NOTE_QUARTERS ? FERMATA_RATIO.long : FERMATA_RATIO.short;
}

/** Seconds by which everything from a note on is moved, because of what happens right before it. */
function delayBefore(part: Part, index: number, faults: readonly Fault[]): number {
  let delay = part.notes[index - 1]?.breathAfter === 'caesura' ? CAESURA_SECONDS : 0;
  for (const fault of faults) {
    if (fault.kind === 'hesitation' && findNote(part, fault.before).index === index) delay += fault.seconds;
    if (fault.kind === 'breath' && findNote(part, fault.after).index === index - 1) delay += fault.delaySeconds;
  }
  return delay;
}

function graceLead(part: Part, index: number): number {
  let main = index;
  while (part.notes[main]?.grace) main++;
  return (main - index) * GRACE_SECONDS;
}

/** The notes of all runs on an even beat, with pauses, holds and delays. */
function placeRuns(part: Part, plan: TakePlan, faults: readonly Fault[]): TimedNote[] {
  const secondsAt = tempoMap(part, plan.tempoFactor ?? 1, plan.tempoDrift ?? 1);
  const runs = planRuns(part, faults);
  const timed: TimedNote[] = [];
  let shift = (plan.leadInSeconds ?? 0.8) - secondsAt(part.notes[0]?.onsetQuarters ?? 0);
  runs.forEach((run, r) => {
    const first = part.notes[run.from] as PartNote;
    const last = timed.at(-1);
    const left = part.notes[(runs[r - 1]?.to ?? -1) + 1];
    if (last && run.pauseSeconds !== null) {
      shift = last.endSeconds + run.pauseSeconds - secondsAt(first.onsetQuarters);
    } else if (last && left) shift += secondsAt(left.onsetQuarters) - secondsAt(first.onsetQuarters);
    const resumed = runs[r + 1];
    for (let i = run.from; i <= run.to; i++) {
      const note = part.notes[i] as PartNote;
      if (i > run.from) shift += delayBefore(part, i, faults);
      const onset = secondsAt(note.onsetQuarters);
      const written = secondsAt(note.onsetQuarters + note.durationQuarters) - onset;
      const hold = note.fermata ? written * (fermataRatio(part, note, faults) - 1) : 0;
      timed.push({
        note,
        abandoned: resumed !== undefined && resumed.pauseSeconds !== null && i >= resumed.from,
        onsetSeconds: onset + shift - graceLead(part, i),
        endSeconds: onset + shift + written + hold,
        leadsOn: i < run.to,
      });
      shift += hold;
    }
  });
  return timed;
}

function applyUnevenGroup(part: Part, timed: TimedNote[], fault: Extract<Fault, { kind: 'uneven-group' }>): void {
  const first = findNote(part, fault.at).index;
  timed.forEach((start, at) => {
    if (start.note.index !== first) return;
    const group = timed.slice(at, at + fault.shares.length);
    const span = (group.at(-1) as TimedNote).endSeconds - start.onsetSeconds;
    let onset = start.onsetSeconds;
    group.forEach((member, k) => {
      member.onsetSeconds = onset;
      onset += span * (fault.shares[k] as number);
    });
  });
}

/** Beats are quarters here: what begins within one shares its time. */
function applyLeaning(part: Part, timed: readonly TimedNote[], fault: Extract<Fault, { kind: 'leans' }>): void {
  const leaning = new Set(fault.at.map((address) => findNote(part, address).index));
  for (let from = 0, to = 0; from < timed.length; from = to) {
    const beatOf = ({ note }: TimedNote): string => `${note.barIndex} ${note.pass} ${Math.floor(note.beat + 1e-6)}`;
    const beat = beatOf(timed[from]!);
    while (to < timed.length && beatOf(timed[to]!) === beat) to++;
    const group = timed.slice(from, to);
    const start = group[0]!.onsetSeconds;
    const span = (timed[to]?.onsetSeconds ?? group.at(-1)!.endSeconds) - start;
    const weights = group.map(({ note }) => note.durationQuarters * (leaning.has(note.index) ? 1 + fault.share : 1));
    const all = weights.reduce((sum, weight) => sum + weight, 0);
    let onset = start;
    group.forEach((one, k) => {
      one.onsetSeconds = onset;
      onset += (span * weights[k]!) / all;
    });
  }
}

function applyLateEntry(part: Part, timed: readonly TimedNote[], fault: Extract<Fault, { kind: 'late-entry' }>): void {
  const entry = findNote(part, fault.at);
  for (const one of timed) {
    const since = one.note.onsetQuarters - entry.onsetQuarters;
    if (since >= 0 && since < 1) one.onsetSeconds += fault.seconds * (1 - since);
  }
}

/**
 * @param part the part, with at least one note
 * @param plan how it is to be played
 * @param random where the human scatter comes from
 * @returns every note that is begun, in time order; a passage played twice is there twice
 */
export function planTiming(part: Part, plan: TakePlan, random: Random): TimedNote[] {
  const faults = plan.faults ?? [];
  const timed = placeRuns(part, plan, faults);
  for (const fault of faults) {
    if (fault.kind === 'uneven-group') applyUnevenGroup(part, timed, fault);
    if (fault.kind === 'leans') applyLeaning(part, timed, fault);
    if (fault.kind === 'late-entry') applyLateEntry(part, timed, fault);
  }
  const scatter = plan.timingScatterSeconds ?? 0.008;
  let earliest = 0;
  for (const one of timed) {
    const deviation = Math.max(-2.5, Math.min(2.5, random.normal())) * scatter;
    one.onsetSeconds = Math.max(earliest, one.onsetSeconds + deviation);
    earliest = one.onsetSeconds + LEAST_SECONDS_BETWEEN_ONSETS;
  }
  return timed;
}
