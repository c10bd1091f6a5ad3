import { isMeasured, median, quantile } from '../../base/index.js';
import type { HeldNoteMeasure, StartMeasure } from '../../measure/index.js';
import { isSure } from '../observed/is-sure.js';
import { type JudgeInput, placeOf } from '../observed/judge-input.js';
import type { Observation } from '../observed/observation.js';
import { whySoundIsOut } from '../sound-judged.js';

/** Pitches nearer than this are taken for one. */
const NEAR_SEMITONES = 0.75;
/** A quarter of the long notes stray further than this one: what a player does so often is no slip. */
const UPPER_QUARTER = 0.75;

/**
 * Steadiness, never beauty: long notes that shake beside the player's own others, air that gives way before a breath, and notes
 * that crack. All of it is worth a listen at most.
 *
 * @param input one take
 * @returns observations; none where the recording does not let the sound be judged
 *
 * Source: standards wobbleWatch, wobbleOver, wobbleSeconds, wobbleVibrato, sagCents, sagDb, crackSeconds, crackLongest.
 */
export function judgeSound(input: JudgeInput): Observation[] {
  const { measurements } = input;
  if (whySoundIsOut(measurements) !== null) return [];
  return [
    ...measurements.heldNotes.flatMap((note) => [...unsteady(input, note), ...givingWay(input, note)]),
    ...measurements.starts.flatMap((start) => cracked(input, start)),
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

/** A start at another pitch for a moment; a longer one is a note of its own. */
function cracked(input: JudgeInput, { index, crack }: StartMeasure): Observation[] {
  const { crackSeconds, crackLongest } = input.standards;
  if (crack === undefined || crack.seconds <= crackSeconds.value || crack.seconds > crackLongest.value) return [];
  if (!isSure(input, index) || mayBeAnother(input, index, crack.semitones)) return [];
  const facts = { milliseconds: 1000 * crack.seconds, above: crack.semitones > 0 };
  const measured = { value: crack.seconds, unit: 's', expected: { code: 'no-other-pitch', facts: {} } } as const;
  const place = { ...placeOf(input, input.part.notes[index]!), measured, facts };
  return [{ kind: 'cracked-start', criterion: 'sound', weight: 'watch', size: 0.2 + crack.seconds, ...place }];
}

/**
 * Whether a sound before a note may be something else than its own beginning: an octave away the program may mishear, at the
 * pitch of the note before it is the room, grace notes and ornaments are notes, an added note is told already, and where the
 * player came from elsewhere anything may have sounded.
 */
function mayBeAnother({ part, alignment }: JudgeInput, index: number, semitones: number): boolean {
  const note = part.notes[index]!;
  const before = part.notes[index - 1];
  if (before === undefined || before.grace || note.ornament !== null) return true;
  const octaves = semitones / 12;
  if (Math.abs(octaves - Math.round(octaves)) * 12 < NEAR_SEMITONES) return true;
  if (Math.abs(note.soundingMidi + semitones - before.soundingMidi) < NEAR_SEMITONES) return true;
  if (alignment.notes[index - 1]?.status !== 'as-written') return true;
  return (
    alignment.added.some(({ afterIndex }) => afterIndex === index - 1) ||
    alignment.restarts.some(({ resumedAtIndex }) => resumedAtIndex === index)
  );
}
