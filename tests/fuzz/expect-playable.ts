import { expect } from 'vitest';
import type { Part, PartNote } from '../../src/score/index.js';
import { REMARKS_IN_WORDS } from '../../src/words/en/remarks.js';
import { say } from '../../src/words/say.js';

/** Longest message or remark a page has room for. */
const LONGEST_REMARK = 400;

/** Paths of numbers that are none: JSON knows neither NaN nor Infinity. */
function noNumbers(value: unknown, path = 'part'): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => noNumbers(inner, `${path}.${name}`));
}

function faultsOf(note: PartNote, i: number, notes: readonly PartNote[]): string[] {
  const { index, onsetQuarters, durationQuarters, grace, restBeforeQuarters, soundingMidi, writtenMidi } = note;
  return [
    index === i ? '' : `note ${i} says it is ${index}`,
    onsetQuarters >= (notes[i - 1]?.onsetQuarters ?? 0) ? '' : `note ${i} begins before the one before it`,
    durationQuarters > 0 || (grace && durationQuarters === 0) ? '' : `note ${i} lasts ${durationQuarters}`,
    restBeforeQuarters >= 0 ? '' : `note ${i} comes after a rest of ${restBeforeQuarters}`,
    Number.isInteger(soundingMidi) && soundingMidi >= 0 && soundingMidi <= 127 ? '' : `note ${i} is ${soundingMidi}`,
    Number.isInteger(writtenMidi) ? '' : `note ${i} is written ${writtenMidi}`,
  ];
}

/**
 * A part that was read can be played and written down, whatever the file was like: all its numbers are numbers, time goes
 * forwards, indexes point at notes, and words fit a line.
 */
export function expectPlayable(part: Part): void {
  const { notes, bars, tempos } = part;
  const remarks = part.remarks.map((remark) => say(REMARKS_IN_WORDS, remark));
  const words = [part.title, part.partName, ...remarks, ...bars.map(({ bar }) => bar)];
  const spans = [...part.dynamics, ...part.hairpins];
  const faults = [
    notes.length > 0 && bars.length > 0 ? '' : 'nothing to play',
    tempos[0]?.atQuarters === 0 ? '' : 'no tempo at the start',
    ...noNumbers(part),
    ...notes.flatMap(faultsOf),
    ...tempos.map(({ quarterBpm }) => (quarterBpm > 0 ? '' : `a tempo of ${quarterBpm}`)),
    ...bars.map(({ bar, lengthQuarters }) => (lengthQuarters >= 0 ? '' : `bar ${bar} has ${lengthQuarters} quarters`)),
    ...spans.map(({ index, toIndex }) => (notes[index] && notes[toIndex] ? '' : `no notes ${index} to ${toIndex}`)),
    ...words.map((text) => (/[\p{Cc}\p{Cs}]/u.test(text) ? `unprintable: ${text}` : '')),
    ...(/NaN|Infinity|undefined/.test(JSON.stringify(bars)) ? [] : remarks).map((text) =>
      /\bNaN\b|Infinity|undefined|\[object/.test(text) ? `no words: ${text}` : '',
    ),
    ...remarks.map((text) => (text.length > LONGEST_REMARK ? `too long: ${text.slice(0, 100)}` : '')),
  ];
  expect(faults.filter((fault) => fault !== '')).toEqual([]);
}
