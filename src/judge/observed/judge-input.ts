import type { Alignment } from '../../align/index.js';
import type { Brief } from '../../brief/index.js';
import type { Measurements } from '../../measure/index.js';
import type { Part, PartNote } from '../../score/index.js';
import type { Standards } from '../../standards/index.js';

/** Everything a judge may look at. */
export interface JudgeInput {
  readonly part: Part;
  readonly alignment: Alignment;
  readonly measurements: Measurements;
  readonly standards: Standards;
  /** the teacher's brief, when there is one; its standards are among the standards already */
  readonly brief?: Brief;
}

/** The place of a finding on one note. */
export interface NotePlace {
  readonly bar: string;
  readonly pass: number;
  readonly beat: number;
  readonly index: number;
  readonly onset?: number;
}

/**
 * @param input part and alignment
 * @param note a note of the part
 * @returns where it stands on the page and in the recording
 */
export function placeOf(input: JudgeInput, note: PartNote): NotePlace {
  const onset = input.alignment.notes[note.index]?.onsetSeconds;
  const place = { bar: note.bar, pass: note.pass, beat: note.beat, index: note.index };
  return onset === undefined ? place : { ...place, onset };
}
