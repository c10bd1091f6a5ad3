import { isMeasured, type NotMeasured, notMeasured } from '../../base/index.js';
import type { NoteContext } from '../context/context.js';
import { correlation } from './settling.js';

/** How the floor of the recording goes with the playing. */
export interface FloorInPauses {
  /** correlation of the floor in pauses with the level of the note before */
  readonly withPlaying: number;
  /** highest floor above the lowest, dB */
  readonly moveDb: number;
}

const FLOOR_SECONDS = 0.04;
/** The release of the note before and the attack of the next do not belong to a pause. */
const RELEASE_SECONDS = 0.05;
const ATTACK_SECONDS = 0.02;

/**
 * Whether the floor rises after soft playing and falls after loud, as under an automatic gain: what is left of a note in the
 * room does the opposite.
 *
 * @param context the take with its notes measured
 * @param leastSeconds pauses shorter than this do not count
 * @param leastPauses with fewer pauses nothing is said
 * @returns how the floor moves, or why that is not known
 *
 * Source: definition (automatic gain raises the noise when the signal is soft).
 */
export function floorInPauses(
  context: NoteContext,
  leastSeconds: number,
  leastPauses: number,
): FloorInPauses | NotMeasured {
  const { alignment, notes, features } = context;
  const played = alignment.notes.filter((n) => n.onsetSeconds !== undefined);
  const floors: number[] = [];
  const before: number[] = [];
  played.forEach((note, k) => {
    const next = played[k + 1]?.onsetSeconds ?? features.durationSeconds;
    const level = notes[note.index]!.levelDb;
    if (next - note.offsetSeconds! < leastSeconds || !isMeasured(level)) return;
    floors.push(quietestDb(context, note.offsetSeconds! + RELEASE_SECONDS, next - ATTACK_SECONDS));
    before.push(level);
  });
  if (floors.length < leastPauses) return notMeasured('too-few-pauses');
  return { withPlaying: correlation(before, floors), moveDb: Math.max(...floors) - Math.min(...floors) };
}

function quietestDb(context: NoteContext, fromSeconds: number, toSeconds: number): number {
  const { power, levelHopSeconds: hop } = context.features;
  const span = Math.max(1, Math.round(FLOOR_SECONDS / hop));
  const end = Math.min(power.length, Math.round(toSeconds / hop));
  let least = Number.POSITIVE_INFINITY;
  for (let from = Math.round(fromSeconds / hop); from + span <= end; from++) {
    let sum = 0;
    for (let f = from; f < from + span; f++) sum += power[f]!;
    least = Math.min(least, sum / span);
  }
  return 10 * Math.log10(least + 1e-10);
}
