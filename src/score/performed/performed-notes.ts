import { InputError } from '../../base/index.js';
import { midiOfWritten } from '../pitch/pitch.js';
import type { LineNote } from '../printed/read-line.js';
import { type PrintedNote, SAME_PLACE } from '../printed/types.js';
import type { Articulation, Misreading, PartNote, TupletPlace, WrittenPitch } from '../types.js';
import type { PlayedBar } from './performed-bars.js';
import { SlurWalk } from './slur-walk.js';

/** A sounding note and the document order of its first printed note, by which marks at one place are told apart. */
export interface PlayedNote {
  readonly note: PartNote;
  readonly order: number;
}

/** A long concerto movement has some ten thousand; each takes a kilobyte. */
const MOST_NOTES = 20_000;

type DraftNote = { -readonly [K in keyof PartNote]: PartNote[K] };

interface Draft {
  readonly note: DraftNote;
  readonly order: number;
  /** the last printed note of the chain is tied onwards */
  tiedOn: boolean;
  /** the performed bar of the last printed note of the chain */
  step: number;
}

interface Walk {
  readonly drafts: Draft[];
  readonly slurs: SlurWalk;
  readonly tupletNumbers: Map<number, { number: number; place: number }>;
  tuplets: number;
  heldRest: boolean;
}

/**
 * The sounding notes in performed order: repeats unfolded, tied notes merged, slurs followed.
 *
 * @param played bars in performed order
 * @param line notes and rests of each printed bar
 * @returns the notes
 * @throws InputError `score-refused` when there are more than anyone plays
 *
 * Source: MusicXML 4.0, `tie`; ties over repeats and endings: common practice.
 */
export function performedNotes(played: readonly PlayedBar[], line: readonly (readonly LineNote[])[]): PlayedNote[] {
  const walk: Walk = { drafts: [], slurs: new SlurWalk(), tupletNumbers: new Map(), tuplets: 0, heldRest: false };
  played.forEach((bar, step) => {
    if (bar.jumped) walk.slurs.jump();
    for (const note of line[bar.performed.barIndex] ?? []) addPrinted(note, bar, step, walk);
    if (walk.drafts.length > MOST_NOTES) throw new InputError('too-many-notes', { most: MOST_NOTES });
    if (bar.printed.fermataAtEnd && step < played.length - 1) holdBarline(walk);
  });
  return finished(walk);
}

function addPrinted(lineNote: LineNote, bar: PlayedBar, step: number, walk: Walk): void {
  const { printed, slurEnds } = lineNote;
  const before = walk.drafts.at(-1);
  const tuplet = tupletPlace(lineNote, walk);
  if (printed.pitch === null) {
    if (printed.fermata) walk.heldRest = true;
    if (printed.breathAfter !== null && before !== undefined) before.note.breathAfter ??= printed.breathAfter;
  } else if (before !== undefined && goesOn(printed, printed.pitch, bar, step, before)) {
    lengthen(before, printed);
    before.step = step;
  } else {
    const note = newNote(lineNote, printed.pitch, bar, tuplet, walk);
    walk.drafts.push({ note, order: printed.order, tiedOn: printed.tieStart, step });
    walk.heldRest = false;
  }
  walk.slurs.pass(slurEnds, walk.drafts.length - 1);
}

/** True when a printed note only prolongs the note before: tied from it, or tied from a bar that was left by a jump. */
function goesOn(printed: PrintedNote, pitch: WrittenPitch, bar: PlayedBar, step: number, before: Draft): boolean {
  const { note } = before;
  const onset = bar.performed.startQuarters + printed.at;
  const touches = Math.abs(note.onsetQuarters + note.durationQuarters - onset) < 1e-3;
  if (!printed.tieStop || note.grace || printed.grace || !touches || note.writtenMidi !== rounded(midiOfWritten(pitch)))
    return false;
  return before.tiedOn || (bar.jumped && before.step === step - 1);
}

function lengthen(before: Draft, printed: PrintedNote): void {
  const { note } = before;
  note.durationQuarters += printed.duration;
  before.tiedOn = printed.tieStart;
  note.fermata ||= printed.fermata;
  note.breathAfter ??= printed.breathAfter;
  note.ornament ??= printed.ornament;
  note.articulations = union(note.articulations, printed.articulations);
}

function union(a: readonly Articulation[], b: readonly Articulation[]): readonly Articulation[] {
  return b.length === 0 ? a : [...new Set([...a, ...b])];
}

function newNote(
  lineNote: LineNote,
  written: WrittenPitch,
  bar: PlayedBar,
  tuplet: TupletPlace | null,
  walk: Walk,
): DraftNote {
  const { performed } = bar;
  const { printed, reading, transposeSemitones } = lineNote;
  const onsetQuarters = performed.startQuarters + printed.at;
  const writtenMidi = rounded(midiOfWritten(written));
  const before = walk.drafts.at(-1)?.note;
  const silence = before === undefined ? 0 : onsetQuarters - before.onsetQuarters - before.durationQuarters;
  return {
    index: walk.drafts.length,
    bar: performed.bar,
    barIndex: performed.barIndex,
    pass: performed.pass,
    beat: tidy(1 + ((printed.at + bar.printed.missingQuarters) * performed.beatType) / 4),
    onsetQuarters,
    durationQuarters: printed.duration,
    written,
    writtenMidi,
    soundingMidi: writtenMidi + transposeSemitones,
    grace: printed.grace,
    printedAccidental: reading?.sign ?? null,
    misreadings: misreadingsOf(lineNote, written),
    articulations: printed.articulations,
    slurredFromPrevious: false,
    slurredToNext: false,
    fermata: printed.fermata,
    breathAfter: printed.breathAfter,
    tuplet,
    ornament: printed.ornament,
    restBeforeQuarters: silence > SAME_PLACE ? tidy(silence) : 0,
    printedId: printed.id,
    ...(walk.heldRest ? { heldRestBefore: true } : {}),
  };
}

function misreadingsOf(lineNote: LineNote, written: WrittenPitch): Misreading[] {
  return (lineNote.reading?.misreadings ?? []).map(({ kind, alter }) => {
    const writtenMidi = rounded(midiOfWritten({ ...written, alter }));
    return { kind, writtenMidi, soundingMidi: writtenMidi + lineNote.transposeSemitones };
  });
}

/** Microtones are read as the nearest semitone. */
function rounded(midi: number): number {
  return Math.round(midi);
}

/** Takes the last digits of a sum of fractions away. */
function tidy(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}

/** A group gets a new number each time it is reached. */
function tupletPlace(lineNote: LineNote, walk: Walk): TupletPlace | null {
  if (lineNote.tuplet === null) return null;
  const { printedGroup, actualNotes, normalNotes, place } = lineNote.tuplet;
  const seen = walk.tupletNumbers.get(printedGroup);
  const number = seen !== undefined && place > seen.place ? seen.number : walk.tuplets++;
  walk.tupletNumbers.set(printedGroup, { number, place });
  return { group: number, actualNotes, normalNotes, place };
}

/** A fermata over a barline inside the piece holds the silence there. */
function holdBarline(walk: Walk): void {
  const last = walk.drafts.at(-1);
  if (last === undefined) return;
  last.note.breathAfter ??= 'caesura';
  walk.heldRest = true;
}

function finished(walk: Walk): PlayedNote[] {
  return walk.drafts.map(({ note, order }, i) => {
    const next = walk.drafts[i + 1]?.note;
    note.slurredFromPrevious = note.restBeforeQuarters === 0 && walk.slurs.coversBoundaryBefore(i);
    note.slurredToNext = next !== undefined && next.restBeforeQuarters === 0 && walk.slurs.coversBoundaryBefore(i + 1);
    return { note, order };
  });
}
