import { MEZZO_FORTE_DBFS } from './dynamic-plan.js';
import type { TakePlan } from './types.js';

/** Source: Schroeder 1962, Natural Sounding Artificial Reverberation: four combs side by side, two all-passes after. */
const COMB_SECONDS = [0.0297, 0.0371, 0.0411, 0.0437];
const ALL_PASS_SECONDS = [0.005, 0.0017];
const ALL_PASS_GAIN = 0.7;
const WET_GAIN = 0.07;

function addComb(input: Float32Array, sum: Float32Array, delay: number, gain: number): void {
  const line = new Float32Array(delay);
  for (let i = 0, at = 0; i < input.length; i++) {
    const delayed = line[at] as number;
    sum[i] = (sum[i] as number) + delayed;
    line[at] = (input[i] as number) + delayed * gain;
    at = at + 1 === delay ? 0 : at + 1;
  }
}

function allPass(signal: Float32Array, delay: number): void {
  const line = new Float32Array(delay);
  for (let i = 0, at = 0; i < signal.length; i++) {
    const delayed = line[at] as number;
    const fed = (signal[i] as number) + delayed * ALL_PASS_GAIN;
    signal[i] = delayed - fed * ALL_PASS_GAIN;
    line[at] = fed;
    at = at + 1 === delay ? 0 : at + 1;
  }
}

function reverberation(dry: Float32Array, rate: number, roomSeconds: number): Float32Array {
  const wet = new Float32Array(dry.length);
  for (const seconds of COMB_SECONDS) {
    addComb(dry, wet, Math.round(seconds * rate), 10 ** ((-3 * seconds) / roomSeconds));
  }
  for (const seconds of ALL_PASS_SECONDS) allPass(wet, Math.round(seconds * rate));
  return wet;
}

/** Room and recorder noise: white noise through a first-order low-pass at about 2 kHz, of the given RMS. */
function addNoise(samples: Float32Array, rate: number, seed: number, rms: number): void {
  const keep = Math.exp((-2 * Math.PI * 2000) / rate);
  const scale = (rms * Math.sqrt(3) * Math.sqrt((1 - keep * keep) / (1 - keep) ** 2)) / 2 ** 31;
  let state = Math.imul(seed, 0x9e3779b1) ^ 0x1b873593 || 1;
  let low = 0;
  for (let i = 0; i < samples.length; i++) {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    low = keep * low + (1 - keep) * state;
    samples[i] = (samples[i] as number) + low * scale;
  }
}

/**
 * Puts the dry sound into a room and onto a recorder.
 *
 * @param dry mono, full scale = ±1; changed
 * @param plan room, noise, gain and seed
 *
 * Source: Schroeder 1962 for the room; definition for the noise.
 */
export function addRoom(dry: Float32Array, plan: TakePlan): void {
  const rate = plan.sampleRateHz ?? 44100;
  const roomSeconds = plan.roomSeconds ?? 0.5;
  if (roomSeconds > 0) {
    const wet = reverberation(dry, rate, roomSeconds);
    for (let i = 0; i < dry.length; i++) dry[i] = (dry[i] as number) + WET_GAIN * (wet[i] as number);
  }
  const noiseDb = MEZZO_FORTE_DBFS + (plan.gainDb ?? 0) - (plan.signalToNoiseDb ?? 48);
  addNoise(dry, rate, plan.seed, 10 ** (noiseDb / 20));
}
