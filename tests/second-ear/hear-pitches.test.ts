import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isMeasured, type MaybeNumber, notMeasured } from '../../src/base/index.js';
import { decodeWav } from '../../src/decode/index.js';
import { hearPitches } from '../../src/second-ear/index.js';

const RATE = 44100;

/** A tone with four partials. Frequencies of notes: MIDI tuning standard (A4 = 69 = 440 Hz). */
function tone(hz: number, seconds: number, rate = RATE): Float32Array {
  return Float32Array.from({ length: Math.round(seconds * rate) }, (_, i) =>
    [0.3, 0.15, 0.1, 0.05].reduce((sum, part, k) => sum + part * Math.sin((2 * Math.PI * hz * (k + 1) * i) / rate), 0),
  );
}

async function centsOf(samples: Float32Array, midi: number, offset = samples.length / RATE): Promise<MaybeNumber> {
  return (await hearPitches(samples, RATE, [{ onset: 0, offset, midi }]))[0] as MaybeNumber;
}

function number(value: MaybeNumber): number {
  if (!isMeasured(value)) throw new Error(value.notMeasured.code);
  return value;
}

describe('the second ear', () => {
  // 440 Hz is A4; 442 Hz is 1200·log2(442/440) = 7.85 cents above it; 261.626 Hz is C4 (MIDI tuning standard).
  it.each([
    [440, 69, 0],
    [442, 69, 7.85],
    [430, 69, -39.8],
    [261.626, 60, 0],
    [1975.533, 95, 0],
  ])('hears %d Hz as note %i, %d cents off', async (hz, midi, cents) => {
    expect(Math.abs(number(await centsOf(tone(hz, 0.6), midi)) - cents)).toBeLessThan(2);
  });

  // The engine itself comes to no end beyond 48 kHz.
  it.each([8000, 48_000, 88_200, 96_000, 176_400, 192_000])('hears notes at a rate of %i Hz', async (rate) => {
    for (const [hz, midi] of [
      [440, 69],
      [880, 81],
    ] as const) {
      const [heard] = await hearPitches(tone(hz, 0.8, rate), rate, [{ onset: 0, offset: 0.8, midi }]);
      expect(Math.abs(number(heard as MaybeNumber))).toBeLessThan(rate < 16_000 ? 15 : 3);
    }
  });

  it('hears notes where they are in a recording', async () => {
    const samples = new Float32Array(RATE * 2);
    samples.set(tone(440, 0.6), 0);
    samples.set(tone(493.883 * 2 ** (20 / 1200), 0.6), RATE);
    const notes = [
      { onset: 1, offset: 1.6, midi: 71 },
      { onset: 0, offset: 0.6, midi: 69 },
    ];
    const [second, first] = await hearPitches(samples, RATE, notes);
    expect(Math.abs(number(second as MaybeNumber) - 20)).toBeLessThan(2);
    expect(Math.abs(number(first as MaybeNumber))).toBeLessThan(2);
  });

  // 11 semitones are 1100 cents, and lie beyond the nine that are searched.
  it('does not hear what lies beyond nine semitones', async () => {
    const heard = await centsOf(tone(440 * 2 ** (11 / 12), 0.6), 69);
    expect(isMeasured(heard) ? Math.abs(heard) : 0).toBeLessThanOrEqual(900);
  });

  it('says why it hears nothing', async () => {
    const reasons = [
      await centsOf(tone(440, 0.1), 69),
      await centsOf(new Float32Array(RATE), 69),
      await centsOf(tone(29.135, 0.6), 22),
      await centsOf(tone(440, 0.6), 69, 0),
    ];
    expect(reasons).toEqual([
      notMeasured('second-ear-too-short'),
      notMeasured('second-ear-unclear'),
      notMeasured('second-ear-too-low'),
      notMeasured('second-ear-too-short'),
    ]);
  });

  it('does not depend on loudness', async () => {
    const samples = tone(523.251, 0.5);
    const loud = number(await centsOf(samples, 72));
    const soft = number(await centsOf(samples.map((sample) => sample / 300), 72)); // biome-ignore format: one line
    expect(Math.abs(loud - soft)).toBeLessThan(0.1);
  });

  it('answers or says why not, whatever it is given', async () => {
    const spans = fc.record({
      onset: fc.double({ min: -1, max: 2, noNaN: true }),
      offset: fc.double({ min: -1, max: 2, noNaN: true }),
      midi: fc.integer({ min: 0, max: 127 }),
    });
    const samples = fc.array(fc.float({ min: -1, max: 1, noNaN: true }), { maxLength: 50 });
    await fc.assert(
      fc.asyncProperty(
        samples,
        fc.constantFrom(8000, 22050, 44100, 192000),
        fc.array(spans, { maxLength: 3 }),
        async (some, rate, notes) => {
          const whole = Float32Array.from({ length: rate }, (_, i) => some[i % (some.length || 1)] ?? 0);
          for (const heard of await hearPitches(whole, rate, notes)) {
            if (isMeasured(heard)) expect(Math.abs(heard)).toBeLessThanOrEqual(901);
            else expect(heard.notMeasured.code).toMatch(/^second-ear-/);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('leaves the faults of the process to others', async () => {
    await hearPitches(tone(440, 0.5), RATE, []);
    const listeners = [...process.listeners('uncaughtException'), ...process.listeners('unhandledRejection')];
    expect(listeners.filter((listener) => /ExitStatus|^function abort/.test(String(listener)))).toEqual([]);
  });
});

// Real notes; where they come from, see fixtures/ORIGINS.md. The names of the files are confirmed by two pitch trackers of
// others; tuning of the players is within a quarter tone.
describe('of real players', () => {
  it.each([
    ['flute-a5', 81],
    ['flute-c4', 60],
    ['trumpet-f3', 53],
    ['trumpet-g4', 67],
  ])('%s', async (file, midi) => {
    const bytes = readFileSync(join(import.meta.dirname, `../../fixtures/takes/notes/${file}.wav`));
    const take = decodeWav(new Uint8Array(bytes));
    const [heard] = await hearPitches(take.samples, take.sampleRateHz, [{ onset: 0.1, offset: 1, midi }]);
    expect(Math.abs(number(heard as MaybeNumber))).toBeLessThan(50);
  });
});
