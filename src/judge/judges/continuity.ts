import { type JudgeInput, placeOf } from '../observed/judge-input.js';
import type { Observation } from '../observed/observation.js';

/**
 * Passages begun again and passages jumped over.
 *
 * @param input one take
 * @returns one observation each
 */
export function judgeContinuity(input: JudgeInput): Observation[] {
  const { part, alignment } = input;
  const restarts = alignment.restarts.map((r): Observation => {
    const resumed = part.notes[r.resumedAtIndex]!;
    const stopped = part.notes[r.stoppedAtIndex] ?? resumed;
    const place = { ...placeOf(input, resumed), toBar: stopped.bar, onset: r.onsetSeconds };
    // who plays it through and then once more has not stumbled
    const whole = r.resumedAtIndex === 0 && stopped.barIndex === part.notes.at(-1)?.barIndex;
    return {
      kind: 'restart',
      criterion: 'continuity',
      weight: whole ? 'watch' : 'fix',
      size: 2,
      ...place,
      facts: { stoppedAtBar: stopped.bar, whole },
    };
  });
  // what was left unclear by an attempt that was given up was not jumped over
  const plain = alignment.skips.filter((s) => !alignment.restarts.some((r) => r.resumedAtIndex === s.toIndex + 1));
  const skips = plain.map((s): Observation => {
    const first = part.notes[s.fromIndex]!;
    const last = part.notes[s.toIndex]!;
    const atEnd = s.toIndex === part.notes.length - 1;
    const { breaksOff, endsInSound } = input.measurements.recording;
    const missing = atEnd && (breaksOff || endsInSound);
    const place = { ...placeOf(input, first), toBar: last.bar, toIndex: s.toIndex, onset: s.onsetSeconds };
    return {
      kind: 'skipped-bars',
      criterion: 'continuity',
      weight: missing ? 'watch' : 'fix',
      size: 2.5,
      ...place,
      facts: { toBar: last.bar, atEnd, fileEnds: missing },
    };
  });
  return [...restarts, ...skips];
}
