import { type MaybeNumber, notMeasured } from '../../base/index.js';
import type { MeasureContext } from '../context/context.js';
import type { BreathMeasure, TransitionMeasure } from '../types.js';

/**
 * What happens at each place where a breath is asked for: how much silence there is, and whether the next note waits.
 *
 * @param context part and alignment
 * @param transitions how each note goes over into the next
 * @returns one entry a breath asked for, in performed order; seconds, positive is late
 *
 * The silence includes what the room takes to let go of the sound.
 */
export function measureBreaths(context: MeasureContext, transitions: readonly TransitionMeasure[]): BreathMeasure[] {
  const leaving = new Map(transitions.map((t) => [t.index, t]));
  return context.part.notes
    .filter((note) => note.breathAfter !== null)
    .map((note): BreathMeasure => {
      const place = { index: note.index, bar: note.bar, pass: note.pass, beat: note.beat };
      const transition = leaving.get(note.index);
      if (transition === undefined) {
        const why = notMeasured('neighbours-not-heard');
        return { ...place, gapSeconds: why, lateSeconds: why };
      }
      const held = note.fermata || context.part.notes[transition.toIndex]!.heldRestBefore === true;
      return { ...place, gapSeconds: transition.gapSeconds, lateSeconds: lateSeconds(transition, held) };
    });
}

function lateSeconds({ betweenOnsetsSeconds, expectedSeconds }: TransitionMeasure, held: boolean): MaybeNumber {
  if (held) return notMeasured('fermata-leaves-open');
  if (expectedSeconds === undefined) return notMeasured('tempo-unknown-here');
  return betweenOnsetsSeconds - expectedSeconds;
}
