import { median, type NotMeasured, notMeasured } from '../../base/index.js';
import type { NoteContext } from '../context/context.js';

/** How far held notes come back from the jump of level with which they begin. */
export interface Settling {
  /** dB within the note for each dB of the jump; below 0 it is taken back */
  readonly slope: number;
  /** correlation of the two */
  readonly correlation: number;
}

/** A note this long shows it. */
const LEAST_SECONDS = 0.35;
const LEAST_NOTES = 12;
/** Notes further apart do not meet. */
const MOST_APART_SECONDS = 0.5;
/** Where levels are read: the end of the note before, the beginning and the end of the note. */
const BEFORE = [0.15, 0.03] as const;
const BEGINNING = [0.04, 0.12] as const;
const END = [0.16, 0.06] as const;
/** Two jumps as alike as this tell no slope. */
const LEAST_APART_DB = 0.5;

/**
 * @param context the take with its notes measured
 * @returns how held notes settle, or why that is not known
 *
 * Source: median of slopes (Theil 1950); an automatic gain has time within a held note to take back the jump before it.
 */
export function measureSettling(context: NoteContext): Settling | NotMeasured {
  const jumps: number[] = [];
  const settled: number[] = [];
  const played = context.alignment.notes.filter((n) => n.onsetSeconds !== undefined && n.offsetSeconds !== undefined);
  for (let k = 1; k < played.length; k++) {
    const [before, note] = [played[k - 1]!, played[k]!];
    const [onset, offset] = [note.onsetSeconds!, note.offsetSeconds!];
    const apart = onset - before.offsetSeconds!;
    if (offset - onset < LEAST_SECONDS || Math.abs(apart) > MOST_APART_SECONDS) continue;
    const from = Math.max(before.onsetSeconds!, before.offsetSeconds! - BEFORE[0]);
    const old = levelDb(context, from, Math.max(from + BEFORE[1], before.offsetSeconds! - BEFORE[1]));
    const beginning = levelDb(context, onset + BEGINNING[0], onset + BEGINNING[1]);
    const end = levelDb(context, offset - END[0], offset - END[1]);
    jumps.push(beginning - old);
    settled.push(end - beginning);
  }
  if (jumps.length < LEAST_NOTES) return notMeasured('too-few-long-notes');
  return { slope: theilSlope(jumps, settled), correlation: correlation(jumps, settled) };
}

function levelDb({ features }: NoteContext, fromSeconds: number, toSeconds: number): number {
  const { power, levelHopSeconds: hop } = features;
  const from = Math.max(0, Math.round(fromSeconds / hop));
  const to = Math.min(power.length, Math.max(from + 1, Math.round(toSeconds / hop)));
  let sum = 0;
  for (let f = from; f < to; f++) sum += power[f]!;
  return 10 * Math.log10(sum / Math.max(1, to - from) + 1e-12);
}

function theilSlope(x: readonly number[], y: readonly number[]): number {
  const slopes: number[] = [];
  for (let a = 0; a < x.length; a++) {
    for (let b = a + 1; b < x.length; b++) {
      if (Math.abs(x[b]! - x[a]!) > LEAST_APART_DB) slopes.push((y[b]! - y[a]!) / (x[b]! - x[a]!));
    }
  }
  return slopes.length === 0 ? 0 : median(slopes);
}

/**
 * @param x numbers
 * @param y as many
 * @returns their correlation, -1 to 1; 0 where one of them does not vary
 *
 * Source: Pearson's coefficient.
 */
export function correlation(x: readonly number[], y: readonly number[]): number {
  const meanX = x.reduce((a, b) => a + b, 0) / x.length;
  const meanY = y.reduce((a, b) => a + b, 0) / y.length;
  let xy = 0;
  let xx = 0;
  let yy = 0;
  x.forEach((v, i) => {
    xy += (v - meanX) * (y[i]! - meanY);
    xx += (v - meanX) ** 2;
    yy += (y[i]! - meanY) ** 2;
  });
  return xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : 0;
}
