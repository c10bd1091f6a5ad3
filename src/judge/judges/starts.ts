import { isMeasured, median, quantile } from '../../base/index.js';
import type { AttackMeasure, CrackMeasure, StartMeasure } from '../../measure/index.js';
import { isSure } from '../observed/is-sure.js';
import { type JudgeInput, placeOf } from '../observed/judge-input.js';
import type { Observation } from '../observed/observation.js';

/** Pitches nearer than this are taken for one. */
const NEAR_SEMITONES = 0.75;
/** Fewer other notes do not say how a player's notes usually start. */
const LEAST_OTHERS = 5;
/** An attack that is heard as one is so much louder than the notes beside it. Source: twice what is just noticed (Slade et al. 2022). */
const STANDS_OUT_DB = 2;
/** A quarter of the notes speak later than this one: what a player does so often is no slip. */
const UPPER_QUARTER = 0.75;

/**
 * Notes that crack, and notes that speak late or are hit, beside the player's own others.
 *
 * @param input one take
 * @returns observations, worth a listen at most
 *
 * Source: standards crackSeconds, crackLongest, speakSeconds, speakOver, hitDb, hitOver.
 */
export function judgeStarts(input: JudgeInput): Observation[] {
  const { cracks, starts, attacks } = input.measurements;
  return [
    ...cracks.flatMap((crack) => cracked(input, crack)),
    ...starts.flatMap((start) => speakingLate(input, start)),
    ...attacks.flatMap((attack) => hit(input, attack)),
  ];
}

/**
 * @param input one take
 * @param start of one of its notes
 * @returns whether it speaks late: pitch and level, both of them, come well later than this player's others do
 *
 * Source: standards speakSeconds, speakOver.
 */
export function isSpeakingLate(input: JudgeInput, start: StartMeasure): boolean {
  const most = mostSilence(input, start);
  return most !== null && spokenAfter(start) > most && isSure(input, start.index) && !isComeToAnew(input, start.index);
}

/** How long a note may need to speak, seconds; null where it is prompt, or cracks, or nobody knows how this player's notes start. */
function mostSilence({ measurements, standards }: JudgeInput, start: StartMeasure): number | null {
  if (start.crack !== undefined || spokenAfter(start) <= standards.speakSeconds.value) return null;
  const others = measurements.starts.filter((other) => other !== start).map(spokenAfter);
  if (others.length < LEAST_OTHERS) return null;
  return Math.max(standards.speakSeconds.value, standards.speakOver.value * quantile(others, UPPER_QUARTER));
}

function speakingLate(input: JudgeInput, start: StartMeasure): Observation[] {
  const most = mostSilence(input, start);
  if (most === null || !isSpeakingLate(input, start)) return [];
  const seconds = spokenAfter(start);
  const usual = median(input.measurements.starts.map(spokenAfter));
  const expected = { code: 'within', facts: { value: Math.round(100 * most) / 100 } } as const;
  const measured = { value: seconds, unit: 's', expected } as const;
  const facts = { milliseconds: 1000 * seconds, usual: 1000 * usual };
  const place = { ...placeOf(input, input.part.notes[start.index]!), measured, facts };
  return [{ kind: 'speaks-late', criterion: 'sound', weight: 'watch', size: 0.2 + seconds, ...place }];
}

/** A note that is at its pitch, or at its level, speaks. */
function spokenAfter({ pitchSeconds, levelSeconds }: StartMeasure): number {
  return Math.max(0, Math.min(pitchSeconds, levelSeconds));
}

/** An attack well over the level the note comes to, and well over those of this player's other notes; what cracks may be louder. */
function hit(input: JudgeInput, attack: AttackMeasure): Observation[] {
  const { hitDb, hitOver } = input.standards;
  const isCracked = input.measurements.cracks.some(({ index }) => index === attack.index);
  if (isCracked || attack.overDb <= hitDb.value) return [];
  const others = input.measurements.attacks.filter((other) => other !== attack).map(({ overDb }) => overDb);
  if (others.length < LEAST_OTHERS || !isSure(input, attack.index) || isComeToAnew(input, attack.index)) return [];
  const most = Math.max(hitDb.value, hitOver.value + quantile(others, UPPER_QUARTER));
  if (attack.overDb <= most || !isOverNeighbours(input, attack)) return [];
  const expected = { code: 'within', facts: { value: Math.round(most) } } as const;
  const measured = { value: attack.overDb, unit: 'dB', expected } as const;
  const facts = { db: attack.overDb, usual: median(others) };
  const place = { ...placeOf(input, input.part.notes[attack.index]!), measured, facts };
  return [{ kind: 'hit-start', criterion: 'sound', weight: 'watch', size: attack.overDb / 20, ...place }];
}

/** Whether the attack is louder than the notes beside it as well: from a loud note on, a softer one may be led down to. */
function isOverNeighbours({ measurements: { notes } }: JudgeInput, { index, overDb }: AttackMeasure): boolean {
  const own = notes[index]!.levelDb;
  const beside = [notes[index - 1]?.levelDb, notes[index + 1]?.levelDb].filter((db) => typeof db === 'number');
  return isMeasured<number>(own) && beside.every((db) => own + overDb >= db + STANDS_OUT_DB);
}

/** A start at another pitch for a moment; a longer one is a note of its own. */
function cracked(input: JudgeInput, crack: CrackMeasure): Observation[] {
  const { index } = crack;
  const { crackSeconds, crackLongest } = input.standards;
  if (crack.seconds <= crackSeconds.value || crack.seconds > crackLongest.value) return [];
  if (!isSure(input, index) || mayBeAnother(input, index, crack.semitones)) return [];
  const facts = { milliseconds: 1000 * crack.seconds, above: crack.semitones > 0 };
  const measured = { value: crack.seconds, unit: 's', expected: { code: 'no-other-pitch', facts: {} } } as const;
  const place = { ...placeOf(input, input.part.notes[index]!), measured, facts };
  return [{ kind: 'cracked-start', criterion: 'sound', weight: 'watch', size: 0.2 + crack.seconds, ...place }];
}

/**
 * Whether a sound before a note may be something else than its own beginning: at the pitch of the note before it is the room,
 * grace notes and ornaments are notes, an added note is told already, and where the player came from elsewhere anything may have
 * sounded.
 */
function mayBeAnother(input: JudgeInput, index: number, semitones: number): boolean {
  const { part } = input;
  const note = part.notes[index]!;
  const before = part.notes[index - 1];
  if (before === undefined || before.grace || note.ornament !== null) return true;
  if (Math.abs(note.soundingMidi + semitones - before.soundingMidi) < NEAR_SEMITONES) return true;
  return isComeToAnew(input, index);
}

/** Whether the note before was not played as written, or something else came between: then anything may sound before this one. */
function isComeToAnew({ alignment }: JudgeInput, index: number): boolean {
  return (
    alignment.notes[index - 1]?.status !== 'as-written' ||
    alignment.added.some(({ afterIndex }) => afterIndex === index - 1) ||
    alignment.restarts.some(({ resumedAtIndex }) => resumedAtIndex === index)
  );
}
