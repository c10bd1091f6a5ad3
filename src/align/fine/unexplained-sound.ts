import { PRICE } from './prices.js';
import type { Step } from './steps.js';
import type { DecodeInput } from './types.js';

/** A slip of the fingers or a second try at a note is no longer than this. */
const LONGEST_SLIP_SECONDS = 0.5;
const AROUND_NOTES = 6;
const SHORTEST_NOTE_SECONDS = 0.06;
const SHORTEST_PASSED_SECONDS = 0.05;

/**
 * Price of sound before the first note found, which would have to be the notes passed over.
 *
 * @param input the piece
 * @param n first note found
 * @param b boundary at which it begins
 * @returns price, 0 for the first note
 *
 * Source: definition.
 */
export function unexplainedBefore(input: DecodeInput, n: number, b: number): number {
  if (n === 0) return 0;
  const { boundaries, evidence, hopSeconds, notes, pace, startSeconds } = input;
  const before = evidence.voicedSeconds(Math.round(startSeconds / hopSeconds), boundaries.frame[b]!);
  return unexplained(n, before, (notes[n]!.onsetQuarters - notes[0]!.onsetQuarters) * pace[0]!);
}

/**
 * Price of sound after the last note found, which would have to be the notes passed over.
 *
 * @param input the piece
 * @param n last note found
 * @param step at which it, or a note added after it, begins
 * @param lastFrame frame at which the piece is over
 * @returns price, 0 for the last note
 *
 * Source: definition.
 */
export function unexplainedAfter(input: DecodeInput, n: number, step: Step, lastFrame: number): number {
  const { boundaries, evidence, notes, pace } = input;
  const next = notes[n + 1];
  if (next === undefined) return 0;
  const last = notes.at(-1)!;
  const held = step.added ? 0 : (next.onsetQuarters - notes[n]!.onsetQuarters) * pace[n]!;
  const passedOver = (last.onsetQuarters - next.onsetQuarters + last.durationQuarters) * pace[n]!;
  const after = evidence.voicedSeconds(boundaries.frame[step.boundary]!, lastFrame) - held;
  return unexplained(notes.length - 1 - n, Math.max(0, after), passedOver);
}

/**
 * Price of sound at other pitches in a note after which some were passed over: it would have to be those.
 *
 * @param input the piece
 * @param n the note
 * @param from boundary at which it begins
 * @param to boundary at which the next one found begins
 * @param next that one
 * @returns price
 *
 * Source: definition.
 */
export function passedOverCost(input: DecodeInput, n: number, from: number, to: number, next: number): number {
  const { boundaries, evidence, notes, pace, offsetSemitones } = input;
  const a = boundaries.frame[from]!;
  const z = boundaries.frame[to]!;
  const other = evidence.voicedSeconds(a, z) * (1 - evidence.share(notes[n]!.soundingMidi + offsetSemitones, a, z));
  return unexplained(next - n - 1, other, (notes[next]!.onsetQuarters - notes[n + 1]!.onsetQuarters) * pace[n]!);
}

/**
 * Price of sound that one added note would have to be: beyond the length of a slip it is what written notes are.
 *
 * @param input the piece
 * @param n note after which it was added
 * @param voicedSeconds how long it sounds
 * @returns price
 *
 * Source: definition.
 */
export function swallowedCost({ notes, pace }: DecodeInput, n: number, voicedSeconds: number): number {
  const beyond = voicedSeconds - LONGEST_SLIP_SECONDS;
  if (beyond <= 0) return 0;
  const first = Math.max(0, n - AROUND_NOTES);
  const last = Math.min(notes.length - 1, n + AROUND_NOTES);
  const quarters = notes[last]!.onsetQuarters - notes[first]!.onsetQuarters;
  const noteSeconds = (quarters * pace[n]!) / Math.max(1, last - first);
  return (PRICE.unexplainedNote * beyond) / Math.max(SHORTEST_NOTE_SECONDS, noteSeconds);
}

/** Price of so much sound where so many notes were passed over that would take so long. */
function unexplained(notes: number, soundSeconds: number, passedSeconds: number): number {
  return PRICE.unexplainedNote * notes * Math.min(1, soundSeconds / Math.max(SHORTEST_PASSED_SECONDS, passedSeconds));
}
