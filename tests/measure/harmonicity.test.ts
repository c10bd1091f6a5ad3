import { describe, expect, it } from 'vitest';
import { harmonicityReader } from '../../src/measure/harmonicity/read-harmonicity.js';
import { sounding } from '../helpers/frames.js';

const RATE = 8000;
const heard = (signal: Float32Array, hz: number) =>
  harmonicityReader({ ...sounding(1), signal, signalRateHz: RATE })(0.1, 0.9, () => hz);
const sine = (hz: number): Float32Array =>
  Float32Array.from({ length: RATE }, (_, i) => 0.3 * Math.sin((2 * Math.PI * hz * i) / RATE));

describe('harmonics over noise', () => {
  it('are as high as can be read for a sine at its own pitch', () => {
    expect(heard(sine(400), 400)!.harmonicsToNoiseDb).toBeGreaterThan(50);
  });

  // Source: the correlation of a sine with itself half a period later is −1: there is nothing that comes again.
  it('are none where what sounds is against itself after the period that is expected, and in silence', () => {
    expect(heard(sine(245), 490)).toBeNull();
    expect(heard(new Float32Array(RATE), 250)).toBeNull();
  });
});
