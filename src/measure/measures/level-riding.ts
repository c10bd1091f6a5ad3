import { isMeasured } from '../../base/index.js';
import type { NoteContext } from '../context/context.js';

/** A pause this long shows the floor of the recording. */
const LEAST_PAUSE_SECONDS = 0.5;
const FLOOR_SECONDS = 0.06;
const LEAST_PAUSES = 5;
/** The floor must move by this much, and against the level of the playing before it. */
const LEAST_MOVE_DB = 10;
const LEAST_AGAINST = -0.7;

/**
 * Whether the recorder moved its gain: then the floor in the pauses rises after soft playing and falls after loud.
 *
 * @param context the take with its notes measured
 * @returns true only when the floor plainly moves against the playing
 *
 * Source: definition (automatic gain control raises the noise when the signal is soft).
 */
export function ridesLevel(context: NoteContext): boolean {
  const { alignment, notes, features } = context;
  const played = alignment.notes.filter((n) => n.onsetSeconds !== undefined);
  const floors: number[] = [];
  const before: number[] = [];
  played.forEach((note, k) => {
    const next = played[k + 1]?.onsetSeconds ?? features.durationSeconds;
    const level = notes[note.index]!.levelDb;
    if (next - note.offsetSeconds! < LEAST_PAUSE_SECONDS || !isMeasured(level)) return;
    floors.push(quietestDb(context, note.offsetSeconds!, next));
    before.push(level);
  });
  if (floors.length < LEAST_PAUSES) return false;
  const move = Math.max(...floors) - Math.min(...floors);
  return move >= LEAST_MOVE_DB && correlation(before, floors) <= LEAST_AGAINST;
}

function quietestDb(context: NoteContext, fromSeconds: number, toSeconds: number): number {
  const { power, levelHopSeconds: hop } = context.features;
  const span = Math.max(1, Math.round(FLOOR_SECONDS / hop));
  const end = Math.min(power.length, Math.round(toSeconds / hop));
  let least = Number.POSITIVE_INFINITY;
  for (let from = Math.round(fromSeconds / hop); from + span <= end; from += span) {
    let sum = 0;
    for (let f = from; f < from + span; f++) sum += power[f]!;
    least = Math.min(least, sum / span);
  }
  return 10 * Math.log10(least + 1e-10);
}

function correlation(x: readonly number[], y: readonly number[]): number {
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
