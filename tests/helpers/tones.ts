import type { Take } from '../../src/decode/index.js';

/** Sounds by formula, apart from the demo's synthesiser. */
export const RATE = 44100;

export type Spectrum = 'sine' | 'all-harmonics' | 'odd-harmonics';

/** Frequency of a MIDI number in equal temperament at A4 = 440 Hz. Source: ISO 16. */
export const hertz = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);

/**
 * A steady tone. Harmonics fall like 1/k as in a sawtooth, all of them or, as in a stopped pipe, every other one; none
 * above 0.45 of the rate. Their phases differ, so that the wave has no sharp edge.
 */
export function tone(
  midi: number,
  seconds: number,
  spectrum: Spectrum = 'all-harmonics',
  amplitude = 0.3,
): Float32Array {
  const samples = new Float32Array(Math.round(seconds * RATE));
  const hz = hertz(midi);
  const most = spectrum === 'sine' ? 1 : 40;
  for (let k = 1; k <= most && k * hz < 0.45 * RATE; k += spectrum === 'odd-harmonics' ? 2 : 1) {
    for (let i = 0; i < samples.length; i++) {
      samples[i] = samples[i]! + (amplitude / k) * Math.sin((2 * Math.PI * k * hz * i) / RATE + 0.37 * k * k);
    }
  }
  return samples;
}

/** White noise of a given RMS level in dBFS. Source: linear congruential generator of Numerical Recipes. */
export function noise(seconds: number, levelDb: number): Float32Array {
  // uniform numbers between −1 and 1 have a mean square of 1/3
  const amplitude = Math.sqrt(3) * 10 ** (levelDb / 20);
  let state = 12345;
  return Float32Array.from({ length: Math.round(seconds * RATE) }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return amplitude * (state / 2 ** 31 - 1);
  });
}

export const silence = (seconds: number): Float32Array => new Float32Array(Math.round(seconds * RATE));

export function join(...pieces: readonly Float32Array[]): Float32Array {
  const all = new Float32Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

export function sum(a: Float32Array, b: Float32Array): Float32Array {
  return a.map((v, i) => v + (b[i] ?? 0));
}

export function takeOf(samples: Float32Array, sampleRateHz = RATE): Take {
  return { samples, sampleRateHz, channels: 1, cautions: [] };
}
