import { isMeasured } from '../base/index.js';
import type { NoteContext } from './context.js';

/** Weight of the wish for a smooth curve, in notes. */
const SMOOTHNESS = 1.5;
const LEAST_NOTES = 16;
const ROUNDS = 12;
const OUTLIER_DB = 4;

/**
 * How loud the instrument is by itself at each pitch, separated from the dynamic plan: level = plan of its section +
 * register curve, both fitted to the notes of one take in turn.
 *
 * @param context the take with its notes measured
 * @returns dB by sounding MIDI number, mean 0 over the notes played; null when there are too few notes
 *
 * Source: backfitting of an additive model (Hastie & Tibshirani 1990) with Huber weights.
 */
export function fitRegisterCurve(context: NoteContext): ReadonlyMap<number, number> | null {
  const notes = steadyNotes(context);
  if (notes.length < LEAST_NOTES) return null;
  const pitches = [...new Set(notes.map((n) => n.midi))].sort((a, b) => a - b);
  const plan = new Map<number, number>();
  let curve = new Map(pitches.map((p) => [p, 0]));
  let weights = notes.map(() => 1);
  for (let round = 0; round < ROUNDS; round++) {
    for (const section of new Set(notes.map((n) => n.section))) {
      const rows = notes.map((n, i) => ({ n, w: weights[i]! })).filter(({ n }) => n.section === section);
      plan.set(section, mean(rows.map(({ n, w }) => [n.levelDb - curve.get(n.midi)!, w])));
    }
    curve = smoothCurve(pitches, notes, weights, plan);
    weights = notes.map((n) => {
      const off = Math.abs(n.levelDb - plan.get(n.section)! - curve.get(n.midi)!);
      return off <= OUTLIER_DB ? 1 : OUTLIER_DB / off;
    });
  }
  return curve;
}

interface SteadyNote {
  readonly midi: number;
  readonly levelDb: number;
  /** which dynamic mark it stands under */
  readonly section: number;
}

function steadyNotes(context: NoteContext): SteadyNote[] {
  const { part, alignment, notes } = context;
  return part.dynamics.flatMap((mark, section) =>
    notes.slice(mark.index, mark.toIndex + 1).flatMap((n) => {
      const midi = alignment.notes[n.index]?.playedMidi;
      if (midi === undefined || !isMeasured(n.levelDb) || part.notes[n.index]!.grace) return [];
      return [{ midi, levelDb: n.levelDb, section }];
    }),
  );
}

/** Each pitch leans on its own notes and, where they are few, on those of its neighbours. */
function smoothCurve(
  pitches: readonly number[],
  notes: readonly SteadyNote[],
  weights: readonly number[],
  plan: ReadonlyMap<number, number>,
): Map<number, number> {
  const own = new Map(
    pitches.map((p) => {
      const rows = notes.flatMap((n, i) =>
        n.midi === p ? [[n.levelDb - plan.get(n.section)!, weights[i]!] as const] : [],
      );
      return [p, { value: mean(rows), count: rows.reduce((sum, [, w]) => sum + w, 0) }] as const;
    }),
  );
  const curve = new Map(
    pitches.map((p) => {
      let sum = 0;
      let total = 0;
      for (const q of pitches) {
        const near = q === p ? 1 : Math.exp(-(((q - p) / 3) ** 2)) / (1 + own.get(p)!.count / SMOOTHNESS);
        sum += near * own.get(q)!.count * own.get(q)!.value;
        total += near * own.get(q)!.count;
      }
      return [p, total > 0 ? sum / total : 0] as const;
    }),
  );
  const centre = mean(notes.map((n, i) => [curve.get(n.midi)!, weights[i]!]));
  return new Map([...curve].map(([p, v]) => [p, v - centre]));
}

function mean(rows: readonly (readonly [number, number])[]): number {
  let sum = 0;
  let total = 0;
  for (const [value, weight] of rows) {
    sum += value * weight;
    total += weight;
  }
  return total > 0 ? sum / total : 0;
}
