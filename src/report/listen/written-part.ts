import type { Part, PartNote } from '../../score/index.js';
import type { WrittenData, WrittenNote } from './room-data.js';
import { writtenLevels } from './written-levels.js';

/** A fermata holds so many times what is written, and the end of a rit. is so much slower. Source: common practice. */
const FERMATA = 2;
const BEND = 0.25;
/** Between two knots of the clock inside a bend, quarters. */
const STEP_QUARTERS = 0.5;
/** Sounded share of the time to the end of the note. Source: common practice; staccato after Bresin & Battel 2000. */
const SHARES: readonly (readonly [PartNote['articulations'][number], number])[] = [
  ['staccatissimo', 0.3],
  ['staccato', 0.42],
  ['detached-legato', 0.8],
  ['tenuto', 0.97],
];
const TONGUED = 0.9;
/** A grace note takes this much before its beat, and no more than a share of the note before. Source: common practice. */
const GRACE_MS = 90;
const SHORTEST_MS = 40;

/**
 * The part as it asks to be played: when each note begins, how long it sounds, how high and how loud. A model of notes and
 * time, not of tone: ornaments are their main notes.
 *
 * @param part the part as performed
 * @param targetBpm quarters a minute the brief asks for at the beginning; null to take the part's own
 * @returns a clock from quarters to milliseconds, and the notes in order
 */
export function writtenPart(part: Part, targetBpm: number | null): WrittenData {
  const clock = clockOf(part, targetBpm);
  const at = (quarters: number): number => timeAt(clock, quarters);
  const levelAt = writtenLevels(part);
  return {
    clock: clock.map(([quarters, ms]) => [rounded(quarters, 3), Math.round(ms)]),
    notes: part.notes.map((note, i) => writtenNote(note, graceBefore(part, i), graceAfter(part, i), at, levelAt)),
  };
}

function writtenNote(
  note: PartNote,
  graces: number,
  stolen: number,
  at: (quarters: number) => number,
  levelAt: (note: PartNote) => number,
): WrittenNote {
  const onset = at(note.onsetQuarters) - graces * GRACE_MS;
  const whole = note.grace ? GRACE_MS : at(note.onsetQuarters + note.durationQuarters) - onset;
  const legato = note.slurredToNext || note.grace;
  const share = legato ? 1 : (SHARES.find(([sign]) => note.articulations.includes(sign))?.[1] ?? TONGUED);
  const length = Math.max(SHORTEST_MS, whole * share - stolen * GRACE_MS);
  return [Math.round(onset), Math.round(length), note.soundingMidi, Math.round(levelAt(note) * 10), legato ? 1 : 0];
}

/** How many grace notes lie between this one and the beat it leads to, itself counted. */
function graceBefore({ notes }: Part, index: number): number {
  const rest = notes.slice(index);
  const beat = rest.findIndex(({ grace }) => !grace);
  return beat < 0 ? rest.length : beat;
}

/** How many grace notes follow. */
function graceAfter({ notes }: Part, index: number): number {
  return notes[index]?.grace ? 0 : graceBefore({ notes } as Part, index + 1);
}

type Knot = readonly [quarters: number, milliseconds: number];

/** Time runs evenly between knots; tempos, bends and fermatas set them. */
function clockOf(part: Part, targetBpm: number | null): Knot[] {
  const end = Math.max(0, ...part.bars.map(({ startQuarters, lengthQuarters }) => startQuarters + lengthQuarters));
  const ratio = targetBpm === null ? 1 : targetBpm / (part.tempos[0]?.quarterBpm ?? targetBpm);
  const fermatas = part.notes.filter(({ fermata }) => fermata);
  const held = fermatas.flatMap((note) => [note.onsetQuarters, note.onsetQuarters + note.durationQuarters]);
  const bends = part.tempoBends.flatMap(({ startQuarters, endQuarters }) => stepsFrom(startQuarters, endQuarters));
  const places = [0, end, ...part.tempos.map(({ atQuarters }) => atQuarters), ...held, ...bends];
  const knots: Knot[] = [];
  let milliseconds = 0;
  for (const quarters of [...new Set(places)].filter((place) => place <= end).sort((a, b) => a - b)) {
    const last = knots.at(-1);
    if (last !== undefined) {
      const middle = (last[0] + quarters) / 2;
      const hold = fermatas.some((note) => covers(note, middle)) ? FERMATA : 1;
      milliseconds += ((quarters - last[0]) * 60_000 * hold) / (bpmAt(part, middle) * ratio);
    }
    knots.push([quarters, milliseconds]);
  }
  return knots;
}

function stepsFrom(from: number, to: number): number[] {
  const count = Math.max(1, Math.ceil((to - from) / STEP_QUARTERS));
  return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
}

const covers = ({ onsetQuarters, durationQuarters }: PartNote, quarters: number): boolean =>
  quarters >= onsetQuarters && quarters < onsetQuarters + durationQuarters;

function bpmAt({ tempos, tempoBends }: Part, quarters: number): number {
  const bpm = tempos.findLast(({ atQuarters }) => atQuarters <= quarters)?.quarterBpm ?? 0;
  const bend = tempoBends.find(({ startQuarters, endQuarters }) => quarters >= startQuarters && quarters < endQuarters);
  if (bend === undefined) return bpm;
  const share = (quarters - bend.startQuarters) / (bend.endQuarters - bend.startQuarters);
  return bpm * (1 + (bend.kind === 'slower' ? -BEND : BEND) * share);
}

function timeAt(clock: readonly Knot[], quarters: number): number {
  const i = Math.max(
    0,
    Math.min(
      clock.length - 2,
      clock.findLastIndex((knot) => knot[0] <= quarters),
    ),
  );
  const [from, to] = [clock[i] as Knot, clock[i + 1] ?? (clock[i] as Knot)];
  return to[0] === from[0] ? from[1] : from[1] + ((quarters - from[0]) * (to[1] - from[1])) / (to[0] - from[0]);
}

const rounded = (value: number, decimals: number): number => Math.round(value * 10 ** decimals) / 10 ** decimals;
