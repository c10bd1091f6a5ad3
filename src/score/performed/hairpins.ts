import { type PrintedMark, SAME_PLACE } from '../printed/types.js';
import type { Remark } from '../remark-table.js';
import type { Hairpin } from '../types.js';
import { senseOfDynamic } from './dynamic-names.js';
import type { PlayedBar } from './performed-bars.js';
import { firstNoteAt, type PlayedMark } from './performed-marks.js';
import type { PlayedNote } from './performed-notes.js';

/** Words without an end reach this many bars at most, their own included. */
const WORDS_REACH_BARS = 4;

/** Hairpins found, and what a copyist would ask about. */
export interface FoundHairpins {
  readonly hairpins: readonly Hairpin[];
  readonly remarks: readonly Remark[];
}

interface Stretch {
  readonly kind: Hairpin['kind'];
  readonly from: Hairpin['from'];
  readonly start: PlayedMark;
  readonly endQuarters: number;
}

/**
 * Wedges and words. A wedge ends at its stop, at a mark that sets a level, or where the performed order jumps; one that
 * never stops ends at the next level within four bars, else with its bar. Words end with their dashes, at the next level,
 * wedge or word, or after four bars. Notes are under it when they begin in [start, end).
 *
 * @param printed marks in printed order
 * @param marks the same marks in performed order
 * @param played bars in performed order
 * @param notes sounding notes in performed order
 * @returns the hairpins that have notes
 *
 * Source: MusicXML 4.0, `wedge`, `dashes`; where words end: common practice.
 */
export function hairpinsOf(
  printed: readonly PrintedMark[],
  marks: readonly PlayedMark[],
  played: readonly PlayedBar[],
  notes: readonly PlayedNote[],
): FoundHairpins {
  const remarks: Remark[] = [];
  const reach = reachOf(played);
  const closed = closedWedges(printed);
  const hairpins = marks.flatMap((start, i) => {
    const after = (): Iterable<PlayedMark> => marksFrom(marks, i + 1);
    const stretch = wedgeFrom(start, after(), closed.has(start.mark), reach) ?? wordsFrom(start, after, reach);
    if (stretch === null) return [];
    const facts = { bar: start.bar.performed.bar, kind: stretch.kind };
    if (stretch.from === 'wedge' && !closed.has(start.mark)) remarks.push({ code: 'wedge-without-end', facts });
    const hairpin = withNotes(stretch, notes);
    if (hairpin !== null) return [hairpin];
    remarks.push({ code: 'hairpin-without-note', facts });
    return [];
  });
  return { hairpins, remarks };
}

function* marksFrom(marks: readonly PlayedMark[], from: number): Iterable<PlayedMark> {
  for (let i = from; i < marks.length; i++) yield marks[i] as PlayedMark;
}

/** Where a mark's stretch of unbroken performed order ends, and where the fourth bar within it does. */
interface Reach {
  readonly unbrokenEnd: (mark: PlayedMark) => number;
  readonly wordsEnd: (mark: PlayedMark) => number;
}

function reachOf(played: readonly PlayedBar[]): Reach {
  const ends = new Map<PlayedBar, { unbroken: number; words: number }>();
  let unbroken = 0;
  for (let i = played.length - 1; i >= 0; i--) {
    const bar = played[i] as PlayedBar;
    if (i === played.length - 1 || played[i + 1]?.jumped) unbroken = endOf(bar);
    const fourth = played[Math.min(i + WORDS_REACH_BARS, played.length) - 1] as PlayedBar;
    ends.set(bar, { unbroken, words: Math.min(unbroken, endOf(fourth)) });
  }
  return {
    unbrokenEnd: (mark) => ends.get(mark.bar)?.unbroken ?? endOf(mark.bar),
    wordsEnd: (mark) => ends.get(mark.bar)?.words ?? endOf(mark.bar),
  };
}

function endOf(bar: PlayedBar): number {
  return bar.performed.startQuarters + bar.performed.lengthQuarters;
}

function setsLevel(mark: PrintedMark): boolean {
  if (mark.kind !== 'dynamic') return false;
  const sense = senseOfDynamic(mark.name);
  return sense === 'level' || sense === 'other-level' || sense === 'event-then-other-level';
}

function wedgeFrom(start: PlayedMark, after: Iterable<PlayedMark>, closed: boolean, reach: Reach): Stretch | null {
  const { mark } = start;
  if (mark.kind !== 'wedge' || mark.type === 'stop') return null;
  const limit = closed ? reach.unbrokenEnd(start) : reach.wordsEnd(start);
  let endQuarters = closed ? limit : endOf(start.bar);
  for (const { mark: other, atQuarters } of after) {
    if (atQuarters > limit + SAME_PLACE) break;
    const atLevel = setsLevel(other) && atQuarters > start.atQuarters + SAME_PLACE;
    const atWedge = other.kind === 'wedge' && (other.number === mark.number || (!closed && other.type !== 'stop'));
    if (!atLevel && !atWedge) continue;
    endQuarters = atQuarters;
    break;
  }
  return { kind: mark.type, from: 'wedge', start, endQuarters };
}

/** Wedges that are stopped in print. */
function closedWedges(marks: readonly PrintedMark[]): Set<PrintedMark> {
  const open = new Map<string, PrintedMark>();
  const closed = new Set<PrintedMark>();
  for (const mark of marks) {
    if (mark.kind !== 'wedge') continue;
    const begun = open.get(mark.number);
    if (mark.type !== 'stop') open.set(mark.number, mark);
    else if (begun !== undefined) {
      closed.add(begun);
      open.delete(mark.number);
    }
  }
  return closed;
}

function wordsFrom(start: PlayedMark, after: () => Iterable<PlayedMark>, reach: Reach): Stretch | null {
  const kind = kindOfWords(start.mark);
  if (kind === null) return null;
  let dashes: string | null = null;
  const limit = reach.unbrokenEnd(start);
  let endQuarters = reach.wordsEnd(start);
  for (const { mark, atQuarters } of after()) {
    if (atQuarters > (dashes === null ? endQuarters : limit) + SAME_PLACE) break;
    const later = atQuarters > start.atQuarters + SAME_PLACE;
    if (!later && mark.kind === 'wedge' && mark.type === kind) return null;
    if (mark.kind === 'dashes' && mark.type === 'start' && dashes === null) {
      dashes = mark.number;
      endQuarters = limit;
    }
    const dashesEnd = mark.kind === 'dashes' && mark.type === 'stop' && mark.number === dashes;
    const otherHairpin = (mark.kind === 'wedge' && mark.type !== 'stop') || kindOfWords(mark) !== null;
    if (!dashesEnd && !(later && (setsLevel(mark) || otherHairpin))) continue;
    endQuarters = atQuarters;
    break;
  }
  return { kind, from: 'words', start, endQuarters };
}

/** Crescendo and diminuendo words with their usual short forms; "non cresc." and the like are none. */
function kindOfWords(mark: PrintedMark): Hairpin['kind'] | null {
  if (mark.kind !== 'words' || /\b(non|senza|no|without)\s+(cresc|dim|decresc)/i.test(mark.text)) return null;
  if (/\bcresc/i.test(mark.text)) return 'crescendo';
  return /\b(dim(\b|in)|decr(\b|esc)|morendo|calando|smorz|perdendo)/i.test(mark.text) ? 'diminuendo' : null;
}

function withNotes(stretch: Stretch, notes: readonly PlayedNote[]): Hairpin | null {
  const { kind, from, start, endQuarters } = stretch;
  const { bar, pass } = start.bar.performed;
  const index = firstNoteAt(notes, start.atQuarters, start.mark.order);
  const toIndex = firstNoteAt(notes, endQuarters, 0) - 1;
  const last = notes[toIndex];
  if (index > toIndex || last === undefined) return null;
  return { kind, from, bar, toBar: last.note.bar, pass, startQuarters: start.atQuarters, endQuarters, index, toIndex };
}
