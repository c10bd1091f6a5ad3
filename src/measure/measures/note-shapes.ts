import { median, medianInterval, type NotMeasured, notMeasured } from '../../base/index.js';
import type { Features } from '../../features/index.js';
import type { PartNote } from '../../score/index.js';
import type { NoteContext } from '../context/context.js';
import { isWet } from '../is-wet.js';
import type { MiddleOf, NoteShapeMeasure, RecordingMeasure, ShapedBy } from '../types.js';
import { accentOf } from './accents.js';

/** Signs in the order in which they are listed. */
const SIGNS: readonly ShapedBy[] = ['staccatissimo', 'staccato', 'detached-legato', 'tenuto', 'accent', 'none'];
/** Fewer notes have no shape in common. */
const LEAST_NOTES = 5;
/** A note rises from so far before the onset that was found to so long after it; shorter ones have no thirds. */
const BEFORE_SECONDS = 0.06;
const RISE_SECONDS = 0.12;
const LEAST_SECONDS = 0.09;
const FRAME_SECONDS = 0.01;
/** Of a third of a note every fifth frame is enough. */
const THIRDS_STEP = 5;
const FROM_DB = 15;
const TO_DB = 3;

/**
 * The shape of tongued notes, sign by sign: how quickly they rise, how long they sound, how far they die away.
 *
 * @param context the take with its notes measured
 * @param recording the recording itself: a room that rings, or a recorder that moves its level, gives notes another shape
 * @returns one entry a sign with enough notes that begin out of a gap, or why there are none
 *
 * Source: rise between two levels and length by definition; medians with intervals: see base.
 */
export function measureNoteShapes(context: NoteContext, recording: RecordingMeasure): NoteShapeMeasure[] | NotMeasured {
  if (recording.levelRiding) return notMeasured('level-moved');
  if (isWet(recording)) return notMeasured('room-rings');
  const shapes = new Map<ShapedBy, Shape[]>();
  for (const note of context.part.notes) {
    const shape = shapeOf(context, note);
    const sign = signOf(context, note);
    if (shape !== null) shapes.set(sign, [...(shapes.get(sign) ?? []), shape]);
  }
  return SIGNS.flatMap((sign): NoteShapeMeasure[] => {
    const all = shapes.get(sign) ?? [];
    if (all.length < LEAST_NOTES) return [];
    const of = (pick: (shape: Shape) => number): MiddleOf => {
      const values = all.map(pick);
      return { middle: median(values), interval: medianInterval(values) };
    };
    const [riseSeconds, lengthSeconds, decayDb] = [of((s) => s.rise), of((s) => s.length), of((s) => s.decay)];
    return [{ sign, count: all.length, riseSeconds, lengthSeconds, decayDb }];
  });
}

/** An accent counts before all other signs. */
function signOf({ part }: NoteContext, note: PartNote): ShapedBy {
  if (accentOf(part, note.index) !== undefined) return 'accent';
  const signs = ['staccatissimo', 'staccato', 'detached-legato', 'tenuto'] as const;
  return signs.find((sign) => note.articulations.includes(sign)) ?? 'none';
}

interface Shape {
  readonly rise: number;
  readonly length: number;
  readonly decay: number;
}

/** The shape of one note that is slurred at neither end; null where it cannot be seen. */
function shapeOf({ features, alignment }: NoteContext, note: PartNote): Shape | null {
  const { onsetSeconds: onset, offsetSeconds: offset, status } = alignment.notes[note.index]!;
  if (onset === undefined || offset === undefined || status !== 'as-written') return null;
  if (note.grace || note.ornament !== null || note.slurredFromPrevious || note.slurredToNext) return null;
  const length = offset - onset;
  if (length < LEAST_SECONDS) return null;
  const rise = riseOf(features, onset, Math.min(offset, onset + RISE_SECONDS));
  if (rise === null) return null;
  const third = (k: number): number =>
    median(levels(features, onset + (k * length) / 3, onset + ((k + 1) * length) / 3, THIRDS_STEP));
  return { rise, length, decay: third(0) - third(2) };
}

/** From 15 to 3 dB below the loudest moment, between frames read in a straight line; null where it was never so soft. */
function riseOf(features: Features, onset: number, until: number): number | null {
  const course = levels(features, onset - BEFORE_SECONDS, until, 1);
  const softest = course.indexOf(Math.min(...course));
  const top = Math.max(...course.slice(softest));
  const reached = course.findIndex((db, i) => i > softest && db >= top - TO_DB);
  let low = reached - 1;
  while (low >= softest && course[low]! > top - FROM_DB) low--;
  if (low < softest) return null;
  const between = (i: number, db: number): number => i + (db - course[i]!) / (course[i + 1]! - course[i]!);
  return (between(reached - 1, top - TO_DB) - between(low, top - FROM_DB)) * features.levelHopSeconds;
}

/** RMS levels of frames of 10 ms, so many level frames apart, told for their middles. */
function levels({ power, levelHopSeconds: hop }: Features, from: number, to: number, step: number): Float64Array {
  const length = Math.max(1, Math.round(FRAME_SECONDS / hop));
  const first = Math.max(0, Math.round(from / hop - length / 2));
  const found = new Float64Array(Math.max(1, Math.round((to - from) / hop / step)));
  for (let i = 0; i < found.length; i++) {
    const start = first + i * step;
    let sum = 0;
    for (let k = start; k < start + length; k++) sum += power[k] ?? 0;
    found[i] = 10 * Math.log10(sum / length + 1e-12);
  }
  return found;
}
