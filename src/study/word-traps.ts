import type { Misreading, MisreadingKind, PartNote } from '../score/index.js';
import type { LikelyReason } from './likely-key-traps.js';
import { beatName, listed, signedName, signOf } from './names.js';
import type { Trap } from './types.js';

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
 * @returns the traps in words, equal ones in a bar as one
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
  const [first] = group as [TrapNote];
  const { note, misreading, because } = first;
  return {
    kind: misreading.kind,
    bar: note.bar,
    barIndex: note.barIndex,
    beats: group.map((one) => one.note.beat),
    printedIds: group.map((one) => one.note.printedId),
    name: listed([...new Set(group.map((one) => signedName(one.note.written)))]),
    misread: listed([...new Set(group.map(misreadName))]),
    because: because === null ? null : { barIndex: because.barIndex, printedId: because.printedId },
    rank: RANKS[misreading.kind],
    reason: WORDS[misreading.kind](first, group),
  };
}

function misreadName({ note, misreading }: TrapNote): string {
  const alter = note.written.alter + misreading.writtenMidi - note.writtenMidi;
  return signedName({ step: note.written.step, alter });
}

const WORDS: Readonly<Record<MisreadingKind, (first: TrapNote, group: readonly TrapNote[]) => string>> = {
  'dropped-within-bar': (first, group) => {
    const { note, because } = first;
    const sign = signOf(note.written.alter);
    const from = because === null ? 'earlier in the bar' : `from beat ${beatName(because.beat)}`;
    return `${beats(group)}: the ${sign} ${from} still holds. ${pair(first)}`;
  },
  'carried-past-barline': (first, group) => {
    const { because } = first;
    const sign = because === null ? 'sign' : signOf(because.written.alter);
    const where = because === null ? 'before' : `in bar ${because.bar}`;
    return `${beats(group)}: the ${sign} ${where} ended at the barline. ${pair(first)}`;
  },
  'wrong-octave-applied': (first, group) => {
    const { note, because } = first;
    const other = (because?.written.octave ?? 0) > note.written.octave ? 'higher' : 'lower';
    const sign =
      because === null ? 'sign in this bar' : `${signOf(because.written.alter)} on beat ${beatName(because.beat)}`;
    return `${beats(group)}: the ${sign} belongs to the ${other} ${note.written.step} only. ${pair(first)}`;
  },
  'key-signature-forgotten': (one, group) => {
    const { note, likely } = one;
    const name = signedName(note.written);
    if (likely?.why === 'after-sign') {
      const sign = signedName({ step: note.written.step, alter: likely.alter });
      return `${beats(group)}: after the ${sign} in bar ${likely.bar} the key signature is back. ${pair(one)}`;
    }
    if (likely?.why === 'beside-natural') {
      const beside = signedName(likely.neighbour.written);
      return `${beats(group)}: right beside the ${beside} the key signature still makes this ${name}.`;
    }
    const names = [...new Set(group.map((one) => signedName(one.note.written)))];
    const first = names.length === 1 ? 'this is the first one' : 'these are the first ones';
    return `${beats(group)}: the key signature asks for ${listed(names)}; ${first}.`;
  },
  'accidental-forgotten': (first, group) =>
    `${beats(group)}: a ${signOf(first.note.written.alter)} is printed here. ${pair(first)}`,
};

function beats(group: readonly TrapNote[]): string {
  const names = [...new Set(group.map((one) => beatName(one.note.beat)))];
  return `${names.length === 1 ? 'Beat' : 'Beats'} ${listed(names)}`;
}

function pair(one: TrapNote): string {
  return `Play ${signedName(one.note.written)}, not ${misreadName(one)}.`;
}
