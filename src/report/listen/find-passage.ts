import type { ResultFinding, TakeResult } from '../../result/index.js';
import type { Part, PerformedBar } from '../../score/index.js';
import { concernsWholeTake } from '../../words/index.js';

/** A finding that is spread over more than this cannot be heard at one place. */
const LONGEST_SECONDS = 14;
/** Heard before and after the notes concerned, at least, where the recording goes on. */
const LEAST_AROUND_SECONDS = 1;
/** How much of the first attempt is heard before a new start. */
const BEFORE_RESTART_SECONDS = 4;
const AFTER_RESTART_SECONDS = 2.5;
/** So that the first tone is heard from its beginning and the last one to its end. */
const MARGIN_SECONDS = 0.12;

/** The stretch of a recording that lets a finding be heard. */
export interface Passage {
  /** seconds from the first sample */
  readonly fromSeconds: number;
  readonly toSeconds: number;
  /** performed bars of the notes heard, in order, at least one */
  readonly bars: readonly PerformedBar[];
}

/** From the one to the other, both counted. */
interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * Finds what must be played so that a finding can be heard: its notes, from one bar before to one bar after, or less where
 * that would be long.
 *
 * @param finding of the take
 * @param result the take; onsets in seconds from the first sample
 * @param part the part
 * @param usualSeconds how long the passage may be with its surroundings; longer only where the notes concerned are
 * @returns the passage, within the recording; null for what concerns the whole take or a long stretch of it, and where
 * nothing was heard
 */
export function findPassage(
  finding: ResultFinding,
  result: TakeResult,
  part: Part,
  usualSeconds: number,
): Passage | null {
  if (concernsWholeTake(finding.kind)) return null;
  const bars = barsOf(finding, part);
  if (bars === null) return null;
  const indexes = { from: finding.index ?? firstIn(part, bars.from), to: finding.toIndex ?? finding.index ?? -1 };
  const concerned = indexes.to < 0 ? timeOfBars(result, part, bars) : timeOfNotes(result, indexes);
  const core = finding.kind === 'restart' ? aroundRestart(finding, concerned) : concerned;
  if (core === null || core.to - core.from > LONGEST_SECONDS) return null;
  const around = timeOfBars(result, part, { from: Math.max(0, bars.from - 1), to: bars.to + 1 }) ?? core;
  const { from, to } = limited(core, around, usualSeconds, result.take.durationSeconds);
  const heard = part.bars.filter((bar) => {
    const time = timeOfBar(result, part, bar);
    return time !== null && time.from < to - 2 * MARGIN_SECONDS && time.to > from + 2 * MARGIN_SECONDS;
  });
  return heard.length === 0 || to <= from ? null : { fromSeconds: from, toSeconds: to, bars: heard };
}

/**
 * @param finding of the take
 * @param part the part
 * @returns places, in the list of performed bars, of the first and last bar concerned; null where the part has none
 */
export function barsOf({ index, toIndex, bar, toBar, pass }: ResultFinding, part: Part): Span | null {
  const placeOf = (quarters: number): number =>
    part.bars.findLastIndex(({ startQuarters }) => startQuarters <= quarters);
  if (index !== undefined) {
    const [first, last] = [part.notes[index], part.notes[toIndex ?? index]];
    if (first === undefined || last === undefined) return null;
    return { from: placeOf(first.onsetQuarters), to: placeOf(last.onsetQuarters) };
  }
  const from = part.bars.findIndex((one) => one.bar === bar && one.pass === pass);
  const to = toBar === undefined ? from : part.bars.findIndex((one, i) => i >= from && one.bar === toBar);
  return from < 0 ? null : { from, to: Math.max(from, to) };
}

function firstIn(part: Part, place: number): number {
  const start = part.bars[place]?.startQuarters ?? 0;
  return part.notes.findIndex((note) => note.onsetQuarters >= start);
}

/** From the first onset to the last end of the notes heard; where none was, the gap between their neighbours. */
function timeOfNotes({ notes }: TakeResult, { from, to }: Span): Span | null {
  const heard = notes
    .slice(from, to + 1)
    .flatMap(({ onset, offset }) => (onset === undefined ? [] : [onset, offset ?? onset]));
  if (heard.length > 0) return { from: Math.min(...heard), to: Math.max(...heard) };
  const before = notes.slice(0, from).findLast(({ offset }) => offset !== undefined)?.offset;
  const after = notes.slice(to + 1).find(({ onset }) => onset !== undefined)?.onset;
  const ends = [before, after].filter((seconds) => seconds !== undefined);
  return ends.length === 0 ? null : { from: Math.min(...ends), to: Math.max(...ends) };
}

function timeOfBars(result: TakeResult, part: Part, { from, to }: Span): Span | null {
  const times = part.bars.slice(from, to + 1).flatMap((bar) => timeOfBar(result, part, bar) ?? []);
  return times.length === 0
    ? null
    : { from: Math.min(...times.map((time) => time.from)), to: Math.max(...times.map((time) => time.to)) };
}

/** When the notes that begin in a bar were heard; null when none was. */
function timeOfBar({ notes }: TakeResult, part: Part, { startQuarters, lengthQuarters }: PerformedBar): Span | null {
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = firstFrom(notes, part, startQuarters); i < notes.length; i += 1) {
    const { index, onset, offset } = notes[i] as TakeResult['notes'][number];
    if (quartersOf(part, index) >= startQuarters + lengthQuarters) break;
    if (onset === undefined) continue;
    from = Math.min(from, onset);
    to = Math.max(to, offset ?? onset);
  }
  return from > to ? null : { from, to };
}

/** Place of the first note that begins at so many quarters or later. Notes are in order of the part. */
function firstFrom(notes: TakeResult['notes'], part: Part, quarters: number): number {
  let [low, high] = [0, notes.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (quartersOf(part, notes[middle]?.index ?? 0) < quarters) low = middle + 1;
    else high = middle;
  }
  return low;
}

function quartersOf(part: Part, index: number): number {
  return part.notes[index]?.onsetQuarters ?? Number.POSITIVE_INFINITY;
}

function aroundRestart({ onset }: ResultFinding, concerned: Span | null): Span | null {
  const moment = onset ?? concerned?.from;
  if (moment === undefined) return null;
  return { from: moment - BEFORE_RESTART_SECONDS, to: moment + AFTER_RESTART_SECONDS };
}

function limited(core: Span, around: Span, usualSeconds: number, durationSeconds: number): Span {
  const wide = { from: Math.min(core.from, around.from), to: Math.max(core.to, around.to) };
  const spare = Math.max(LEAST_AROUND_SECONDS, (usualSeconds - (core.to - core.from)) / 2);
  const fits = wide.to - wide.from <= usualSeconds;
  const from = (fits ? wide.from : Math.max(wide.from, core.from - spare)) - MARGIN_SECONDS;
  const to = (fits ? wide.to : Math.min(wide.to, core.to + spare)) + MARGIN_SECONDS;
  return { from: Math.max(0, from), to: Math.min(durationSeconds, to) };
}
