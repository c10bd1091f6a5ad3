import { A4_HZ, isMeasured, median, type NotMeasured, notMeasured } from '../../base/index.js';
import type { NoteContext } from '../context/context.js';
import type { TuningMeasure } from '../types.js';

const LEAST_NOTES = 5;

/**
 * @param context the take with its notes measured
 * @returns the tuning the whole take agrees on: median deviation of its notes
 *
 * Source: ISO 16 (A4 = 440 Hz).
 */
export function measureTuning(context: NoteContext): TuningMeasure | NotMeasured {
  const cents = context.notes.map((n) => n.cents).filter(isMeasured<number>);
  if (cents.length < LEAST_NOTES) return notMeasured('too-few-pitches');
  const centsFromA440 = median(cents);
  return { centsFromA440, a4Hz: A4_HZ * 2 ** (centsFromA440 / 1200) };
}
