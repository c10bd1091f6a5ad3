import { median, medianInterval, midiToHz, type NotMeasured, notMeasured, quantile } from '../../base/index.js';
import type { NoteContext } from '../context/context.js';
import { type HarmonicityReader, harmonicityReader } from '../harmonicity/read-harmonicity.js';
import type { BreathNoiseMeasure, HeldNoteMeasure, NoiseOfNote, RecordingMeasure } from '../types.js';
import { type PitchCourse, pitchCourse } from './pitch-course.js';
import { whyHidden } from './why-hidden.js';

/** Fewer notes say nothing of how a player usually sounds. */
const LEAST_NOTES = 5;
/** More, spread over the take, would move the median little, and cost time. */
const MOST_NOTES = 24;
/** Left out at the beginning of a note: it speaks, and the room still has the note before. Its end is let go. */
const BEGINNING_SECONDS = 0.2;
const ENDING_SECONDS = 0.06;
const LEAST_CLARITY = 0.8;
/** The pitch at a moment is the middle of what is heard so near to it. */
const NEAR_SECONDS = 0.03;
/** Noise this far above that of the recording is the player's: the recording has then at most a quarter of it. */
const ABOVE_RECORDING_DB = 6;
/** The quietest noise under any note is the recording's at most; a tenth of the notes may be read too low. */
const QUIETEST = 0.1;
/** So many of the notes must have noise of their own. */
const LEAST_CLEAR = 0.75;

/**
 * How much of the player's tone is noise: harmonics over noise below 4 kHz on the steady part of long notes. A description, never
 * a fault: breath belongs to a tone.
 *
 * @param context the take with its notes measured
 * @param heldNotes the long notes; those with vibrato have no steady part
 * @param recording the recording itself
 * @returns the median with its 95 % interval, and each note; or why there is none: a recorder that moves its level, a coding that
 * leaves noise out, a room that rings, a recording whose own noise is what is heard, or too few long notes
 *
 * Source: Boersma 1993, see harmonicityReader. The other constants are working values.
 */
export function measureBreathNoise(
  context: NoteContext,
  heldNotes: readonly HeldNoteMeasure[],
  recording: RecordingMeasure,
): BreathNoiseMeasure | NotMeasured {
  const hidden = whyHidden(recording);
  if (hidden !== null) return hidden;
  const read = harmonicityReader(context.features);
  const steady = spread(heldNotes.filter(({ vibrato }) => vibrato === undefined));
  const notes = steady.flatMap((note) => noiseOf(context, read, note) ?? []);
  if (notes.length < LEAST_NOTES) return notMeasured('too-few-held-notes');
  const levels = notes.map(({ noiseDb }) => noiseDb);
  const recordingDb = Math.min(context.features.noiseFloorDb, quantile(levels, QUIETEST));
  const clear = levels.filter((db) => db >= recordingDb + ABOVE_RECORDING_DB).length;
  if (clear < LEAST_CLEAR * notes.length) return notMeasured('recording-hisses');
  const ratios = notes.map(({ harmonicsToNoiseDb }) => harmonicsToNoiseDb);
  return { harmonicsToNoiseDb: median(ratios), intervalDb: medianInterval(ratios), count: notes.length, notes };
}

/** At most so many, evenly from first to last. */
function spread(notes: readonly HeldNoteMeasure[]): readonly HeldNoteMeasure[] {
  if (notes.length <= MOST_NOTES) return notes;
  return Array.from({ length: MOST_NOTES }, (_, k) => notes[Math.round((k * (notes.length - 1)) / (MOST_NOTES - 1))]!);
}

function noiseOf(context: NoteContext, read: HarmonicityReader, note: HeldNoteMeasure): NoiseOfNote | null {
  const { features, alignment } = context;
  const { onsetSeconds, offsetSeconds, playedMidi } = alignment.notes[note.index]!;
  const midi = playedMidi! + alignment.offsetSemitones;
  const [from, to] = [onsetSeconds! + BEGINNING_SECONDS, offsetSeconds! - ENDING_SECONDS];
  const course = pitchCourse(features, midi, from, to, LEAST_CLARITY);
  const found = course.cents.length === 0 ? null : read(from, to, (at) => midiToHz(midi + centsAt(course, at) / 100));
  return found === null ? null : { index: note.index, bar: note.bar, pass: note.pass, ...found };
}

/** The pitch near a moment, or of the whole course where none was heard there. */
function centsAt({ seconds, cents }: PitchCourse, at: number): number {
  const near = cents.filter((_, i) => Math.abs(seconds[i]! - at) <= NEAR_SECONDS);
  return median(near.length === 0 ? cents : near);
}
