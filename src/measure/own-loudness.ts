import { isMeasured } from '../base/index.js';
import type { NoteContext, OwnLoudness } from './context/context.js';

/** Weight of the wish for a smooth curve, in notes. */
const SMOOTHNESS = 1.5;
/** Semitones over which neighbours still speak for a pitch. */
const REACH_SEMITONES = 3;
const LEAST_NOTES = 16;
const ROUNDS = 15;
const OUTLIER_DB = 4;
/** Lengths are told apart by this factor, from this shortest one on: a short note has less time to grow. */
const SHORTEST_SECONDS = 0.06;
const LENGTH_FACTOR = 1.5;
const LENGTHS = 6;

/**
 * How loud each note is by itself, separated from the dynamic plan: level = plan of its section + register of the
 * instrument + length of the note, all fitted to the notes of one take in turn.
 *
 * @param context the take with its notes measured
 * @returns dB a note, mean 0 over the notes used; null when there are too few notes
 *
 * Source: backfitting of an additive model (Hastie & Tibshirani 1990) with Huber weights.
 */
export function fitOwnLoudness(context: NoteContext): OwnLoudness | null {
  const notes = steadyNotes(context);
  if (notes.length < LEAST_NOTES) return null;
  const plan = new Map<number, number>();
  let register = new Map<number, number>();
  let length = new Map<number, number>();
  let weights = notes.map(() => 1);
  const at = (effect: ReadonlyMap<number, number>, key: number) => effect.get(key) ?? 0;
  for (let round = 0; round < ROUNDS; round++) {
    for (const [section, rows] of grouped(notes, weights, (n) => n.section)) {
      plan.set(section, mean(rows.map(({ n, w }) => [n.levelDb - at(register, n.midi) - at(length, n.length), w])));
    }
    const left = notes.map((n) => n.levelDb - at(plan, n.section));
    register = smooth(
      notes,
      weights,
      (n) => n.midi,
      (n, i) => left[i]! - at(length, n.length),
      REACH_SEMITONES,
    );
    length = smooth(
      notes,
      weights,
      (n) => n.length,
      (n, i) => left[i]! - at(register, n.midi),
      1,
    );
    weights = notes.map((n, i) => {
      const off = Math.abs(left[i]! - at(register, n.midi) - at(length, n.length));
      return off <= OUTLIER_DB ? 1 : OUTLIER_DB / off;
    });
  }
  return {
    of: (index) => {
      const place = placeOf(context, index);
      return place === null ? 0 : at(register, place.midi) + at(length, place.length);
    },
  };
}

interface SteadyNote {
  readonly midi: number;
  /** which step of the scale of lengths */
  readonly length: number;
  readonly levelDb: number;
  /** which dynamic mark it stands under */
  readonly section: number;
}

function placeOf(context: NoteContext, index: number): Pick<SteadyNote, 'midi' | 'length'> | null {
  const note = context.alignment.notes[index];
  if (note?.playedMidi === undefined || note.onsetSeconds === undefined || note.offsetSeconds === undefined)
    return null;
  const seconds = note.offsetSeconds - note.onsetSeconds;
  const step = Math.floor(Math.log(Math.max(seconds, SHORTEST_SECONDS) / SHORTEST_SECONDS) / Math.log(LENGTH_FACTOR));
  return { midi: note.playedMidi, length: Math.min(LENGTHS - 1, step) };
}

function steadyNotes(context: NoteContext): SteadyNote[] {
  const { part, notes } = context;
  return part.dynamics.flatMap((mark, section) =>
    notes.slice(mark.index, mark.toIndex + 1).flatMap((n) => {
      const place = placeOf(context, n.index);
      if (place === null || !isMeasured(n.levelDb) || part.notes[n.index]!.grace) return [];
      return [{ ...place, levelDb: n.levelDb, section }];
    }),
  );
}

interface Row {
  readonly n: SteadyNote;
  readonly w: number;
  readonly i: number;
}

function grouped(
  notes: readonly SteadyNote[],
  weights: readonly number[],
  keyOf: (n: SteadyNote) => number,
): Map<number, Row[]> {
  const groups = new Map<number, Row[]>();
  notes.forEach((n, i) => {
    const rows = groups.get(keyOf(n)) ?? [];
    rows.push({ n, w: weights[i]!, i });
    groups.set(keyOf(n), rows);
  });
  return groups;
}

/** Each key leans on its own notes and, where they are few, on those of its neighbours; mean 0 over the notes. */
function smooth(
  notes: readonly SteadyNote[],
  weights: readonly number[],
  keyOf: (n: SteadyNote) => number,
  levelOf: (n: SteadyNote, i: number) => number,
  reach: number,
): Map<number, number> {
  const own = [...grouped(notes, weights, keyOf)].map(([key, rows]) => ({
    key,
    value: mean(rows.map(({ n, w, i }) => [levelOf(n, i), w])),
    count: rows.reduce((sum, { w }) => sum + w, 0),
  }));
  const curve = new Map(
    own.map((here) => {
      const nearby = own.map((other) => {
        const share =
          other === here ? 1 : Math.exp(-(((other.key - here.key) / reach) ** 2)) / (1 + here.count / SMOOTHNESS);
        return [other.value, share * other.count] as const;
      });
      return [here.key, mean(nearby)] as const;
    }),
  );
  const centre = mean(notes.map((n, i) => [curve.get(keyOf(n))!, weights[i]!]));
  return new Map([...curve].map(([key, value]) => [key, value - centre]));
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
