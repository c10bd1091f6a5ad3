import { isMeasured, median, quantile } from '../../base/index.js';
import type { HeldNoteMeasure } from '../../measure/index.js';
import { isSure } from '../observed/is-sure.js';
import { type JudgeInput, placeOf } from '../observed/judge-input.js';
import type { Observation } from '../observed/observation.js';
import { whySoundIsOut } from '../sound-judged.js';
import { judgeStarts } from './starts.js';

/** A quarter of the long notes stray further than this one: what a player does so often is no slip. */
const UPPER_QUARTER = 0.75;

/**
 * Steadiness, never beauty: long notes that shake beside the player's own others, air that gives way before a breath, and how
 * notes start. All of it is worth a listen at most.
 *
 * @param input one take
 * @returns observations; none where the recording does not let the sound be judged
 *
 * Source: standards wobbleWatch, wobbleOver, wobbleSeconds, wobbleVibrato, sagCents, sagDb; for starts see judgeStarts.
 */
export function judgeSound(input: JudgeInput): Observation[] {
  const { measurements } = input;
  if (whySoundIsOut(measurements) !== null) return [];
  return [
    ...measurements.heldNotes.flatMap((note) => [...unsteady(input, note), ...givingWay(input, note)]),
    ...judgeStarts(input),
  ];
}

/**
 * @param input one take
 * @param note one of its long notes
 * @returns whether it shakes: not as vibrato does, and well beyond what this player's long notes do
 *
 * Source: standards wobbleWatch, wobbleOver, wobbleSeconds, wobbleVibrato.
 */
export function isUnsteady(input: JudgeInput, note: HeldNoteMeasure): boolean {
  const { steadiness } = input.measurements;
  const { wobbleSeconds, wobbleVibrato } = input.standards;
  if (!isMeasured(steadiness) || note.vibrato !== undefined || note.seconds < wobbleSeconds.value) return false;
  const { vibratoCount, count } = steadiness;
  if (vibratoCount > wobbleVibrato.value * (count + vibratoCount)) return false;
  if (note.wobbleCents <= input.standards.wobbleWatch.value || !isSure(input, note.index)) return false;
  return note.wobbleCents > mostWobble(input);
}

/** How far a long note of this player may stray, cents. */
function mostWobble({ measurements, standards }: JudgeInput): number {
  const plain = measurements.heldNotes.filter(({ vibrato }) => vibrato === undefined);
  const often = quantile(
    plain.map(({ wobbleCents }) => wobbleCents),
    UPPER_QUARTER,
  );
  return Math.max(standards.wobbleWatch.value, standards.wobbleOver.value * often);
}

function unsteady(input: JudgeInput, note: HeldNoteMeasure): Observation[] {
  const { steadiness } = input.measurements;
  if (!isUnsteady(input, note) || !isMeasured(steadiness)) return [];
  const [cents, usual] = [note.wobbleCents, steadiness.wobbleCents];
  const expected = { code: 'within', facts: { value: Math.round(mostWobble(input)) } } as const;
  const measured = { value: cents, unit: 'cents', expected } as const;
  const place = { ...placeOf(input, input.part.notes[note.index]!), measured, facts: { cents, usual } };
  return [{ kind: 'unsteady-note', criterion: 'sound', weight: 'watch', size: cents / 100, ...place }];
}

/** Pitch and level fall together at the end, beyond what this player's long notes do. */
function givingWay(input: JudgeInput, note: HeldNoteMeasure): Observation[] {
  const { sagCents, sagDb } = input.standards;
  const db = -note.endDb;
  if (!note.beforeBreath || db <= sagDb.value || !isSure(input, note.index)) return [];
  const cents = median(input.measurements.heldNotes.map((one) => one.endCents)) - note.endCents;
  if (cents <= sagCents.value) return [];
  const expected = { code: 'within', facts: { value: sagCents.value } } as const;
  const measured = { value: -cents, unit: 'cents', expected } as const;
  const place = { ...placeOf(input, input.part.notes[note.index]!), measured, facts: { cents, db } };
  return [{ kind: 'air-gives-way', criterion: 'sound', weight: 'watch', size: cents / 100, ...place }];
}
