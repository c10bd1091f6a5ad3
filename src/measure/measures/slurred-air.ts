import { median, medianInterval, type NotMeasured, notMeasured } from '../../base/index.js';
import type { MeasureContext } from '../context/context.js';
import { isWet } from '../is-wet.js';
import type { AirDip, RecordingMeasure, SlurredAirMeasure, TransitionMeasure } from '../types.js';

/** Fewer pairs of notes say nothing of a habit. */
const LEAST_PAIRS = 6;
/** From here on a step is a leap. Source: common practice: wider than a third. */
const LEAP_SEMITONES = 5;

/**
 * Whether the air goes on under slurs: how far the level usually dips from one slurred note to the next, and how far at leaps.
 *
 * @param context part and alignment
 * @param transitions how each note goes over into the next
 * @param recording the recording itself: a room that rings fills every dip, and a recorder that moves its level hides it
 * @returns medians with their 95 % intervals, or why there are none
 *
 * Source: median by definition; the dip: see measureTransitions.
 */
export function measureSlurredAir(
  { part, alignment }: MeasureContext,
  transitions: readonly TransitionMeasure[],
  recording: RecordingMeasure,
): SlurredAirMeasure | NotMeasured {
  if (recording.levelRiding) return notMeasured('level-moved');
  if (isWet(recording)) return notMeasured('room-rings');
  const slurred = transitions.filter(({ index, toIndex }) => {
    const asWritten = [index, toIndex].every((i) => alignment.notes[i]!.status === 'as-written');
    return asWritten && part.notes[index]!.slurredToNext && part.notes[toIndex]!.slurredFromPrevious;
  });
  const isLeap = ({ index, toIndex }: TransitionMeasure): boolean =>
    Math.abs(part.notes[toIndex]!.soundingMidi - part.notes[index]!.soundingMidi) >= LEAP_SEMITONES;
  const all = dipOf(slurred);
  if (all === null) return notMeasured('no-slurs');
  const [steps, leaps] = [dipOf(slurred.filter((t) => !isLeap(t))), dipOf(slurred.filter(isLeap))];
  return { ...all, ...(steps === null || leaps === null ? {} : { steps, leaps }) };
}

function dipOf(transitions: readonly TransitionMeasure[]): AirDip | null {
  if (transitions.length < LEAST_PAIRS) return null;
  const dips = transitions.map(({ dipDb }) => dipDb);
  return { dipDb: median(dips), intervalDb: medianInterval(dips), count: dips.length };
}
