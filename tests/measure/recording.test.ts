import { describe, expect, it } from 'vitest';
import type { Caution } from '../../src/base/index.js';
import { measureTake } from '../../src/measure/index.js';
import { cautionSaid } from '../../src/words/index.js';
import { smallPart } from '../demo/small-part.js';
import { type HandNote, type HandOptions, handContext, playEvenly } from '../helpers/hand-context.js';

/** Eight notes of a quarter with a quarter of rest after each. */
const PART = smallPart(Array.from({ length: 8 }, (_, i) => ({ midi: 60 + i, quarters: 1, rest: i === 0 ? 0 : 1 })));
const EVEN = playEvenly(PART);
const measured = (notes: readonly HandNote[], options?: HandOptions) =>
  measureTake(handContext(PART, notes, options)).recording;

/** A sine of 100 Hz at 8 kHz, cut at ±1 as a recorder would that is set too loud. */
const sine = (amplitude: number): Float32Array =>
  Float32Array.from({ length: 8000 }, (_, i) =>
    Math.max(-1, Math.min(1, amplitude * Math.sin((2 * Math.PI * i) / 80.37))),
  );

/** The cautions in English. */
const said = ({ cautions }: { readonly cautions: readonly Caution[] }) =>
  cautions.map((caution) => cautionSaid('en', caution)).join();

describe('the recording', () => {
  // Source: 20 log10: half scale is −6.02 dBFS, a tenth is −20.
  it.each([
    [0.5, -6.02],
    [0.1, -20],
  ])('with a peak of %d is at %d dBFS and not clipped', (amplitude, peakDbfs) => {
    const recording = measured(EVEN, { samples: sine(amplitude) });
    expect(recording.peakDbfs).toBeCloseTo(peakDbfs, 2);
    expect(recording.clippedShare).toBeLessThan(0.02);
    expect(recording.cautions).toEqual([]);
  });

  it('says how far its coding may have moved onsets, and 0 for a WAV file', () => {
    const context = handContext(PART, EVEN);
    const coding = { container: 'ogg', codec: 'opus', lossy: true, speech: false, bitsASecond: 24000 } as const;
    const origin = { ...coding, bandwidthHz: 12000, onsetSpreadSeconds: 0.008 };
    expect(measureTake(context).recording.onsetSpreadSeconds).toBe(0);
    expect(measureTake({ ...context, take: { ...context.take, origin } }).recording.onsetSpreadSeconds).toBe(0.008);
  });

  it('clips for as long as the sound is beyond full scale', () => {
    // a sine of twice full scale is beyond it while |sin| > 1/2: two thirds of the time
    const recording = measured(EVEN, { samples: sine(2) });
    expect(recording.peakDbfs).toBeCloseTo(0, 3);
    expect(Math.abs(recording.clippedShare - 2 / 3)).toBeLessThan(0.05);
    expect(recording.cautions).toHaveLength(1);
    expect(recording.cautions[0]).toEqual({ code: 'clips', facts: {} });
  });

  it('of nothing at all has finite numbers', () => {
    const recording = measured(EVEN, { samples: new Float32Array(0) });
    expect(Number.isFinite(recording.peakDbfs)).toBe(true);
    expect(recording.clippedShare).toBe(0);
  });

  it('has the distance from the notes to the floor', () => {
    expect(measured(EVEN, { floorDb: -70 }).signalToNoiseDb).toBeCloseTo(46, 2);
    const noisy = measured(EVEN, { floorDb: -40 });
    expect(noisy.signalToNoiseDb).toBeCloseTo(16, 2);
    expect(said(noisy)).toMatch(/noise/);
    const silent = EVEN.map((note) => ({ ...note, status: 'left-out' as const }));
    expect(measured(silent).signalToNoiseDb).toHaveProperty('notMeasured');
  });

  it('hands on what the file said about itself', () => {
    const empty: Caution = { code: 'channels-empty', facts: { channels: [2], of: 2 } };
    const context = handContext(PART, EVEN);
    const take = { ...context.take, cautions: [empty] };
    expect(measureTake({ ...context, take }).recording.cautions).toEqual([empty]);
  });
});

describe('a recorder that moves its level', () => {
  const loudAndSoft = (roomAfterDb: (loud: boolean) => number): HandNote[] =>
    EVEN.map((note) => {
      const loud = note.index % 2 === 0;
      return { ...note, levelDb: loud ? -20 : -30, roomAfterDb: roomAfterDb(loud) };
    });

  // Source: definition of automatic gain control: the gain rises after soft sound, and the noise of the room with it.
  it('gives itself away: the room gets louder after soft notes', () => {
    const recording = measured(loudAndSoft((loud) => (loud ? -68 : -52)));
    expect(recording.levelRiding).toBe(true);
    expect(said(recording)).toMatch(/level by itself/);
  });

  it('is not suspected when the room stays as it is, nor when it rings on after loud notes', () => {
    expect(measured(loudAndSoft(() => -60)).levelRiding).toBe(false);
    expect(measured(loudAndSoft((loud) => (loud ? -52 : -68))).levelRiding).toBe(false);
  });

  it('is not suspected on the ground of a few pauses', () => {
    const some = loudAndSoft((loud) => (loud ? -68 : -52)).map((note) =>
      note.index > 3 ? { ...note, status: 'left-out' as const } : note,
    );
    expect(measured(some).levelRiding).toBe(false);
  });
});
