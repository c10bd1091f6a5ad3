import type { Run } from './coarse/types.js';
import type { Restart } from './types.js';

/** What counts of everything that was played. */
export interface Renditions {
  /** stretches that count, in order of time and of notes */
  readonly pieces: readonly Run[];
  readonly restarts: readonly Restart[];
}

/** A run with fewer notes that were really heard is chance: a tuning note, a word, a noise. */
const LEAST_HEARD = 3;
/** A beginning that was given up must have been a beginning: so many notes, and this share of them heard. */
const LEAST_FALSE_START = 4;
const LEAST_FALSE_START_SHARE = 0.6;
/** So many notes passed over at the very beginning or end are still looked for, so long after the last one found. */
const MOST_AT_ENDS = 4;
const END_SECONDS = 3;

/**
 * Where a passage was played more than once the last complete rendition counts; what was abandoned becomes a restart.
 *
 * @param runs in order of time
 * @param notes notes in the part
 * @returns pieces and restarts
 *
 * Source: definition (an audition panel hears the passage that was finished; common practice).
 */
export function chooseRenditions(runs: readonly Run[], notes: number): Renditions {
  const pieces: Run[] = [];
  const restarts: Restart[] = [];
  for (const run of withoutChance(runs)) {
    const previous = pieces.at(-1);
    if (previous !== undefined && run.firstNote <= previous.lastNote) {
      const stoppedAtIndex = lastHeard(previous);
      restarts.push({ stoppedAtIndex, resumedAtIndex: run.firstNote, onsetSeconds: run.startSeconds });
    }
    keepUpTo(pieces, run.firstNote);
    pieces.push(run);
  }
  return { pieces: withEnds(pieces, notes), restarts };
}

/** Notes at the very beginning and end that the coarse search passed over are looked for with the rest. */
function withEnds(pieces: readonly Run[], notes: number): Run[] {
  return pieces.map((piece, p) => {
    const lead = p === 0 && piece.firstNote <= MOST_AT_ENDS ? piece.firstNote : 0;
    const tail = p === pieces.length - 1 && notes - 1 - piece.lastNote <= MOST_AT_ENDS ? notes - 1 - piece.lastNote : 0;
    const known = piece.onsets.filter((t) => Number.isFinite(t));
    const perNote = known.length > 1 ? (known.at(-1)! - known[0]!) / (known.length - 1) : 0;
    return {
      firstNote: piece.firstNote - lead,
      lastNote: piece.lastNote + tail,
      startSeconds: Math.max(0, piece.startSeconds - 2 * lead * perNote),
      endSeconds: piece.endSeconds + (tail > 0 ? END_SECONDS : 0),
      onsets: [
        ...new Array<number>(lead).fill(Number.NaN),
        ...piece.onsets,
        ...new Array<number>(tail).fill(Number.NaN),
      ],
    };
  });
}

function heardIn(run: Run): number {
  return run.onsets.filter((t) => Number.isFinite(t)).length;
}

function lastHeard(run: Run): number {
  return run.firstNote + run.onsets.findLastIndex((t) => Number.isFinite(t));
}

function withoutChance(runs: readonly Run[]): Run[] {
  const sure = runs.filter((run) => heardIn(run) >= LEAST_HEARD);
  const kept = sure.length > 0 ? sure : [...runs];
  for (let first = kept[0], second = kept[1]; first !== undefined && second !== undefined; ) {
    const givenUp = second.firstNote <= first.firstNote;
    const heard = heardIn(first);
    if (!givenUp || (heard >= LEAST_FALSE_START && heard / first.onsets.length >= LEAST_FALSE_START_SHARE)) break;
    kept.shift();
    [first, second] = kept;
  }
  return kept;
}

/** Cuts off what a new run plays again. */
function keepUpTo(pieces: Run[], firstNote: number): void {
  for (let last = pieces.at(-1); last !== undefined && last.lastNote >= firstNote; last = pieces.at(-1)) {
    pieces.pop();
    if (last.firstNote >= firstNote) continue;
    const onsets = last.onsets.slice(0, firstNote - last.firstNote);
    const end = last.onsets.slice(onsets.length).find((t) => Number.isFinite(t));
    pieces.push({ ...last, lastNote: firstNote - 1, onsets, endSeconds: end ?? last.endSeconds });
  }
}
