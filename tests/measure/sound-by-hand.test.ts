import { describe, expect, it } from 'vitest';
import type { AlignedNote } from '../../src/align/index.js';
import { notMeasured } from '../../src/base/index.js';
import type { Features } from '../../src/features/index.js';
import type { NoteContext } from '../../src/measure/context/context.js';
import type { HeldNoteMeasure, RecordingMeasure } from '../../src/measure/index.js';
import { measureArticulations } from '../../src/measure/measures/articulations.js';
import { measureBreaths } from '../../src/measure/measures/breaths.js';
import { measureCracks } from '../../src/measure/measures/cracks.js';
import { measureHeldNotes } from '../../src/measure/measures/held-notes.js';
import { measureIntonation } from '../../src/measure/measures/intonation.js';
import { measureRests } from '../../src/measure/measures/rests.js';
import { measureSlurredAir } from '../../src/measure/measures/slurred-air.js';
import { splitVibrato } from '../../src/measure/measures/split-vibrato.js';
import { measureStarts } from '../../src/measure/measures/starts.js';
import { startsOfNotes } from '../../src/measure/measures/starts-of-notes.js';
import { measureSteadiness } from '../../src/measure/measures/steadiness.js';
import { steadyCents } from '../../src/measure/measures/steady-cents.js';
import { measureTuning } from '../../src/measure/measures/tuning.js';
import type { Part } from '../../src/score/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { PITCH_HOP, pitched, sounding } from '../helpers/frames.js';

/**
 * How notes begin, are held and go over, from frames and numbers written by hand, on both sides of each limit of its measure.
 *
 * Source: definition; least squares for waves; the limits are the measures' own working values, typed here by hand.
 */
const code = (value: unknown) => (value as { notMeasured?: { code: string } }).notMeasured?.code ?? value;
const quarters = (count: number, change: (i: number) => Partial<NoteSketch> = () => ({})): Part =>
  smallPart(Array.from({ length: count }, (_, i) => ({ midi: 60 + (i % 12), quarters: 1, ...change(i) })));
const at = (onsetSeconds: number, offsetSeconds: number, index = 0, playedMidi = 60): AlignedNote => {
  return { index, status: 'as-written', confidence: 1, playedMidi, onsetSeconds, offsetSeconds };
};
const DRY = { reverberationSeconds: 0.3, levelRiding: false } as RecordingMeasure;

function startsOf(context: object) {
  const known = context as NoteContext;
  const begun = startsOfNotes(known);
  return measureStarts(known, begun, measureCracks(known, begun));
}

describe('a course parted into a wave and the rest', () => {
  const seconds = Array.from({ length: 200 }, (_, i) => 0.005 * i);
  const wave = (hz: number, depth: number) => seconds.map((t) => depth * Math.sin(2 * Math.PI * hz * t));

  it.each([4, 5.5, 8])('finds a wave of %d turns a second, its depth, and nothing beside it', (hz) => {
    const split = splitVibrato(seconds, wave(hz, 20));
    expect(split.rateHz).toBeCloseTo(hz, 9);
    // the slow bend takes a little of each wave
    expect(Math.abs(split.depth - 20)).toBeLessThan(1);
    expect(split.regularShare).toBeGreaterThan(0.95);
    expect(split.restSpread).toBeLessThan(split.spread / 4);
    expect(split.spread).toBeGreaterThan(15);
  });

  it('takes a parabola out first', () => {
    const { spread, depth } = splitVibrato(
      seconds,
      seconds.map((t) => 5 - 30 * t + 60 * t * t),
    );
    expect(spread).toBeCloseTo(0, 9);
    expect(depth).toBeCloseTo(0, 9);
  });

  it('looks no further than from four to eight turns', () => {
    // of faster and slower waves little is taken out
    for (const hz of [2.5, 12]) expect(splitVibrato(seconds, wave(hz, 20)).regularShare).toBeLessThan(0.3);
  });

  it('does not know when time begins', () => {
    const late = splitVibrato(
      seconds.map((t) => t + 37.2),
      wave(6, 20),
    );
    const early = splitVibrato(seconds, wave(6, 20));
    expect(late.depth).toBeCloseTo(early.depth, 6);
    expect(late.restSpread).toBeCloseTo(early.restSpread, 6);
  });
});

describe('the steady part of a pitch', () => {
  const course = (...stretches: readonly (readonly [count: number, cents: number])[]) =>
    stretches.flatMap(([count, cents]) => Array.from({ length: count }, () => cents));

  it('holds two pitches where they lie 50 cents apart and each lasts a fifth of it', () => {
    expect(steadyCents(course([10, 0], [10, 49]))).toBe(24.5);
    expect(steadyCents(course([10, 0], [10, 50]))).toBeNull();
    expect(steadyCents(course([4, 80], [16, 0]))).toBeNull();
    expect(steadyCents(course([3, 80], [17, 0]))).toBe(0);
    expect(steadyCents(course([17, 0], [3, 80]))).toBe(0);
    expect(steadyCents(course([16, 0], [4, 80]))).toBeNull();
  });

  it('is the median of one pitch that spreads, and of a single frame', () => {
    // 60 cents between the ends, no two levels
    expect(steadyCents([0, 10, 20, 30, 40, 50, 60])).toBe(30);
    expect(steadyCents([7])).toBe(7);
  });
});

describe('a long note', () => {
  const part = quarters(3, (i) => (i === 2 ? { rest: 1 } : {}));
  /** Note 1 from 1 s on for so long, at 60 and so many cents by the moment. */
  function held(
    seconds: number,
    centsAt: (t: number) => number = () => 0,
    { recording = DRY, clarity = 0.9, heard = 1 } = {},
  ) {
    const features = sounding(12, [1, 1 + seconds, -20]);
    for (let f = 0; f < Math.round(seconds / PITCH_HOP); f++) {
      const t = 1 + f * PITCH_HOP;
      if (f % 100 < 100 * heard) pitched(features, t, t + PITCH_HOP, 60 + centsAt(t - 1) / 100, clarity);
    }
    const notes = [at(0, 0.5), at(1, 1 + seconds, 1), at(11, 11.5, 2)];
    const context = { part, features, alignment: { notes, offsetSemitones: 0 }, notes: [] };
    return measureHeldNotes(context as unknown as NoteContext, recording).find(({ index }) => index === 1);
  }

  it('lasts 0.54 s and more: 0.36 s without its beginning and end', () => {
    expect([held(0.53), held(0.55)]).toEqual([
      undefined,
      expect.objectContaining({ seconds: expect.closeTo(0.37, 9) }),
    ]);
  });

  it('is heard clearly for eight tenths of that', () => {
    expect([held(2, undefined, { clarity: 0.79 }), held(2, undefined, { heard: 0.7 })]).toEqual([undefined, undefined]);
    expect(held(2, undefined, { clarity: 0.81, heard: 0.9 })).toBeDefined();
  });

  it('is held where it is one pitch, and does not stray then', () => {
    expect(held(2, () => 12)).toMatchObject({
      wobbleCents: expect.closeTo(0, 2),
      endCents: expect.closeTo(0, 2),
      beforeBreath: true,
    });
    expect(held(2, (t) => (t < 1 ? 0 : 60))).toBeUndefined();
  });

  it('has vibrato from five cents on, and then strays by what is left', () => {
    const swaying = (depth: number) => held(2, (t) => depth * Math.sin(2 * Math.PI * 5 * t));
    expect(swaying(4.5)!.vibrato).toBeUndefined();
    expect(swaying(4.5)!.wobbleCents).toBeGreaterThan(3);
    expect(swaying(6)!.vibrato).toEqual({ rateHz: expect.closeTo(5, 1), depthCents: expect.closeTo(6, 0) });
    expect(swaying(6)!.wobbleCents).toBeLessThan(1);
  });

  it('comes at its end to so much over its middle', () => {
    // two seconds from 1.12 s to 2.94 s; the last 0.2 s against the stretch from a fifth to three fifths
    expect(held(2, (t) => (t >= 1.74 ? -20 : 0))!.endCents).toBeCloseTo(-20, 1);
    expect(held(2, (t) => (t >= 1.85 ? -20 : 0))!.endCents).toBeCloseTo(0, 1);
    expect(held(2, (t) => (t < 0.48 ? -20 : 0))!.endCents).toBeCloseTo(0, 1);
    // from three fifths of it, 1.21 s, to 0.2 s before its end nothing counts
    expect(held(2, (t) => (t > 1.22 && t < 1.73 ? 30 : 0))!.endCents).toBeCloseTo(0, 1);
    expect(held(2, (t) => (t > 0.49 && t < 1.21 ? 30 : 0))!.endCents).toBeCloseTo(-30, 1);
    // less than half of the middle, whatever follows it
    expect(held(2, (t) => (t > 0.9 && t < 1.5 ? 30 : 0))!.endCents).toBeCloseTo(0, 1);
  });

  it('is looked at in pieces of about 0.9 s', () => {
    // a wave that changes its rate after a second: one piece of 1.3 s tells none of both, two pieces tell each
    const changing = (t: number) => 20 * Math.sin(2 * Math.PI * (t < 1.03 ? 4.5 : 7.5) * t);
    expect(held(2, changing)!.vibrato).toBeDefined();
  });

  it('says nothing of its level in a wet room, or in one that is not known', () => {
    const level = (reverberationSeconds: RecordingMeasure['reverberationSeconds']) =>
      code(held(2, undefined, { recording: { ...DRY, reverberationSeconds } })!.wobbleDb);
    expect(level(0.7)).toBeCloseTo(0, 3);
    expect(level(0.71)).toBe('room-rings');
    expect(level(notMeasured('too-few-silences'))).toBe('too-few-silences');
  });

  it('is none of a grace note, of an ornament, and of what was not heard', () => {
    const with2 = (change: Partial<NoteSketch>, note: object = {}) => {
      const features = pitched(sounding(12, [1, 3, -20]), 1, 3, 60);
      const notes = [at(0, 0.5), { ...at(1, 3, 1), ...note }, at(11, 11.5, 2)];
      const of = quarters(3, (i) => (i === 1 ? change : {}));
      return measureHeldNotes(
        { part: of, features, alignment: { notes, offsetSemitones: 0 }, notes: [] } as unknown as NoteContext,
        DRY,
      ).length;
    };
    expect([with2({}), with2({ grace: true }), with2({ ornament: 'trill' })]).toEqual([1, 0, 0]);
    expect([with2({}, { onsetSeconds: undefined }), with2({}, { offsetSeconds: undefined })]).toEqual([0, 0]);
  });

  it('comes before a breath where one is marked, at a rest and at the end', () => {
    const leadsToBreath = (change: (i: number) => Partial<NoteSketch>, count = 3) => {
      const features = pitched(sounding(12, [1, 3, -20]), 1, 3, 60);
      const notes = Array.from({ length: count }, (_, i) => (i === 1 ? at(1, 3, 1) : at(10 + i, 10.3 + i, i)));
      const of = quarters(count, change);
      const found = measureHeldNotes(
        { part: of, features, alignment: { notes, offsetSemitones: 0 }, notes: [] } as unknown as NoteContext,
        DRY,
      );
      return found[0]!.beforeBreath;
    };
    expect(leadsToBreath(() => ({}))).toBe(false);
    expect(leadsToBreath((i) => (i === 1 ? { breathAfter: 'breath' } : {}))).toBe(true);
    expect(leadsToBreath((i) => (i === 2 ? { rest: 0.5 } : {}))).toBe(true);
    expect(leadsToBreath(() => ({}), 2)).toBe(true);
  });
});

describe('how steadily notes are held', () => {
  const notes = (count: number, vibrato: number) =>
    Array.from({ length: count + vibrato }, (_, i) => ({
      wobbleCents: i,
      ...(i >= count ? { vibrato: { rateHz: 5, depthCents: 20 } } : {}),
    })) as unknown as HeldNoteMeasure[];

  it('is the median of five and more without vibrato', () => {
    expect(measureSteadiness(notes(5, 3))).toMatchObject({ wobbleCents: 2, count: 5, vibratoCount: 3 });
    expect(code(measureSteadiness(notes(4, 0)))).toBe('too-few-held-notes');
    expect(code(measureSteadiness(notes(4, 1)))).toBe('held-with-vibrato');
    expect(code(measureSteadiness(notes(3, 1)))).toBe('too-few-held-notes');
  });
});

describe('the air under slurs', () => {
  const part = (count: number, change: (i: number) => Partial<NoteSketch> = () => ({})) =>
    quarters(count, (i) => ({ midi: 60, slurredToNext: true, slurredFromPrevious: true, ...change(i) }));
  const air = (
    of: Part,
    dips: readonly number[],
    change: Partial<RecordingMeasure> = {},
    statuses: Record<number, 'unclear'> = {},
  ) => {
    const notes = of.notes.map(({ index }) => ({ index, status: statuses[index] ?? 'as-written' }));
    const transitions = dips.map((dipDb, index) => ({ index, toIndex: index + 1, dipDb }));
    const recording = { ...DRY, ...change };
    return measureSlurredAir(
      { part: of, alignment: { notes } } as unknown as NoteContext,
      transitions as never,
      recording,
    );
  };

  it('dips by the median of six pairs and more', () => {
    expect(air(part(8), [1, 2, 3, 4, 5, 60, 7])).toMatchObject({ dipDb: 4, count: 7 });
    expect(air(part(8), [1, 2, 3, 4, 5, 6])).toMatchObject({ dipDb: 3.5, count: 6 });
    expect(code(air(part(8), [1, 2, 3, 4, 5]))).toBe('no-slurs');
  });

  it('is that of pairs under one slur that were played as written', () => {
    const six = [1, 2, 3, 4, 5, 6];
    expect(
      code(
        air(
          part(8, (i) => (i === 2 ? { slurredToNext: false } : {})),
          six,
        ),
      ),
    ).toBe('no-slurs');
    expect(
      code(
        air(
          part(8, (i) => (i === 3 ? { slurredFromPrevious: false } : {})),
          six,
        ),
      ),
    ).toBe('no-slurs');
    expect(code(air(part(8), six, {}, { 0: 'unclear' }))).toBe('no-slurs');
    expect(code(air(part(8), six, {}, { 6: 'unclear' }))).toBe('no-slurs');
  });

  it('is told for steps and for leaps of five semitones and more, where there are six of each', () => {
    const leaping = (semitones: number) => part(13, (i) => ({ midi: 60 + (i > 6 && i % 2 === 1 ? semitones : 0) }));
    const dips = [1, 1, 1, 1, 1, 1, 5, 5, 5, 5, 5, 5];
    expect(air(leaping(5), dips)).toMatchObject({ steps: { dipDb: 1, count: 6 }, leaps: { dipDb: 5, count: 6 } });
    expect(air(leaping(4), dips)).not.toHaveProperty('leaps');
    expect(air(leaping(5), dips.slice(1).concat())).not.toHaveProperty('leaps');
  });

  it('is not told where the level was moved, or the room rings', () => {
    expect(code(air(part(8), [1, 2, 3, 4, 5, 6], { levelRiding: true }))).toBe('level-moved');
    expect(code(air(part(8), [1, 2, 3, 4, 5, 6], { reverberationSeconds: 0.71 }))).toBe('room-rings');
  });
});

describe('the beginning of a note', () => {
  const part = quarters(3);
  interface Start {
    readonly floorDb?: number;
    readonly seconds?: number;
    readonly otherwise?: (features: Features) => void;
    readonly change?: Partial<NoteSketch>;
    readonly levelDb?: number;
  }
  /** Note 1 from 2 s on, at −20 dB and 60 from its first frame on, after silence from 1 s on. */
  function start({ floorDb = -60, seconds = 1, otherwise = () => undefined, change = {}, levelDb = -20 }: Start) {
    const features = pitched(sounding(6, [0, 1, -20], [1, 2, floorDb], [2, 2 + seconds, -20]), 2, 2 + seconds, 60);
    otherwise(features);
    const notes = [at(0, 1), at(2, 2 + seconds, 1), at(5, 5.5, 2)];
    const of = { ...part, notes: part.notes.map((n) => (n.index === 1 ? { ...n, ...change } : n)) };
    const measured = [0, 1, 2].map((index) => ({ index, levelDb }));
    const context = { part: of, features, alignment: { notes, offsetSemitones: 0 }, notes: measured };
    return startsOf(context).find(({ index }) => index === 1);
  }

  it('is looked at where the sound before has fallen by 18 dB, in notes of 0.2 s and more', () => {
    expect([start({ floorDb: -37.9 }), start({ floorDb: -38.1 })]).toEqual([
      undefined,
      expect.objectContaining({ index: 1, bar: '1' }),
    ]);
    expect([start({ seconds: 0.19 }), start({ seconds: 0.21 })]).toEqual([
      undefined,
      expect.objectContaining({ index: 1 }),
    ]);
    expect(start({ change: { slurredFromPrevious: true } })).toBeUndefined();
    expect(start({ change: { grace: true } })).toBeUndefined();
  });

  it('takes as long as until four frames in a row are at its pitch', () => {
    const { pitchSeconds } = start({})!;
    const late = (seconds: number, gap = 0) =>
      start({
        otherwise: (features) => {
          pitched(features, 2, 2 + seconds, 60, 0.3);
          if (gap > 0) pitched(features, 2 + seconds + gap, 2 + seconds + gap + PITCH_HOP, 60, 0.3);
        },
      })!.pitchSeconds - pitchSeconds;
    expect(late(0.1)).toBeCloseTo(0.1, 9);
    // lost again after three frames: it counts from behind that
    expect(late(0.1, 0.015)).toBeCloseTo(0.12, 9);
    expect(late(0.1, 0.02)).toBeCloseTo(0.1, 9);
  });

  it('is at its pitch within 0.6 of a semitone, from a clearness of 0.7 on', () => {
    const off = (midi: number, clarity: number) =>
      start({ otherwise: (features) => pitched(features, 2, 3, midi, clarity) });
    expect([off(60.59, 0.9), off(60.61, 0.9)]).toEqual([expect.objectContaining({ index: 1 }), undefined]);
    expect([off(60, 0.71), off(60, 0.69)]).toEqual([expect.objectContaining({ index: 1 }), undefined]);
  });

  it('takes as long as until its level is 6 dB below', () => {
    const { levelSeconds } = start({})!;
    const swelling = (db: number) =>
      start({ otherwise: ({ power }) => power.fill(10 ** (db / 10), 1000, 1050) })!.levelSeconds - levelSeconds;
    expect(swelling(-25.8)).toBeLessThan(0.01);
    expect(swelling(-28)).toBeGreaterThan(0.08);
  });

  it('cracks at another pitch for four frames: as far as 2.5 semitones, as clear as 0.85, as loud as 14 dB below', () => {
    const cracked = (semitones: number, { frames = 12, clarity = 0.9, db = -20 } = {}) =>
      start({
        otherwise: (features) => {
          pitched(features, 2, 2 + frames * PITCH_HOP, 60 + semitones, clarity);
          features.power.fill(10 ** (db / 10), 1000, 1000 + Math.round((frames * PITCH_HOP) / 0.002));
        },
      })!.crack;
    expect(cracked(7)).toEqual({ semitones: expect.closeTo(7, 5), seconds: expect.closeTo(0.06, 9) });
    expect(cracked(-5)).toMatchObject({ semitones: expect.closeTo(-5, 5) });
    expect([cracked(2.4), cracked(2.6)?.semitones]).toEqual([undefined, expect.closeTo(2.6, 5)]);
    expect([cracked(7, { clarity: 0.84 }), cracked(7, { clarity: 0.86 })?.seconds]).toEqual([
      undefined,
      expect.closeTo(0.06, 9),
    ]);
    expect([cracked(7, { frames: 3 }), cracked(7, { frames: 4 })?.seconds]).toEqual([
      undefined,
      expect.closeTo(0.02, 9),
    ]);
    expect([cracked(7, { db: -36 }), cracked(7, { db: -32 })?.semitones]).toEqual([undefined, expect.closeTo(7, 5)]);
    // octaves are told by harmonics, of which there are none here
    expect([cracked(-12), cracked(-24.5), cracked(-11.2)?.semitones, cracked(12)?.semitones]).toEqual([
      undefined,
      undefined,
      expect.closeTo(-11.2, 4),
      undefined,
    ]);
  });

  it('is none of a note whose level is not known', () => {
    expect(start({ levelDb: undefined as never })).toBeDefined();
    const features = pitched(sounding(6, [2, 3, -20]), 2, 3, 60);
    const notes = [at(0, 1), at(2, 3, 1), at(5, 5.5, 2)];
    const measured = [0, 1, 2].map((index) => ({ index, levelDb: notMeasured('note-in-noise') }));
    const context = { part, features, alignment: { notes, offsetSemitones: 0 }, notes: measured };
    expect(startsOf(context)).toEqual([]);
  });
});

describe('where the pitch leans', () => {
  const leaning = (
    count: number,
    of: (i: number) => {
      midi?: number;
      cents?: number;
      db?: number;
      seconds?: number;
      grace?: boolean;
      status?: string;
    },
  ) => {
    const part = quarters(count, (i) => ({
      midi: of(i).midi ?? 60,
      writtenMidi: of(i).midi ?? 60,
      grace: of(i).grace ?? false,
    }));
    const notes = part.notes.map(({ index }) => {
      const { cents = 0, db = -20 } = of(index);
      return { index, cents, centsFromOwnTuning: cents, levelDb: db };
    });
    const aligned = part.notes.map(({ index }) => ({
      ...at(index, index + (of(index).seconds ?? 0.5), index),
      status: of(index).status ?? 'as-written',
    }));
    return measureIntonation({ part, notes, alignment: { notes: aligned } } as unknown as NoteContext);
  };

  it('is told of a name with four notes of 0.12 s and more', () => {
    const told = (of: Parameters<typeof leaning>[1], count = 4) =>
      leaning(count, of).noteNames.map(({ count: n, cents }) => [n, cents]);
    expect(told((i) => ({ cents: 10 * i }))).toEqual([[4, 15]]);
    expect(told(() => ({}), 3)).toEqual([]);
    expect(told((i) => ({ seconds: i === 2 ? 0.119 : 0.5 }))).toEqual([]);
    expect(told((i) => ({ seconds: i === 2 ? 0.121 : 0.5 }))).toHaveLength(1);
    expect(told((i) => ({ grace: i === 2 }))).toEqual([]);
    expect(told((i) => ({ status: i === 2 ? 'other-pitch' : 'as-written' }))).toEqual([]);
  });

  it('cuts the range in three, the larger thirds first', () => {
    // 60 to 69 are ten semitones: 60 to 63, 64 to 66, 67 to 69
    const { registers } = leaning(40, (i) => ({ midi: 60 + (i % 10), cents: i % 10 < 4 ? -5 : i % 10 < 7 ? 0 : 8 }));
    expect(
      registers.map(({ register, fromMidi, toMidi, count, cents }) => [register, fromMidi, toMidi, count, cents]),
    ).toEqual([
      ['low', 60, 63, 16, -5],
      ['middle', 64, 66, 12, 0],
      ['high', 67, 69, 12, 8],
    ]);
  });

  it('goes with loudness, each pitch against itself, from 24 notes and 6 dB on', () => {
    const loud = (count: number, reach: number) =>
      leaning(count, (i) => ({
        midi: 60 + (i % 2) * 5,
        cents: (i % 4 < 2 ? 0 : 2 * reach) + (i % 2) * 30,
        db: -30 + (i % 4 < 2 ? 0 : reach),
      })).withLoudness;
    expect(loud(24, 6)).toMatchObject({ centsPerDb: expect.closeTo(2, 6), reachDb: 6, count: 24 });
    expect(code(loud(23, 6))).toBe('too-few-loud-and-soft');
    expect(code(loud(24, 5.9))).toBe('loud-and-soft-alike');
  });

  it('is the median of five notes for the take', () => {
    const tuning = (count: number) =>
      measureTuning({ notes: Array.from({ length: count }, (_, i) => ({ cents: 10 * i })) } as unknown as NoteContext);
    expect(tuning(5)).toEqual({ centsFromA440: 20, a4Hz: expect.closeTo(440 * 2 ** (20 / 1200), 9) });
    expect(code(tuning(4))).toBe('too-few-pitches');
  });
});

describe('how notes are played that are asked for so', () => {
  const over = (count: number) =>
    Array.from({ length: count }, (_, index) => ({ index, toIndex: index + 1, soundedShare: 0.1 * (index + 1) }));
  const ways = (change: (i: number) => Partial<NoteSketch>, statuses: Record<number, string> = {}) => {
    const part = quarters(5, change);
    const notes = part.notes.map(({ index }) => ({ index, status: statuses[index] ?? 'as-written' }));
    return measureArticulations({ part, alignment: { notes } } as unknown as NoteContext, over(4) as never).map(
      ({ way, count, soundedShare }) => `${way} ${count} ${soundedShare.toFixed(2)}`,
    );
  };

  it('are told apart by their marks, the shortest as written first', () => {
    expect(
      ways((i) => (i === 0 ? { articulations: ['tenuto'] } : i === 1 ? { articulations: ['staccatissimo'] } : {})),
    ).toEqual(['staccatissimo 1 0.20', 'tongued 2 0.35', 'tenuto 1 0.10']);
    const one = (change: Partial<NoteSketch>) => ways((i) => (i === 2 ? change : { fermata: true }));
    expect(one({ slurredToNext: true })).toEqual(['slurred 1 0.30']);
    expect(one({ slurredToNext: true, articulations: ['staccato'] })).toEqual(['detached-legato 1 0.30']);
    expect(one({ slurredToNext: true, articulations: ['tenuto'] })).toEqual(['detached-legato 1 0.30']);
    expect(one({ articulations: ['staccato', 'tenuto'] })).toEqual(['detached-legato 1 0.30']);
    expect(one({ articulations: ['detached-legato'] })).toEqual(['detached-legato 1 0.30']);
    expect(one({ slurredFromPrevious: true, articulations: ['staccato'] })).toEqual(['slur-end-short 1 0.30']);
    expect(one({ articulations: ['staccato'] })).toEqual(['staccato 1 0.30']);
    expect(one({ slurredFromPrevious: true })).toEqual(['tongued 1 0.30']);
    expect(one({})).toEqual(['tongued 1 0.30']);
  });

  it('are left out before rests and breaths, at fermatas, and where either note was not as written', () => {
    for (const change of [{ fermata: true }, { breathAfter: 'breath' as const }]) {
      expect(ways((i) => (i === 1 ? change : {}))).toEqual(['tongued 3 0.30']);
    }
    expect(ways((i) => (i === 2 ? { rest: 1 } : {}))).toEqual(['tongued 3 0.30']);
    expect(ways((i) => (i === 2 ? { heldRestBefore: true } : {}))).toEqual(['tongued 3 0.30']);
    expect(ways(() => ({}), { 0: 'unclear' })).toEqual(['tongued 3 0.30']);
    expect(ways(() => ({}), { 4: 'unclear' })).toEqual(['tongued 3 0.20']);
  });
});

describe('a breath that is asked for', () => {
  const breath = (
    change: Partial<NoteSketch>,
    next: Partial<NoteSketch> = {},
    pace: object = { expectedSeconds: 1 },
    index = 1,
  ) => {
    const part = quarters(4, (i) => (i === 1 ? { breathAfter: 'breath', ...change } : i === 2 ? next : {}));
    const transitions = [{ index, toIndex: index + 1, gapSeconds: 0.3, betweenOnsetsSeconds: 1.2, ...pace }];
    return measureBreaths({ part } as unknown as NoteContext, transitions as never)[0]!;
  };

  it('is a gap, and late by what the next note waits', () => {
    expect(breath({})).toEqual({
      index: 1,
      bar: '1',
      pass: 1,
      beat: 2,
      gapSeconds: 0.3,
      lateSeconds: expect.closeTo(0.2, 9),
    });
  });

  it('is not known where the notes around it were not heard, nor late where time is free', () => {
    expect(code(breath({}, {}, {}, 2).gapSeconds)).toBe('neighbours-not-heard');
    expect(code(breath({ fermata: true }).lateSeconds)).toBe('fermata-leaves-open');
    expect(code(breath({}, { heldRestBefore: true }).lateSeconds)).toBe('fermata-leaves-open');
    expect(code(breath({}, {}, {}).lateSeconds)).toBe('tempo-unknown-here');
  });
});

describe('a written rest', () => {
  /** Note 8 ends at 9 s, where a rest of a second begins; note 9 follows at 10 s. */
  const part = quarters(16, (i) => ({ midi: 60, ...(i === 9 ? { rest: 1 } : {}) }));
  const inRest = (...sounds: readonly (readonly [from: number, to: number, midi: number, db: number])[]) => {
    const onset = (i: number) => part.notes[i]!.onsetQuarters;
    const notes = part.notes.map(({ index }) => at(onset(index), onset(index) + 0.95, index));
    const features = sounding(
      18,
      ...notes.map((n) => [n.onsetSeconds!, n.offsetSeconds!, -20] as const),
      ...sounds.map(([from, to, , db]) => [from, to, db] as const),
    );
    for (const n of notes) pitched(features, n.onsetSeconds!, n.offsetSeconds!, 60);
    for (const [from, to, midi] of sounds) pitched(features, from, to, midi);
    const context = { part, features, alignment: { notes, offsetSemitones: 0, restarts: [], added: [] } };
    return measureRests(context as unknown as NoteContext)[0]!;
  };

  it('is silent, or played into by another pitch that lasts a quarter of it', () => {
    expect(inRest()).toMatchObject({
      index: 8,
      toIndex: 9,
      quarters: 1,
      seconds: expect.closeTo(1, 6),
      state: 'silent',
      bar: '3',
      beat: 2,
    });
    // the rest is heard up to 9.95 s: a quarter of 0.95 s
    expect(inRest([9.3, 9.52, 67, -20]).state).toBe('silent');
    expect(inRest([9.3, 9.56, 67, -20])).toMatchObject({
      state: 'played-into',
      midi: 67,
      onsetSeconds: expect.closeTo(9.3, 2),
      beat: expect.closeTo(2.3, 1),
    });
  });

  it('is not played into by two pitches that are too short each', () => {
    expect(inRest([9.3, 9.45, 67, -20], [9.45, 9.6, 70, -20]).state).toBe('silent');
    expect(inRest([9.3, 9.45, 67, -20], [9.45, 9.75, 70, -20])).toMatchObject({ state: 'played-into', midi: 70 });
  });

  it('is played into by what is no more than 12 dB softer than the note', () => {
    expect([inRest([9.3, 9.7, 67, -31.5]).state, inRest([9.3, 9.7, 67, -32.5]).state]).toEqual([
      'played-into',
      'silent',
    ]);
  });

  it('is rung over by the note before it, held through half of it', () => {
    expect([inRest([8.9, 9.45, 60, -20]).state, inRest([8.9, 9.52, 60, -20]).state]).toEqual(['silent', 'rung-over']);
  });

  it('is played into by the same note begun again, where the level falls by 6 dB in between', () => {
    expect(inRest([8.9, 9.2, 60, -20], [9.2, 9.24, 60, -27], [9.24, 9.7, 60, -20]).state).toBe('played-into');
    expect(inRest([8.9, 9.2, 60, -20], [9.2, 9.24, 60, -23], [9.24, 9.7, 60, -20]).state).toBe('rung-over');
  });
});
