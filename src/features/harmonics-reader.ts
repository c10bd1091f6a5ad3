import { midiToHz } from '../base/index.js';
import { copyStretch } from '../decode/index.js';
import { fourfoldTransform, keptFor, openLoops, transformSize, wholeNumbers } from '../simd/index.js';
import type { Features } from './types.js';

/** Long enough to tell neighbouring semitones of a tone's harmonics apart, short enough for quick notes. */
const WINDOW_SECONDS = 0.032;
/** A row holds for so many pitch frames. */
const FRAMES_A_ROW = 2;
const HARMONICS = 6;
/** Each harmonic counts so much of the one below it. */
const HARMONIC_DECAY = 0.84;
/** A harmonic may lie so far from its place, semitones. */
const REACH_SEMITONES = 0.4;
/** What sounds halfway between harmonics speaks for a tone an octave lower, and counts so much against this one. */
const BETWEEN_WEIGHT = 0.5;
/** Semitones with less than this share of the most evident one are left out. */
const LEAST_SHARE = 0.6;

/** Rows worked on at a time: they fill a fourfold complex transform. */
const ROWS_AT_ONCE = 8;
/** Numbers in a vector, and in a complex one. */
const [LANES, COMPLEX] = [4, 8];
const NUMBERS_A_PLACE = 3;

/** A place where a harmonic may be: bins from, to, and its weight. */
interface Harmonic {
  readonly from: number;
  readonly to: number;
  readonly weight: number;
}

/** Hears rows of one shape. */
interface RowHearer {
  /**
   * @param signal what was heard
   * @param first sample of the first row
   * @returns evidence of each semitone, 0 to 1, row by row; valid until the next call
   */
  hear(signal: Float32Array, first: number): Float32Array;
}

/**
 * Pitch by harmonics: how well the harmonics of each semitone stand out in the spectrum. Periods tell quick notes
 * apart; harmonics tell a tone from what others left in the room, and from the octaves of its period.
 *
 * Source: harmonic sums of a compressed spectrum (Hermes 1988, “Measurement of pitch by subharmonic summation”, with the
 * fourth root of power in place of his ear's weighting, from memory); constants ours.
 */
export class HarmonicsReader {
  private readonly signal: Float32Array;
  private readonly pitches: number;
  /** samples from one row to the next, a whole number, and where the first row begins */
  private readonly hop: number;
  private readonly start: number;
  private readonly hearer: RowHearer;
  private firstRow = -1;
  private heard: Float32Array = new Float32Array(0);
  private rows: Float32Array[] = [];

  /**
   * @param features what was heard
   * @param lowestMidi the lowest semitone, with the player's tuning
   * @param pitches how many semitones
   */
  constructor(features: Features, lowestMidi: number, pitches: number) {
    const rate = features.signalRateHz;
    const frameHop = Math.round(features.pitchHopSeconds * rate);
    const length = 2 * Math.round((WINDOW_SECONDS * rate) / 2);
    this.signal = features.signal;
    this.pitches = pitches;
    this.hop = FRAMES_A_ROW * frameHop;
    this.start = Math.round(((FRAMES_A_ROW - 1) / 2) * frameHop) - length / 2;
    this.hearer = rowHearer({ rate, length, hop: this.hop, lowestMidi, pitches });
  }

  /**
   * @param frame a pitch frame; asked for in rising order nothing is worked out twice
   * @returns evidence of each semitone, 0 to 1, valid until the next call
   */
  read(frame: number): Float32Array {
    const row = Math.floor(frame / FRAMES_A_ROW);
    const first = row - (row % ROWS_AT_ONCE);
    if (first !== this.firstRow) this.hear(first);
    return this.rows[row - first]!;
  }

  private hear(first: number): void {
    const { pitches } = this;
    this.firstRow = first;
    const heard = this.hearer.hear(this.signal, this.start + first * this.hop);
    if (heard === this.heard) return;
    this.heard = heard;
    this.rows = Array.from({ length: ROWS_AT_ONCE }, (_, r) => heard.subarray(r * pitches, (r + 1) * pitches));
  }
}

interface RowPlan {
  readonly rate: number;
  /** samples a row, even */
  readonly length: number;
  readonly hop: number;
  readonly lowestMidi: number;
  readonly pitches: number;
}

const rowHearer = keptFor(createHearer);

function createHearer({ rate, length, hop, lowestMidi, pitches }: RowPlan): RowHearer {
  const size = transformSize(2 * length);
  const half = size / 2;
  const fourier = fourfoldTransform(size);
  const places = 2 * HARMONICS;
  const taper = LANES * Math.ceil(length / LANES);
  const { loops, memory } = openLoops({
    ...{ samples: (ROWS_AT_ONCE - 1) * hop + taper, taper, twiddles: fourier.twiddles.length },
    ...{ input: COMPLEX * size, one: COMPLEX * size, other: COMPLEX * size, sums: 2 * LANES },
    ...{ a: LANES * (half + 1), b: LANES * (half + 1), magnitudes: LANES * (half + 1) },
    ...{ harmonics: NUMBERS_A_PLACE * places * pitches, scratch: LANES * pitches, rows: ROWS_AT_ONCE * pitches },
  });
  memory.twiddles.set(fourier.twiddles);
  for (let i = 0; i < length; i++) memory.taper[i] = 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / length);
  const bins = wholeNumbers(memory.harmonics);
  for (let p = 0; p < pitches; p++) {
    harmonicsOf(midiToHz(lowestMidi + p), size, rate).forEach(({ from, to, weight }, h) => {
      const at = NUMBERS_A_PLACE * (p * places + h);
      bins.set([from, to], at);
      memory.harmonics[at + 2] = weight;
    });
  }
  const { samples, input, one, other, sums, a, b, magnitudes, harmonics, scratch, rows } = memory;
  const weigh = (power: Float32Array, into: number): void => {
    loops.peakMagnitudes(power.byteOffset, half, magnitudes.byteOffset);
    const from = magnitudes.byteOffset;
    loops.weighPitches(from, harmonics.byteOffset, places, pitches, LEAST_SHARE, scratch.byteOffset, into);
  };
  return {
    hear(signal, first) {
      copyStretch(samples, signal, first);
      loops.windowFrames(samples.byteOffset, hop, memory.taper.byteOffset, taper, input.byteOffset);
      const out = fourier.run(loops, memory.twiddles, [input, one, other]);
      loops.splitPowers(out.byteOffset, size, 1, a.byteOffset, b.byteOffset, sums.byteOffset);
      weigh(a, rows.byteOffset);
      weigh(b, rows.byteOffset + 4 * LANES * pitches);
      return rows;
    },
  };
}

function harmonicsOf(hz: number, size: number, rate: number): Harmonic[] {
  const places: Harmonic[] = [];
  const add = (at: number, weight: number): void => {
    const from = Math.max(1, Math.floor((at * 2 ** (-REACH_SEMITONES / 12) * size) / rate));
    const to = Math.ceil((at * 2 ** (REACH_SEMITONES / 12) * size) / rate);
    if (to < size / 2) places.push({ from, to, weight });
  };
  for (let h = 1, weight = 1; h <= HARMONICS; h++, weight *= HARMONIC_DECAY) {
    add(h * hz, weight);
    add((h - 0.5) * hz, -BETWEEN_WEIGHT * weight);
  }
  return places;
}
