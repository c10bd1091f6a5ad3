import { midiToHz } from '../base/index.js';
import { createTransform, type FourierTransform, transformSize } from './fourier.js';
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

/** A place where a harmonic may be: bins from, to, and its weight. */
interface Harmonic {
  readonly from: number;
  readonly to: number;
  readonly weight: number;
}

/**
 * Pitch by harmonics: how well the harmonics of each semitone stand out in the spectrum. Periods tell quick notes
 * apart; harmonics tell a tone from what others left in the room, and from the octaves of its period.
 *
 * Source: harmonic sums of a compressed spectrum (Hermes 1988, “Measurement of pitch by subharmonic summation”, with the
 * fourth root of power in place of his ear's weighting, from memory); constants ours.
 */
export class HarmonicsReader {
  private readonly features: Features;
  private readonly pitches: number;
  private readonly fourier: FourierTransform;
  private readonly window: Float64Array;
  private readonly harmonics: readonly (readonly Harmonic[])[];
  private readonly input: Float64Array;
  private readonly output: Float64Array;
  private readonly powers: Float64Array;
  /** how many peaks lie below each bin */
  private readonly peaksBelow: Int32Array;
  /** bins of the peaks, and one beyond the spectrum */
  private readonly places: Int32Array;
  private readonly magnitudes: Float64Array;
  private readonly rows: readonly [Float32Array, Float32Array];
  private firstRow = -1;

  /**
   * @param features what was heard
   * @param lowestMidi the lowest semitone, with the player's tuning
   * @param pitches how many semitones
   */
  constructor(features: Features, lowestMidi: number, pitches: number) {
    const rate = features.signalRateHz;
    const length = 2 * Math.round((WINDOW_SECONDS * rate) / 2);
    const size = transformSize(2 * length);
    this.features = features;
    this.pitches = pitches;
    this.fourier = createTransform(size);
    this.window = Float64Array.from({ length }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / length));
    this.harmonics = Array.from({ length: pitches }, (_, p) => harmonicsOf(midiToHz(lowestMidi + p), size, rate));
    this.input = new Float64Array(2 * size);
    this.output = new Float64Array(2 * size);
    this.peaksBelow = new Int32Array(size / 2 + 1);
    this.places = new Int32Array(size / 2 + 1);
    this.magnitudes = new Float64Array(size / 2 + 1);
    this.powers = new Float64Array(size / 2 + 1);
    this.rows = [new Float32Array(pitches), new Float32Array(pitches)];
  }

  /**
   * @param frame a pitch frame; asked for in rising order nothing is worked out twice
   * @returns evidence of each semitone, 0 to 1, valid until the next call
   */
  read(frame: number): Float32Array {
    const row = Math.floor(frame / FRAMES_A_ROW);
    const first = row & ~1;
    if (first !== this.firstRow) this.hear(first);
    return this.rows[(row & 1) as 0 | 1];
  }

  /** Two rows share one complex transform. */
  private hear(first: number): void {
    const { signal, signalRateHz, pitchHopSeconds } = this.features;
    const { window, input, output } = this;
    const hop = pitchHopSeconds * signalRateHz;
    const middle = (FRAMES_A_ROW - 1) / 2;
    const half = window.length / 2;
    const a = Math.round((first * FRAMES_A_ROW + middle) * hop) - half;
    const b = Math.round(((first + 1) * FRAMES_A_ROW + middle) * hop) - half;
    if (a >= 0 && b + window.length <= signal.length) {
      for (let i = 0; i < window.length; i++) {
        input[2 * i] = window[i]! * signal[a + i]!;
        input[2 * i + 1] = window[i]! * signal[b + i]!;
      }
    } else {
      for (let i = 0; i < window.length; i++) {
        input[2 * i] = window[i]! * (signal[a + i] ?? 0);
        input[2 * i + 1] = window[i]! * (signal[b + i] ?? 0);
      }
    }
    this.fourier.transform(input, output);
    this.firstRow = first;
    for (const which of [0, 1] as const) {
      this.findPeaks(which);
      this.weigh(this.rows[which]);
    }
  }

  /** Peaks of one of the two spectra, with compressed magnitudes. */
  private findPeaks(which: 0 | 1): void {
    const { output, powers, peaksBelow, places, magnitudes } = this;
    const { size } = this.fourier;
    const sign = which === 0 ? 1 : -1;
    for (let k = 1; k < size / 2; k++) {
      const m = size - k;
      const re = output[2 * k]! + sign * output[2 * m]!;
      const im = output[2 * k + 1]! - sign * output[2 * m + 1]!;
      powers[k] = re * re + im * im;
    }
    let count = 0;
    for (let k = 1; k < size / 2; k++) {
      const here = powers[k]!;
      peaksBelow[k] = count;
      if (here < powers[k - 1]! || here < powers[k + 1]!) continue;
      places[count] = k;
      magnitudes[count++] = Math.sqrt(Math.sqrt(here));
    }
    places[count] = size;
  }

  private weigh(row: Float32Array): void {
    const { harmonics, peaksBelow, places, magnitudes, pitches } = this;
    let most = 1e-9;
    for (let p = 0; p < pitches; p++) {
      let sum = 0;
      const ofPitch = harmonics[p]!;
      for (let h = 0; h < ofPitch.length; h++) {
        const { from, to, weight } = ofPitch[h]!;
        let peak = 0;
        for (let n = peaksBelow[from]!; places[n]! <= to; n++) if (magnitudes[n]! > peak) peak = magnitudes[n]!;
        sum += weight * peak;
      }
      row[p] = sum;
      if (sum > most) most = sum;
    }
    for (let p = 0; p < pitches; p++) row[p] = Math.max(0, (row[p]! / most - LEAST_SHARE) / (1 - LEAST_SHARE));
  }
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
