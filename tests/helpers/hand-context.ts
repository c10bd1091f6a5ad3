import type { AlignedNote, Alignment } from '../../src/align/index.js';
import { CANDIDATES, type Features } from '../../src/features/index.js';
import type { MeasureContext } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { takeOf } from './tones.js';

/** One note as a test says it was played; everything is known exactly. */
export interface HandNote {
  readonly index: number;
  readonly onset: number;
  readonly offset: number;
  readonly levelDb: number;
  /** from equal temperament at A = 440 Hz */
  readonly cents: number;
  /** in the part's own pitch */
  readonly playedMidi: number;
  readonly status: 'as-written' | 'other-pitch' | 'left-out';
  readonly confidence: number;
  /** level of the room after its end, when it is not the floor */
  readonly roomAfterDb?: number;
}

export interface HandOptions {
  readonly floorDb?: number;
  readonly offsetSemitones?: number;
  readonly samples?: Float32Array;
  readonly alignment?: Partial<Alignment>;
}

const LEVEL_HOP_SECONDS = 0.002;
const PITCH_HOP_SECONDS = 0.005;
const LEAD_SECONDS = 0.5;

/**
 * A part played like a machine: every onset on the beat, slurred notes joined, the others sounding nine tenths of their
 * time, −24 dBFS, exactly in tune.
 */
export function playEvenly(part: Part, secondsAQuarter = 1): HandNote[] {
  const at = (quarters: number): number => LEAD_SECONDS + secondsAQuarter * quarters;
  return part.notes.map((note) => {
    const end = note.onsetQuarters + note.durationQuarters * (note.slurredToNext ? 1 : 0.9);
    return {
      index: note.index,
      onset: at(note.onsetQuarters),
      offset: at(end),
      levelDb: -24,
      cents: 0,
      playedMidi: note.soundingMidi,
      status: 'as-written',
      confidence: 1,
    };
  });
}

/** What the listening rooms would say of such playing, built by hand: constant level and pitch within each note. */
export function handContext(part: Part, notes: readonly HandNote[], options: HandOptions = {}): MeasureContext {
  const { floorDb = -80, offsetSemitones = 0 } = options;
  const heard = notes.filter((note) => note.status !== 'left-out');
  const durationSeconds = Math.max(...heard.map((note) => note.offset), 0) + LEAD_SECONDS;
  const alignment: Alignment = {
    fit: 'this-part',
    share: notes.filter((note) => note.status === 'as-written').length / notes.length,
    notes: notes.map(alignedNote),
    added: [],
    restarts: [],
    skips: [],
    offsetSemitones,
    tuningCents: 0,
    ...options.alignment,
  };
  const rate = 8000;
  const quiet = Float32Array.from({ length: rate }, (_, i) => 0.25 * Math.sin((2 * Math.PI * 440 * i) / rate));
  const samples = options.samples ?? quiet;
  const peak = peaksOf(samples, LEVEL_HOP_SECONDS * rate);
  const features = { ...featuresOf(heard, durationSeconds, floorDb, offsetSemitones), peak };
  return { take: takeOf(samples, rate), features, part, alignment };
}

function peaksOf(samples: Float32Array, hop: number): Float32Array {
  return Float32Array.from({ length: Math.floor(samples.length / hop) + 1 }, (_, f) =>
    Math.max(0, ...samples.subarray(f * hop, (f + 1) * hop).map(Math.abs)),
  );
}

function alignedNote({ index, status, confidence, playedMidi, onset, offset }: HandNote): AlignedNote {
  if (status === 'left-out') return { index, status, confidence };
  return { index, status, confidence, playedMidi, onsetSeconds: onset, offsetSeconds: offset };
}

function featuresOf(
  heard: readonly HandNote[],
  durationSeconds: number,
  floorDb: number,
  offsetSemitones: number,
): Omit<Features, 'peak'> {
  const pitchFrames = Math.floor(durationSeconds / PITCH_HOP_SECONDS) + 1;
  const candidateMidi = new Float32Array(CANDIDATES * pitchFrames);
  const candidateClarity = new Float32Array(CANDIDATES * pitchFrames);
  const power = new Float32Array(Math.floor(durationSeconds / LEVEL_HOP_SECONDS)).fill(10 ** (floorDb / 10));
  heard.forEach((note, k) => {
    for (let f = Math.ceil(note.onset / PITCH_HOP_SECONDS); f * PITCH_HOP_SECONDS < note.offset; f++) {
      candidateMidi[CANDIDATES * f] = note.playedMidi + offsetSemitones + note.cents / 100;
      candidateClarity[CANDIDATES * f] = 0.98;
    }
    const [from, to] = [note.onset, note.offset].map((t) => Math.round(t / LEVEL_HOP_SECONDS));
    power.fill(10 ** (note.levelDb / 10), from, to);
    const next = Math.round((heard[k + 1]?.onset ?? durationSeconds) / LEVEL_HOP_SECONDS);
    if (note.roomAfterDb !== undefined) power.fill(10 ** (note.roomAfterDb / 10), to, next);
  });
  const signalRateHz = 8000;
  return {
    durationSeconds,
    pitchHopSeconds: PITCH_HOP_SECONDS,
    pitchFrames,
    candidateMidi,
    candidateClarity,
    change: new Float32Array(pitchFrames),
    signal: new Float32Array(Math.round(durationSeconds * signalRateHz)),
    signalRateHz,
    levelHopSeconds: LEVEL_HOP_SECONDS,
    power,
    noiseFloorDb: floorDb,
  };
}
