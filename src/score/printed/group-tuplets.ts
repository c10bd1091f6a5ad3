import type { PrintedNote, PrintedTuplet, TimeModification } from './types.js';

interface OpenGroup {
  readonly group: number;
  readonly number: string | null;
  readonly bracketed: boolean;
  readonly outer: TimeModification | null;
  readonly modification: TimeModification;
  readonly ratio: { actualNotes: number; normalNotes: number };
  readonly quartersOfUnit: number | null;
  filledQuarters: number;
  shortestQuarters: number;
  places: number;
}

/**
 * Tuplet groups. A bracket says where a group begins and ends; without one, a run of equal time-modification is cut where
 * it fills normal notes × unit, never inside a beam. Notes in nested tuplets belong to the innermost bracket.
 *
 * @param line notes and rests of one voice in printed order
 * @returns the place of each note in its group, by note id
 *
 * Source: MusicXML 4.0, `tuplet`, `time-modification` (the whole ratio of nested tuplets at every note).
 */
export function groupTuplets(line: readonly PrintedNote[]): Map<string, PrintedTuplet> {
  const places = new Map<string, PrintedTuplet>();
  const brackets = bracketEnds(line);
  const open: OpenGroup[] = [];
  let groups = 0;
  line.forEach((note, i) => {
    if (note.modification === null) {
      if (!note.grace) open.length = 0;
      return;
    }
    if (note.grace) return;
    closeBroken(open, note.modification);
    for (const start of note.tuplets.filter((end) => end.type === 'start' && brackets.has(`${i}/${end.number}`))) {
      if (open.at(-1)?.bracketed === false) open.pop();
      open.push(openGroup(groups++, note, note.modification, open.at(-1), start));
    }
    if (open.length === 0) open.push(openGroup(groups++, note, note.modification, undefined, null));
    place(note, open, places);
    closeEnded(open, note);
  });
  return places;
}

/** Beginnings of brackets that do end before the run of tuplets ends, as "index/number". */
function bracketEnds(line: readonly PrintedNote[]): Set<string> {
  const ended = new Set<string>();
  let open = new Map<string, string>();
  line.forEach((note, i) => {
    if (note.modification === null && !note.grace) open = new Map();
    for (const end of note.tuplets) {
      if (end.type === 'start') open.set(end.number, `${i}/${end.number}`);
    }
    for (const end of note.tuplets) {
      const start = end.type === 'stop' ? open.get(end.number) : undefined;
      if (start !== undefined) ended.add(start);
      if (end.type === 'stop') open.delete(end.number);
    }
  });
  return ended;
}

function openGroup(
  group: number,
  note: PrintedNote,
  modification: TimeModification,
  outer: OpenGroup | undefined,
  bracket: { number: string; actualNotes: number | null; normalNotes: number | null } | null,
): OpenGroup {
  const inherited = outer?.modification ?? null;
  return {
    group,
    number: bracket?.number ?? null,
    bracketed: bracket !== null,
    outer: inherited,
    modification,
    ratio: ownRatio(modification, inherited, bracket),
    quartersOfUnit: modification.normalQuarters,
    filledQuarters: 0,
    shortestQuarters: note.typeQuarters ?? Number.POSITIVE_INFINITY,
    places: 0,
  };
}

/** The group's own ratio: as its bracket says, else what is left of the whole ratio after the outer groups'. */
function ownRatio(
  whole: TimeModification,
  outer: TimeModification | null,
  bracket: { actualNotes: number | null; normalNotes: number | null } | null,
): { actualNotes: number; normalNotes: number } {
  if (bracket?.actualNotes && bracket.normalNotes) {
    return { actualNotes: bracket.actualNotes, normalNotes: bracket.normalNotes };
  }
  if (outer === null) return { actualNotes: whole.actualNotes, normalNotes: whole.normalNotes };
  const actualNotes = whole.actualNotes / outer.actualNotes;
  const normalNotes = whole.normalNotes / outer.normalNotes;
  const whole2 = Number.isInteger(actualNotes) && Number.isInteger(normalNotes);
  return whole2 ? { actualNotes, normalNotes } : { actualNotes: whole.actualNotes, normalNotes: whole.normalNotes };
}

/** An unbracketed run ends where the ratio changes. */
function closeBroken(open: OpenGroup[], modification: TimeModification): void {
  const last = open.at(-1);
  if (last === undefined || last.bracketed) return;
  const same =
    last.modification.actualNotes === modification.actualNotes &&
    last.modification.normalNotes === modification.normalNotes;
  if (!same) open.pop();
}

function place(note: PrintedNote, open: readonly OpenGroup[], places: Map<string, PrintedTuplet>): void {
  const inner = open.at(-1) as OpenGroup;
  places.set(note.id, { printedGroup: inner.group, ...inner.ratio, place: inner.places });
  for (const group of open) {
    group.places++;
    group.filledQuarters += note.duration;
    group.shortestQuarters = Math.min(group.shortestQuarters, note.typeQuarters ?? Number.POSITIVE_INFINITY);
  }
}

function closeEnded(open: OpenGroup[], note: PrintedNote): void {
  for (const end of note.tuplets) {
    const last = open.at(-1);
    if (end.type === 'stop' && last?.bracketed && last.number === end.number) open.pop();
  }
  const last = open.at(-1);
  if (last === undefined || last.bracketed || note.beamGoesOn) return;
  const unit = last.quartersOfUnit ?? last.shortestQuarters;
  if (last.filledQuarters >= last.ratio.normalNotes * unit - 1e-3) open.pop();
}
