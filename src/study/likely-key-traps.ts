import type { PartNote } from '../score/index.js';
import { pitchName } from './pitch-name.js';
import type { LikelyReason } from './types.js';

/** After this many bars a sign on the same line is out of mind. */
const BARS_IN_MIND = 4;

/**
 * Notes that the key signature alone alters and where that is likely forgotten: the first on its letter, the first on its
 * line after a sign there, and those beside a natural.
 *
 * @param notes printed notes in order
 * @returns the reason by the note's index
 *
 * Source: working choice; common practice.
 */
export function likelyKeyTraps(notes: readonly PartNote[]): Map<number, LikelyReason> {
  const reasons = new Map<number, LikelyReason>();
  const lettersSeen = new Set<string>();
  const signs = new Map<string, PartNote>();
  for (const [place, note] of notes.entries()) {
    const { step, octave, alter } = note.written;
    const line = `${step}${octave}`;
    const sign = signs.get(line);
    const first = !lettersSeen.has(step);
    lettersSeen.add(step);
    if (note.printedAccidental !== null) signs.set(line, note);
    else if (sign !== undefined && sign.barIndex < note.barIndex) signs.delete(line);
    if (!note.misreadings.some(({ kind }) => kind === 'key-signature-forgotten')) continue;
    const neighbour = [notes[place - 1], notes[place + 1]].find((other) => other && isNaturalNear(other, note));
    const inMind = sign !== undefined && note.barIndex - sign.barIndex <= BARS_IN_MIND && sign.written.alter !== alter;
    if (inMind) reasons.set(note.index, { why: 'after-sign', bar: sign.bar, alter: sign.written.alter });
    else if (neighbour !== undefined)
      reasons.set(note.index, { why: 'beside-natural', neighbour: pitchName(neighbour.written) });
    else if (first) reasons.set(note.index, { why: 'first' });
  }
  return reasons;
}

function isNaturalNear(other: PartNote, note: PartNote): boolean {
  return (
    other.printedAccidental === 'natural' &&
    other.barIndex === note.barIndex &&
    other.written.step !== note.written.step
  );
}
