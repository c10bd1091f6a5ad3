import { median, medianInterval, type NotMeasured, notMeasured } from '../../base/index.js';
import type { HeldNoteMeasure, SteadinessMeasure } from '../types.js';

/** Fewer notes say nothing of how a player usually holds one. */
const LEAST_NOTES = 5;

/**
 * How steadily this player usually holds a long note. What moves as regularly as vibrato is counted and left out.
 *
 * @param heldNotes the long notes
 * @returns medians with their 95 % interval, or why there are none
 *
 * Source: median by definition; its interval: see base.
 */
export function measureSteadiness(heldNotes: readonly HeldNoteMeasure[]): SteadinessMeasure | NotMeasured {
  const plain = heldNotes.filter(({ vibrato }) => vibrato === undefined);
  if (heldNotes.length < LEAST_NOTES) return notMeasured('too-few-held-notes');
  if (plain.length < LEAST_NOTES) return notMeasured('held-with-vibrato');
  const wobbles = plain.map(({ wobbleCents }) => wobbleCents);
  return {
    wobbleCents: median(wobbles),
    intervalCents: medianInterval(wobbles),
    count: plain.length,
    vibratoCount: heldNotes.length - plain.length,
  };
}
