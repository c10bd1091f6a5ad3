import { isMeasured, type NotMeasured, notMeasured } from '../../base/index.js';
import type { Part } from '../../score/index.js';
import type { LevelContext } from '../context/context.js';
import type { RecordingMeasure, RisingLineMeasure } from '../types.js';

/** So many notes that rise one after the other, so far together, are a line. Source: common practice: a fifth. */
const LEAST_NOTES = 4;
const LEAST_SEMITONES = 7;
/** The notes at each end whose level is its level there. */
const END_NOTES = 2;

/**
 * How the level of each rising line changes to its top, what the notes do by themselves taken out: lines without a mark or
 * hairpin of their own, and without a rest.
 *
 * @param context the take with its notes measured
 * @param recording the recording itself: a recorder that moves its level hides the line
 * @returns one entry a line, in order, or why there is none
 *
 * Source: mean level of the last two notes over that of the first two, by definition; own loudness: see fitOwnLoudness.
 */
export function measureRisingLines(
  context: LevelContext,
  recording: RecordingMeasure,
): RisingLineMeasure[] | NotMeasured {
  const { part, ownLoudness } = context;
  if (recording.levelRiding) return notMeasured('level-moved');
  if (ownLoudness === null) return notMeasured('registers-unknown');
  return linesOf(part).flatMap((line): RisingLineMeasure[] => {
    const levels = line.map((index) => {
      const { levelDb } = context.notes[index]!;
      const heard = context.alignment.notes[index]!.status === 'as-written' && isMeasured<number>(levelDb);
      return heard ? levelDb - ownLoudness.of(index) : Number.NaN;
    });
    const changeDb = mean(levels.slice(-END_NOTES)) - mean(levels.slice(0, END_NOTES));
    if (levels.some(Number.isNaN)) return [];
    const [first, last] = [part.notes[line[0]!]!, part.notes[line.at(-1)!]!];
    const slurred = line.slice(1).every((index) => part.notes[index]!.slurredFromPrevious);
    const place = { index: first.index, toIndex: last.index, bar: first.bar, toBar: last.bar, pass: first.pass };
    return [{ ...place, semitones: last.soundingMidi - first.soundingMidi, slurred, changeDb }];
  });
}

/** Indices of the notes of each line. */
function linesOf(part: Part): number[][] {
  const lines: number[][] = [[]];
  for (const note of part.notes) {
    if (note.grace) continue;
    const line = lines.at(-1)!;
    const before = part.notes[line.at(-1) ?? -1];
    const goesOn =
      before !== undefined &&
      note.soundingMidi > before.soundingMidi &&
      note.restBeforeQuarters === 0 &&
      !isMarked(part, note.index);
    if (goesOn) line.push(note.index);
    else lines.push([note.index]);
  }
  return lines.filter((line) => {
    const [first, last] = [part.notes[line[0] ?? -1], part.notes[line.at(-1) ?? -1]];
    const rise = first === undefined || last === undefined ? 0 : last.soundingMidi - first.soundingMidi;
    return line.length >= LEAST_NOTES && rise >= LEAST_SEMITONES && !isUnderHairpin(part, line[0]!, line.at(-1)!);
  });
}

/** Whether a mark begins at a note: then its level is asked for by the mark. */
function isMarked({ dynamics, dynamicEvents, notes }: Part, index: number): boolean {
  const accented = notes[index]!.articulations.some((sign) => sign === 'accent' || sign === 'strong-accent');
  return (
    accented || dynamics.some((mark) => mark.index === index) || dynamicEvents.some((mark) => mark.index === index)
  );
}

function isUnderHairpin({ hairpins }: Part, from: number, to: number): boolean {
  return hairpins.some(({ index, toIndex }) => index <= to && toIndex >= from);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
