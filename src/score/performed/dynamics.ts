import { type PrintedMark, SAME_PLACE } from '../printed/types.js';
import type { Remark } from '../remark-table.js';
import type { DynamicMark, Hairpin, Part } from '../types.js';
import { type DynamicSense, senseOfDynamic } from './dynamic-names.js';
import type { PlayedBar } from './performed-bars.js';
import { firstNoteAt, type PlayedMark } from './performed-marks.js';
import type { PlayedNote } from './performed-notes.js';

/** Levels, events and what a copyist would ask about. */
export interface FoundDynamics {
  readonly dynamics: readonly DynamicMark[];
  readonly dynamicEvents: Part['dynamicEvents'];
  readonly remarks: readonly Remark[];
}

interface Sensed {
  readonly name: string;
  readonly sense: DynamicSense;
  readonly index: number;
  readonly played: PlayedMark;
}

/**
 * Marks that set a level, each with the notes played at that level, and marks that strike one note. A level ends at the
 * next mark that sets one (fp goes on at another level), where a hairpin begins, and where the performed order goes back to
 * a bar that stands under another mark.
 *
 * @param byBar marks of each printed bar
 * @param marks the same marks in performed order
 * @param hairpins hairpins in performed order
 * @param played bars in performed order
 * @param notes sounding notes in performed order
 * @returns levels and events in performed order
 *
 * Source: MusicXML 4.0, `dynamics`; common practice.
 */
export function dynamicsOf(
  byBar: readonly (readonly PrintedMark[])[],
  marks: readonly PlayedMark[],
  hairpins: readonly Hairpin[],
  played: readonly PlayedBar[],
  notes: readonly PlayedNote[],
): FoundDynamics {
  const sensed = marks.flatMap((mark) => sensedMark(mark, notes));
  const ends = stretchEnds(sensed, hairpins, jumpsToOtherLevel(byBar, sensed, played), notes);
  const swelling = new Set(hairpins.map((hairpin) => hairpin.index));
  const dynamics: DynamicMark[] = [];
  let end = 0;
  sensed.forEach((own, i) => {
    const { name, sense, index, played: mark } = own;
    if (sense !== 'level' || index >= notes.length || replacedAtOnce(sensed, i)) return;
    while (end < ends.length && (ends[end] as number) <= index) end++;
    const { bar, pass } = mark.bar.performed;
    const toIndex = swelling.has(index) ? index : (ends[end] ?? notes.length) - 1;
    dynamics.push({ mark: name, bar, pass, atQuarters: mark.atQuarters, index, toIndex });
  });
  const events = sensed.filter((own) => own.sense.startsWith('event') && own.index < notes.length);
  return {
    dynamics,
    dynamicEvents: events.map(({ name, index }) => ({ mark: name, index })),
    remarks: unknownMarks(sensed),
  };
}

/** True when another level is set before the first note under this one. */
function replacedAtOnce(sensed: readonly Sensed[], i: number): boolean {
  const index = sensed[i]?.index;
  for (let k = i + 1; sensed[k]?.index === index && k < sensed.length; k++)
    if (sensed[k]?.sense === 'level') return true;
  return false;
}

function unknownMarks(sensed: readonly Sensed[]): Remark[] {
  const unknown = sensed.filter((own) => own.sense === 'unknown');
  return unknown.map(({ name, played }) => {
    return { code: 'unknown-dynamic', facts: { bar: played.bar.performed.bar, mark: name } };
  });
}

function sensedMark(played: PlayedMark, notes: readonly PlayedNote[]): Sensed[] {
  const { mark, atQuarters } = played;
  if (mark.kind !== 'dynamic') return [];
  return [
    { name: mark.name, sense: senseOfDynamic(mark.name), index: firstNoteAt(notes, atQuarters, mark.order), played },
  ];
}

/** Indices of notes that are no longer at the level before them, ascending. */
function stretchEnds(
  sensed: readonly Sensed[],
  hairpins: readonly Hairpin[],
  jumps: readonly number[],
  notes: readonly PlayedNote[],
): number[] {
  const bySense = sensed.filter((own) => isLevel(own.sense)).map((own) => own.index);
  const byJump = jumps.map((at) => firstNoteAt(notes, at, 0));
  return [...bySense, ...hairpins.map((hairpin) => hairpin.index), ...byJump].sort((a, b) => a - b);
}

/** Places where the performed order goes to a bar that stands under another mark than the one just played. */
function jumpsToOtherLevel(
  byBar: readonly (readonly PrintedMark[])[],
  sensed: readonly Sensed[],
  played: readonly PlayedBar[],
): number[] {
  const levelAtBar = levelsAtBars(byBar);
  let next = 0;
  let level = '';
  return played.flatMap((bar) => {
    const { startQuarters, barIndex } = bar.performed;
    for (; next < sensed.length && (sensed[next] as Sensed).played.atQuarters < startQuarters - SAME_PLACE; next++) {
      if (isLevel((sensed[next] as Sensed).sense)) level = (sensed[next] as Sensed).name;
    }
    return bar.jumped && levelAtBar[barIndex] !== level ? [startQuarters] : [];
  });
}

function levelsAtBars(byBar: readonly (readonly PrintedMark[])[]): string[] {
  let level = '';
  return byBar.map((marks) => {
    const atStart = level;
    for (const mark of marks) if (mark.kind === 'dynamic' && isLevel(senseOfDynamic(mark.name))) level = mark.name;
    return atStart;
  });
}

function isLevel(sense: DynamicSense): boolean {
  return sense !== 'event' && sense !== 'unknown';
}
