import type { TakeResult } from '../../result/index.js';
import type { Part } from '../../score/index.js';

/** A stretch of the recording in which score time runs evenly. */
export interface TimeStretch {
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly fromQuarters: number;
  readonly toQuarters: number;
}

/** A note that lasts this many times longer than the usual pace was held or followed by a stop: its end is drawn alone. */
const STOPPED = 3;

/**
 * Where each stretch of the recording stands in the score: from one note's onset to the next one's. Where the playing
 * stopped in between, only the time the note sounded is used.
 *
 * @param result the take; onsets in seconds from the first sample
 * @param part the part; score time in quarters
 * @returns stretches in order of time, neither overlapping in time nor in score
 */
export function timeStretches(result: TakeResult, part: Part): TimeStretch[] {
  const anchors = result.notes.flatMap((note) => {
    const partNote = part.notes[note.index];
    if (partNote === undefined || partNote.grace || note.onset === undefined || note.offset === undefined) return [];
    const quarters = partNote.onsetQuarters;
    return [{ seconds: note.onset, offset: note.offset, quarters, endQuarters: quarters + partNote.durationQuarters }];
  });
  const rising = anchors.filter((anchor, i) => {
    const before = anchors[i - 1];
    return before === undefined || (anchor.seconds > before.seconds && anchor.quarters > before.quarters);
  });
  const pace = usualPace(rising);
  return rising.flatMap((anchor, i): TimeStretch[] => {
    const next = rising[i + 1];
    const sounded = {
      fromSeconds: anchor.seconds,
      toSeconds: anchor.offset,
      fromQuarters: anchor.quarters,
      toQuarters: anchor.endQuarters,
    };
    const stretch =
      next === undefined || next.seconds - anchor.seconds > STOPPED * pace * (next.quarters - anchor.quarters)
        ? { ...sounded, toSeconds: Math.min(sounded.toSeconds, next?.seconds ?? sounded.toSeconds) }
        : { ...sounded, toSeconds: next.seconds, toQuarters: next.quarters };
    return stretch.toSeconds > stretch.fromSeconds && stretch.toQuarters > stretch.fromQuarters ? [stretch] : [];
  });
}

/** Median seconds a quarter. */
function usualPace(anchors: readonly { seconds: number; quarters: number }[]): number {
  const paces = anchors
    .slice(1)
    .map((anchor, i) => {
      const before = anchors[i] as { seconds: number; quarters: number };
      return (anchor.seconds - before.seconds) / (anchor.quarters - before.quarters);
    })
    .sort((a, b) => a - b);
  return paces[Math.floor(paces.length / 2)] ?? 0;
}
