import { describe, expect, it } from 'vitest';
import type { Features } from '../../src/features/index.js';
import { measureEchoDelay } from '../../src/measure/measures/echo-delay.js';
import { hertz, noise, sum } from '../helpers/tones.js';

const RATE_HZ = 8000;

/** What the ear keeps of a sound of so many samples at 8 kHz; nothing else of it is asked for. */
const delayIn = (signal: Float32Array) => measureEchoDelay({ signal, signalRateHz: RATE_HZ } as Features);

/** A sound and its echoes: seconds later, share of the amplitude. */
function echoed(sound: Float32Array, ...echoes: readonly (readonly [seconds: number, share: number])[]): Float32Array {
  return echoes.reduce((all, [seconds, share]) => {
    const late = Math.round(seconds * RATE_HZ);
    return all.map((v, i) => v + share * (sound[i - late] ?? 0));
  }, sound);
}

/** Notes of a third of a second from a scale, each with eight harmonics, over a little noise: as long as asked for. */
function playing(seconds: number): Float32Array {
  const samples = new Float32Array(seconds * RATE_HZ);
  const length = RATE_HZ / 3;
  for (let i = 0; i < samples.length; i++) {
    const note = Math.floor(i / length);
    const within = (i % length) / length;
    const hz = hertz(60 + [0, 4, 7, 2, 5, 9, 11][note % 7]!);
    for (let k = 1; k <= 8; k++) {
      samples[i]! += (0.2 / k) * Math.sin(Math.PI * within) * Math.sin((2 * Math.PI * k * hz * i) / RATE_HZ);
    }
  }
  return sum(
    samples,
    NOISE.slice(0, samples.length).map((v) => 0.002 * v),
  );
}

const NOISE = noise(2, 0);

describe('the delay of an echo', () => {
  // log |1 + g exp(-iωτ)|² = 2 Σ (-1)^(n+1) gⁿ cos(nωτ) / n: the first peak is at τ and as high as g
  it.each([0.1, 0.3, 0.45, 0.65])('of noise is %d s', (seconds) => {
    expect(delayIn(echoed(NOISE, [seconds, 0.35]))).toBeCloseTo(seconds, 3);
  });

  it('of playing is found as well', () => {
    expect(delayIn(echoed(playing(20), [0.3, 0.5]))).toBeCloseTo(0.3, 3);
  });

  it('is found at the rate at which high instruments are heard, too', () => {
    const late = 0.3 * 24_000;
    const signal = NOISE.map((v, i) => v + 0.35 * (NOISE[i - late] ?? 0));
    expect(measureEchoDelay({ signal, signalRateHz: 24_000 } as Features)).toBeCloseTo(0.3, 3);
  });

  it('is that of the stronger of two', () => {
    expect(delayIn(echoed(NOISE, [0.2, 0.2], [0.5, 0.4]))).toBeCloseTo(0.5, 3);
  });

  it('is none of a sound without one, nor of one that is hardly there', () => {
    expect(delayIn(NOISE)).toBeUndefined();
    expect(delayIn(playing(20))).toBeUndefined();
    expect(delayIn(echoed(NOISE, [0.3, 0.05]))).toBeUndefined();
  });

  it('is none that comes with the sound, or after the notes that follow', () => {
    expect(delayIn(echoed(NOISE, [0.04, 0.35]))).toBeUndefined();
    expect(delayIn(echoed(NOISE, [0.9, 0.35]))).toBeUndefined();
  });

  it('is none of silence, and none of what is too short to tell', () => {
    expect(delayIn(new Float32Array(5 * RATE_HZ))).toBeUndefined();
    expect(delayIn(new Float32Array(0))).toBeUndefined();
    expect(delayIn(echoed(NOISE, [0.3, 0.35]).subarray(0, RATE_HZ))).toBeUndefined();
  });
});
