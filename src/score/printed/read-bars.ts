import { printable } from '../../base/index.js';
import type { BarRemark } from '../remark-table.js';
import { childNamed, childNumber, childrenNamed, type XmlElement } from '../source/xml-element.js';
import { readKey, readTime, readTranspose, type TimeSignature } from './read-attributes.js';
import { readBarline } from './read-barline.js';
import { readDirection } from './read-direction.js';
import { readNote } from './read-note.js';
import { type DraftRoute, emptyRoute } from './read-route.js';
import { resolveCodas } from './resolve-codas.js';
import {
  type KeyChange,
  type MarkContent,
  type PrintedBar,
  type PrintedMark,
  type PrintedNote,
  SAME_PLACE,
  type TransposeChange,
} from './types.js';

/** Fewer divisions a quarter than this would make a division longer than any note. */
const FEWEST_DIVISIONS = 1 / 64;

/** Letters of a bar's number that are kept. */
const LONGEST_NUMBER = 12;

/** What carries over from bar to bar while a part is read. */
interface ReadingState {
  divisions: number;
  time: TimeSignature;
  notesSeen: number;
  order: number;
  forwardRepeatNext: boolean;
  /** a sign that stands for the bars before it is in force */
  barRepeat: boolean;
  readonly concertScore: boolean;
}

/** A bar being read; the place in it is kept in whole divisions since the divisions last changed. */
interface BarDraft {
  fromQuarters: number;
  divisionsSince: number;
  chordAt: number;
  reached: number;
  fermataAtEnd: boolean;
  readonly route: DraftRoute;
  readonly notes: PrintedNote[];
  readonly marks: PrintedMark[];
  readonly keyChanges: KeyChange[];
  readonly transposeChanges: TransposeChange[];
  readonly remarks: BarRemark[];
}

/**
 * @param measures `measure` elements of one part in order
 * @param concertScore the document is written at concert pitch
 * @returns the bars as printed, all voices and staves
 *
 * Source: MusicXML 4.0, `measure`, `backup`, `forward`, `divisions`, `barline`.
 */
export function readBars(measures: readonly XmlElement[], concertScore: boolean): PrintedBar[] {
  const state: ReadingState = {
    divisions: 1,
    time: { beats: 4, beatType: 4, nominalQuarters: 4 },
    notesSeen: 0,
    order: 0,
    forwardRepeatNext: false,
    barRepeat: false,
    concertScore,
  };
  return resolveCodas(measures.map((measure, index) => readBar(measure, index, state)));
}

function readBar(measure: XmlElement, index: number, state: ReadingState): PrintedBar & { codaSymbol: boolean } {
  const bar = emptyBar(state);
  for (const element of measure.children) {
    state.order++;
    readElement(element, bar, state);
  }
  if (state.barRepeat && bar.notes.every((note) => note.pitch === null)) {
    bar.remarks.push('bar-repeat');
  }
  const { beats, beatType, nominalQuarters } = state.time;
  const lengthQuarters = bar.reached > SAME_PLACE ? bar.reached : (nominalQuarters ?? 4);
  const implicit = measure.attributes.implicit === 'yes';
  const short = nominalQuarters === null ? 0 : nominalQuarters - lengthQuarters;
  return {
    ...bar.route,
    index,
    number: numberOf(measure) || String(index + 1),
    lengthQuarters,
    nominalQuarters,
    beats,
    beatType,
    missingQuarters: (implicit || index === 0) && short > SAME_PLACE ? short : 0,
    implicit,
    notes: bar.notes,
    marks: bar.marks,
    keyChanges: bar.keyChanges,
    transposeChanges: bar.transposeChanges,
    fermataAtEnd: bar.fermataAtEnd,
    remarks: bar.remarks,
  };
}

/** The bar's number as printed, on one line; '' when it has none. */
function numberOf({ attributes }: XmlElement): string {
  const printed = attributes.text?.trim() || attributes.number || '';
  return printable(printed.replace(/\s+/g, ' ').trim().slice(0, LONGEST_NUMBER)).trim();
}

function emptyBar(state: ReadingState): BarDraft {
  const route = emptyRoute();
  route.forwardRepeat = state.forwardRepeatNext;
  state.forwardRepeatNext = false;
  return {
    fromQuarters: 0,
    divisionsSince: 0,
    chordAt: 0,
    reached: 0,
    fermataAtEnd: false,
    route,
    notes: [],
    marks: [],
    keyChanges: [],
    transposeChanges: [],
    remarks: [],
  };
}

function readElement(element: XmlElement, bar: BarDraft, state: ReadingState): void {
  if (element.name === 'note') addNote(element, bar, state);
  else if (element.name === 'backup') move(bar, -(childNumber(element, 'duration') ?? 0), state);
  else if (element.name === 'forward') move(bar, childNumber(element, 'duration') ?? 0, state);
  else if (element.name === 'attributes') addAttributes(element, bar, state);
  else if (element.name === 'direction' || element.name === 'sound') addDirection(element, bar, state);
  else if (element.name === 'barline') addBarline(element, bar, state);
}

function placeIn(bar: BarDraft, state: ReadingState): number {
  return bar.fromQuarters + bar.divisionsSince / state.divisions;
}

function move(bar: BarDraft, divisions: number, state: ReadingState): void {
  bar.divisionsSince += divisions;
  if (placeIn(bar, state) < 0) {
    bar.fromQuarters = 0;
    bar.divisionsSince = 0;
  }
  bar.reached = Math.max(bar.reached, placeIn(bar, state));
}

function addNote(element: XmlElement, bar: BarDraft, state: ReadingState): void {
  state.notesSeen++;
  const inChord = childNamed(element, 'chord') !== undefined;
  const at = inChord ? bar.chordAt : placeIn(bar, state);
  const note = readNote(element, { id: `n${state.notesSeen}`, order: state.order, at, divisions: state.divisions });
  bar.notes.push(note);
  for (const name of note.dynamics) addMark({ kind: 'dynamic', name }, note, bar);
  if (inChord) return;
  bar.chordAt = at;
  if (!note.grace) move(bar, Math.max(0, childNumber(element, 'duration') ?? note.duration * state.divisions), state);
}

function addMark(
  content: MarkContent,
  place: { at: number; order: number; staff: string; voice: string },
  bar: BarDraft,
): void {
  const { at, order, staff, voice } = place;
  bar.marks.push({ ...content, at, order, staff, voice, moved: false });
}

function addAttributes(element: XmlElement, bar: BarDraft, state: ReadingState): void {
  const at = placeIn(bar, state);
  const divisions = childNumber(element, 'divisions');
  if (divisions !== null && divisions >= FEWEST_DIVISIONS && divisions !== state.divisions) {
    bar.fromQuarters = at;
    bar.divisionsSince = 0;
    state.divisions = divisions;
  }
  const time = childNamed(element, 'time');
  const signature = time === undefined ? null : readTime(time);
  if (signature !== null) state.time = signature;
  for (const key of childrenNamed(element, 'key')) {
    bar.keyChanges.push({ at, staff: key.attributes.number ?? null, key: readKey(key) });
  }
  for (const style of childrenNamed(element, 'measure-style')) {
    const sign = childNamed(style, 'measure-repeat');
    if (sign !== undefined) state.barRepeat = sign.attributes.type === 'start';
  }
  if (childrenNamed(element, 'for-part').some(transposes)) {
    bar.remarks.push('concert-pitch');
  }
  for (const transpose of childrenNamed(element, 'transpose')) {
    const semitones = readTranspose(transpose, state.concertScore);
    bar.transposeChanges.push({ at, staff: transpose.attributes.number ?? null, semitones });
  }
}

function transposes(forPart: XmlElement): boolean {
  const transposition = childNamed(forPart, 'part-transpose');
  return transposition !== undefined && readTranspose(transposition, false) !== 0;
}

function addDirection(element: XmlElement, bar: BarDraft, state: ReadingState): void {
  const { marks, route, offsetDivisions } = readDirection(element);
  const moved = offsetDivisions !== 0;
  const at = Math.max(0, placeIn(bar, state) + offsetDivisions / state.divisions);
  const staff = childNamed(element, 'staff')?.text ?? null;
  const voice = childNamed(element, 'voice')?.text ?? null;
  for (const mark of marks) bar.marks.push({ ...mark, at, order: state.order, staff, voice, moved });
  Object.assign(bar.route, route);
}

function addBarline(element: XmlElement, bar: BarDraft, state: ReadingState): void {
  const { route, forwardRepeatAfter, fermata, remark } = readBarline(element);
  Object.assign(bar.route, route);
  bar.fermataAtEnd ||= fermata;
  state.forwardRepeatNext ||= forwardRepeatAfter;
  if (remark !== null) bar.remarks.push(remark);
}
