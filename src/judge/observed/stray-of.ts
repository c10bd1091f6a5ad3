import { isMeasured } from '../../base/index.js';
import type { NoteMeasure } from '../../measure/index.js';
import type { PartNote } from '../../score/index.js';
import { isBeyond } from '../beyond.js';
import type { JudgeInput } from './judge-input.js';

/** A note that strays from the player's own tuning. */
export interface Stray {
  readonly note: PartNote;
  /** from the player's own tuning */
  readonly cents: number;
  readonly weight: 'fix' | 'watch';
  /** the same as a second ear hears it, where its doubt keeps the note from being a `fix` */
  readonly secondCents?: number;
}

/**
 * @param input one take
 * @param measure a note of it
 * @returns how it strays; null where it does not, was not played as written, or cannot be told. What is
 *   lost in the noise is no `fix`
 *
 * Source: standards slipConfidence, noteWatch, noteFix, noteSeconds.
 */
export function strayOf(input: Omit<JudgeInput, 'brief'>, measure: NoteMeasure): Stray | null {
  const { slipConfidence, noteWatch, noteFix, noteSeconds } = input.standards;
  const aligned = input.alignment.notes[measure.index]!;
  const cents = measure.centsFromOwnTuning;
  if (aligned.status !== 'as-written' || !isMeasured(cents) || !isBeyond(Math.abs(cents), noteWatch.value, 0))
    return null;
  const held = aligned.offsetSeconds! - aligned.onsetSeconds! >= noteSeconds.value;
  const far = Math.abs(cents) > noteFix.value;
  if (!held && !far) return null;
  const note = input.part.notes[measure.index]!;
  const sure = held && aligned.confidence >= slipConfidence.value && isMeasured(measure.levelDb);
  if (!sure || !far) return { note, cents, weight: 'watch' };
  const secondCents = doubtOf(measure, noteWatch.value);
  return secondCents === null ? { note, cents, weight: 'fix' } : { note, cents, weight: 'watch', secondCents };
}

/**
 * Two ears further apart than the standard is wide: neither can be trusted so far. Cents from the player's own tuning, null
 * where the second ear agrees, cannot tell, or was not asked.
 */
function doubtOf({ cents, centsFromOwnTuning, secondEarCents }: NoteMeasure, width: number): number | null {
  if (secondEarCents === undefined || !isMeasured(secondEarCents)) return null;
  if (!isMeasured(cents) || !isMeasured(centsFromOwnTuning) || Math.abs(secondEarCents - cents) <= width) return null;
  return secondEarCents - cents + centsFromOwnTuning;
}
