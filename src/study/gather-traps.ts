import type { Misreading, MisreadingKind, PartNote } from '../score/index.js';
import { pitchName } from './pitch-name.js';
import type { LikelyReason, PitchName, Trap, TrapSign } from './types.js';

/** A note with the misreading it invites. */
export interface TrapNote {
  readonly note: PartNote;
  readonly misreading: Misreading;
  /** the note whose sign leads astray */
  readonly because: PartNote | null;
  /** why the key signature may be forgotten here */
  readonly likely: LikelyReason | null;
}

const RANKS: Readonly<Record<MisreadingKind, Trap['rank']>> = {
  'dropped-within-bar': 1,
  'carried-past-barline': 1,
  'wrong-octave-applied': 1,
  'key-signature-forgotten': 2,
  'accidental-forgotten': 3,
};

/**
 * @param found notes with what they invite, in the order of the page
 * @returns the traps in the order of the page, equal ones in a bar as one
 *
 * Source: the rule of accidentals, common practice.
 */
export function trapsOf(found: readonly TrapNote[]): Trap[] {
  const groups = new Map<string, TrapNote[]>();
  for (const one of found) {
    const key = groupOf(one);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()]
    .map((group) => trapOf(group))
    .sort((a, b) => a.barIndex - b.barIndex || beatOf(a) - beatOf(b));
}

function groupOf({ note, misreading, likely }: TrapNote): string {
  const { step, octave, alter } = note.written;
  const why = misreading.kind === 'key-signature-forgotten' ? likely?.why : '';
  return [note.barIndex, misreading.kind, why === 'first' ? '' : `${step}${octave}${alter}`, why].join(' ');
}

function beatOf(trap: Trap): number {
  return trap.beats[0] ?? 0;
}

function trapOf(group: readonly TrapNote[]): Trap {
  const [{ note, misreading, because, likely }] = group as [TrapNote];
  return {
    kind: misreading.kind,
    bar: note.bar,
    barIndex: note.barIndex,
    beats: group.map((one) => one.note.beat),
    printedIds: group.map((one) => one.note.printedId),
    pitches: eachOnce(group.map((one) => pitchName(one.note.written))),
    misread: eachOnce(group.map(misreadAs)),
    because: because === null ? null : signAt(because, note),
    likely: misreading.kind === 'key-signature-forgotten' ? likely : null,
    rank: RANKS[misreading.kind],
  };
}

function misreadAs({ note, misreading }: TrapNote): PitchName {
  return { step: note.written.step, alter: note.written.alter + misreading.writtenMidi - note.writtenMidi };
}

function signAt({ bar, barIndex, beat, printedId, written }: PartNote, note: PartNote): TrapSign {
  const higher = written.octave - note.written.octave;
  const octave = higher === 0 ? 'same' : higher > 0 ? 'higher' : 'lower';
  return { bar, barIndex, beat, printedId, alter: written.alter, octave };
}

function eachOnce(names: readonly PitchName[]): PitchName[] {
  const seen = new Set<string>();
  return names.filter(({ step, alter }) => !seen.has(step + alter) && seen.add(step + alter));
}
