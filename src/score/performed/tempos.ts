import type { TempoEvent } from '../printed/tempo-plan.js';
import { SAME_PLACE } from '../printed/types.js';
import type { TempoBend, TempoMark } from '../types.js';
import type { PlayedBar } from './performed-bars.js';

/** Tempo on the performed timeline. */
export interface PerformedTempo {
  readonly tempos: readonly TempoMark[];
  readonly tempoBends: readonly TempoBend[];
}

/** The first mark counts from the start when it stands within this many bars: the pick-up bar is played at its tempo. */
const FIRST_MARK_BARS = 2;

/**
 * Follows the tempo through the performed order; where it jumps, the tempo in force at that place in print is back.
 *
 * @param events tempo events in printed order
 * @param played bars in performed order
 * @param assumedBpm quarters a minute when the start has no tempo
 * @returns tempos (the first at 0) and bends
 *
 * Source: common practice.
 */
export function performedTempo(
  events: readonly TempoEvent[],
  played: readonly PlayedBar[],
  assumedBpm: number,
): PerformedTempo {
  const start = startTempo(events, assumedBpm);
  const bars = eventsByBar(events, start);
  const timeline = new Timeline(start);
  for (const { performed, jumped } of played) {
    const { startQuarters, barIndex } = performed;
    const bar = bars[Math.min(barIndex, bars.length - 1)] as BarTempo;
    if (jumped) {
      timeline.endBend(startQuarters);
      timeline.setTempo({ ...bar.inForce, atQuarters: startQuarters });
    }
    for (const event of bar.events) timeline.follow(event, startQuarters + event.at);
  }
  const last = played.at(-1)?.performed;
  if (last !== undefined) timeline.endBend(last.startQuarters + last.lengthQuarters);
  return timeline;
}

class Timeline implements PerformedTempo {
  readonly tempos: TempoMark[];
  readonly tempoBends: TempoBend[] = [];
  private bend: { kind: TempoBend['kind']; startQuarters: number } | null = null;

  constructor(start: TempoMark) {
    this.tempos = [start];
  }

  follow(event: TempoEvent, atQuarters: number): void {
    const { change } = event;
    if (typeof change === 'number') {
      this.setTempo({ atQuarters, quarterBpm: change, printed: true });
      return;
    }
    this.endBend(atQuarters);
    if (change !== 'end') this.bend = { kind: change, startQuarters: atQuarters };
  }

  setTempo(tempo: TempoMark): void {
    if (this.tempos.at(-1)?.quarterBpm === tempo.quarterBpm) return;
    if (tempo.atQuarters < SAME_PLACE) this.tempos.length = 0;
    this.tempos.push(tempo);
  }

  endBend(endQuarters: number): void {
    const { bend } = this;
    if (bend !== null && endQuarters > bend.startQuarters + SAME_PLACE) this.tempoBends.push({ ...bend, endQuarters });
    this.bend = null;
  }
}

function startTempo(events: readonly TempoEvent[], assumedBpm: number): TempoMark {
  const first = events.find((event) => typeof event.change === 'number');
  if (first === undefined) return { atQuarters: 0, quarterBpm: assumedBpm, printed: false };
  const printed = first.barIndex < FIRST_MARK_BARS;
  const unit = first.unitQuarters === undefined ? {} : { unitQuarters: first.unitQuarters };
  return { atQuarters: 0, quarterBpm: first.change as number, printed, ...unit };
}

interface BarTempo {
  /** the tempo in force where the bar begins, in printed order */
  readonly inForce: TempoMark;
  readonly events: TempoEvent[];
}

function eventsByBar(events: readonly TempoEvent[], start: TempoMark): BarTempo[] {
  const bars: BarTempo[] = [];
  const lastBar = events.at(-1)?.barIndex ?? -1;
  let inForce = start;
  let next = 0;
  for (let barIndex = 0; barIndex <= lastBar + 1; barIndex++) {
    const bar: BarTempo = { inForce, events: [] };
    for (let event = events[next]; event !== undefined && event.barIndex === barIndex; event = events[++next]) {
      bar.events.push(event);
      if (typeof event.change === 'number') inForce = { atQuarters: 0, quarterBpm: event.change, printed: true };
    }
    bars.push(bar);
  }
  return bars;
}
