import { describe, expect, it } from 'vitest';
import { listen } from '../../src/features/index.js';
import { measureLevels } from '../../src/features/level-frames.js';
import { join, noise, RATE, silence, takeOf, tone } from '../helpers/tones.js';

const decibels = (power: number): number => 10 * Math.log10(power);

/** A sine of 1 kHz at 48 kHz: a level frame of 2 ms holds exactly two periods. */
const kilohertz = (amplitude: number, seconds = 0.5): Float32Array =>
  Float32Array.from({ length: 48000 * seconds }, (_, i) => amplitude * Math.sin((2 * Math.PI * i) / 48));

describe('level frames', () => {
  // Source: a sine's mean square is half its squared amplitude; ITU-T G.100.1: a full-scale sine is at −3.01 dBov.
  it.each([
    [1, -3.0103],
    [0.5, -9.0309],
    [0.1, -23.0103],
    [0.001, -63.0103],
  ])('of a sine of amplitude %d are all at %d dBFS', (amplitude, expected) => {
    const { power, hopSeconds } = measureLevels(kilohertz(amplitude), 48000);
    expect(hopSeconds).toBeCloseTo(0.002, 9);
    expect(power).toHaveLength(250);
    for (const p of power) expect(decibels(p)).toBeCloseTo(expected, 3);
  });

  // Source: definition: a full-scale square wave is at 0 dBFS RMS.
  it('of a full-scale square wave are at 0 dBFS', () => {
    const { power } = measureLevels(
      kilohertz(1).map((x) => (x >= 0 ? 1 : -1)),
      48000,
    );
    for (const p of power) expect(decibels(p)).toBeCloseTo(0, 9);
  });

  // Source: a sine reaches its amplitude in every period; definition of the peak.
  it.each([1, 0.5, 0.001])('of a sine of amplitude %d have that peak', (amplitude) => {
    const { peak, power } = measureLevels(kilohertz(amplitude), 48000);
    expect(peak).toHaveLength(power.length + 1);
    for (const p of peak.subarray(0, power.length)) expect(p / amplitude).toBeCloseTo(1, 6);
  });

  it('see the peak of the samples after the last whole frame', () => {
    const samples = new Float32Array(48000 + 30);
    samples[48020] = -0.75;
    const { peak, power } = measureLevels(samples, 48000);
    expect(peak[power.length]).toBe(0.75);
    expect(Math.max(...peak.subarray(0, power.length))).toBe(0);
  });

  it('are not weighted: a low note and a high note of one amplitude have one level', () => {
    const level = (midi: number): number => {
      const { power } = listen(takeOf(tone(midi, 1, 'sine')));
      return decibels(power.reduce((sum, p) => sum + p, 0) / power.length);
    };
    // A-weighting would set 55 Hz some 25 dB under 1.76 kHz; source: IEC 61672-1, from memory
    expect(level(33)).toBeCloseTo(level(93), 1);
  });

  it('follow each other without a gap, whatever the rate', () => {
    for (const rate of [8000, 22050, 44100, 96000, 192000]) {
      const { power, hopSeconds } = measureLevels(new Float32Array(rate), rate);
      expect(power.length * hopSeconds).toBeGreaterThan(1 - hopSeconds);
      expect(power.length * hopSeconds).toBeLessThanOrEqual(1);
      expect(hopSeconds).toBeGreaterThan(0.0015);
      expect(hopSeconds).toBeLessThan(0.0025);
    }
  });
});

describe('the noise floor', () => {
  it.each([-50, -65, -80])('is the level of the room at %d dBFS, however loud the playing', (floorDb) => {
    const samples = join(noise(0.4, floorDb), tone(60, 2.5), noise(0.6, floorDb));
    expect(Math.abs(measureLevels(samples, RATE).noiseFloorDb - floorDb)).toBeLessThan(0.7);
  });

  it('is never lower than a file can tell: digital silence', () => {
    // Source: 16 bits span 20 log10(2^15) = 90.3 dB below a full-scale sample, about 96 dB with the sign.
    const { noiseFloorDb } = measureLevels(silence(1), RATE);
    expect(noiseFloorDb).toBeLessThan(-90);
    expect(Number.isFinite(noiseFloorDb)).toBe(true);
    expect(Number.isFinite(measureLevels(new Float32Array(0), RATE).noiseFloorDb)).toBe(true);
  });
});
