import { describe, expect, it } from 'vitest';
import type { AlignedNote } from '../../src/align/index.js';
import { notMeasured } from '../../src/base/index.js';
import type { Features } from '../../src/features/index.js';
import type { LevelContext, MeasureContext, NoteContext } from '../../src/measure/context/context.js';
import { measureContrasts } from '../../src/measure/measures/contrasts.js';
import { measureEmptyPlaces } from '../../src/measure/measures/empty-places.js';
import { endsInSound } from '../../src/measure/measures/ends-in-sound.js';
import { hairpinCourse } from '../../src/measure/measures/hairpin-course.js';
import { measureHairpins } from '../../src/measure/measures/hairpins.js';
import { levelCourse } from '../../src/measure/measures/level-course.js';
import { measureLevels } from '../../src/measure/measures/levels.js';
import { measureMarkOrder } from '../../src/measure/measures/mark-order.js';
import { measureNoteLevel } from '../../src/measure/measures/note-level.js';
import { measureNotePitch } from '../../src/measure/measures/note-pitch.js';
import { pitchCourse } from '../../src/measure/measures/pitch-course.js';
import { measureReverberation } from '../../src/measure/measures/reverberation.js';
import { measureTransitions } from '../../src/measure/measures/transitions.js';
import { fitOwnLoudness } from '../../src/measure/own-loudness.js';
import type { Part } from '../../src/score/index.js';
import { crescendo, dynamic, smallPart } from '../demo/small-part.js';
import { LEVEL_HOP as HOP, PITCH_HOP, pitched, sounding } from '../helpers/frames.js';

/**
 * Levels and pitches from frames written by hand: what lies where decides which number comes out. Expected values are worked out
 * on paper.
 *
 * Source: RMS and medians by definition; interval of a median: 1.96 × 1.2533 × spread ÷ √n (Kenney & Keeping 1962); the spread is
 * 1.4826 × the median deviation (Rousseeuw & Croux 1993).
 */
const at = (onsetSeconds: number, offsetSeconds: number, index = 0): AlignedNote => {
  return { index, status: 'as-written', confidence: 1, playedMidi: 60, onsetSeconds, offsetSeconds };
};
const code = (value: unknown) => (value as { notMeasured?: { code: string } }).notMeasured?.code ?? value;

describe('the level of a note', () => {
  it('is the median over its middle seven tenths', () => {
    // a second from 1 s on: 0.15 s at each end do not count
    const features = sounding(3, [1, 1.15, -10], [1.15, 1.85, -30], [1.85, 2, -50]);
    expect(measureNoteLevel(features, at(1, 2))).toBeCloseTo(-30, 3);
    // six tenths of the middle at −20, a tenth at −40
    expect(measureNoteLevel(sounding(3, [1, 1.75, -20], [1.75, 2, -40]), at(1, 2))).toBeCloseTo(-20, 3);
    // 0.3 s and 0.4 s of 0.7 s: the larger part decides
    expect(measureNoteLevel(sounding(3, [1, 1.45, -20], [1.45, 2, -40]), at(1, 2))).toBeCloseTo(-40, 1);
  });

  it('is none of a note that was not heard, is too short or lies in the noise', () => {
    expect(code(measureNoteLevel(sounding(3), {}))).toBe('note-not-heard');
    // seven tenths of 14 ms are less than 10 ms, of 15 ms more
    expect(code(measureNoteLevel(sounding(3, [1, 2, -30]), at(1, 1.014)))).toBe('note-too-short');
    expect(measureNoteLevel(sounding(3, [1, 2, -30]), at(1, 1.015))).toBeCloseTo(-30, 3);
    expect(code(measureNoteLevel(sounding(3, [1, 2, -77.1]), at(1, 2)))).toBe('note-in-noise');
    expect(measureNoteLevel(sounding(3, [1, 2, -76.9]), at(1, 2))).toBeCloseTo(-76.9, 1);
  });
});

describe('the course of a level', () => {
  it('is frames of 40 ms, a hundredth apart, that lie within', () => {
    const { seconds, decibels } = levelCourse(sounding(2, [0, 1, -20], [1, 2, -40]), 0.9, 1.1);
    // middles from 0.92 to 1.08
    expect(seconds).toHaveLength(17);
    expect([seconds[0], seconds.at(-1)]).toEqual([expect.closeTo(0.92, 9), expect.closeTo(1.08, 9)]);
    expect([decibels[0], decibels[6]]).toEqual([expect.closeTo(-20, 3), expect.closeTo(-20, 3)]);
    // half of a frame at −20 and half at −40: 10 · lg(0.505 / 100)
    expect(decibels[8]).toBeCloseTo(10 * Math.log10((0.01 + 0.0001) / 2), 3);
    expect(decibels[10]).toBeCloseTo(-40, 3);
    expect(levelCourse(sounding(2), 1, 1.03).seconds).toEqual([]);
    expect(levelCourse(sounding(2), 1.9, 5).seconds.at(-1)).toBeCloseTo(1.98, 9);
  });
});

describe('the pitch of a note', () => {
  it('is read within 0.8 of a semitone, of the first candidate there', () => {
    const features = pitched(sounding(2), 1, 1.5, 60.79);
    expect(pitchCourse(features, 60, 1, 1.1, 0.5).cents[0]).toBeCloseTo(79, 1);
    expect(pitchCourse(features, 59.98, 1, 1.1, 0.5).cents).toEqual([]);
    const second = pitched(pitched(sounding(2), 1, 1.5, 72), 1, 1.5, 60.2, 0.9, 1);
    expect(pitchCourse(second, 60, 1, 1.1, 0.5).cents[0]).toBeCloseTo(20, 1);
    // the first one there decides, and is not clear enough
    const unclear = pitched(pitched(sounding(2), 1, 1.5, 60.1, 0.4), 1, 1.5, 60.2, 0.9, 1);
    expect(pitchCourse(unclear, 60, 1, 1.1, 0.5).cents).toEqual([]);
    expect(pitchCourse(unclear, 60, 1, 1.1, 0.4).cents).toHaveLength(21);
    expect(pitchCourse(unclear, 60, 1, 1.1, 0.4).seconds[0]).toBeCloseTo(1, 9);
  });

  it('leaves the attack out, and the end', () => {
    // half a second: the attack is 80 ms at most, the last 5 ms are left out
    const bent = pitched(pitched(sounding(2), 1, 1.08, 60.4), 1.08, 1.5, 60.1);
    expect(measureNotePitch(bent, at(1, 1.5), 60)).toBeCloseTo(10, 1);
    // a tenth: 35 ms of attack
    const short = pitched(pitched(sounding(2), 1, 1.035, 60.4), 1.035, 1.1, 60.1);
    expect(measureNotePitch(short, at(1, 1.1), 60)).toBeCloseTo(10, 1);
  });

  it('needs four frames that are clear', () => {
    const clear = (frames: number, clarity = 0.9) => pitched(sounding(2), 1.2, 1.2 + frames * PITCH_HOP, 60.1, clarity);
    expect(code(measureNotePitch(clear(3), at(1, 1.5), 60))).toBe('note-unsteady');
    expect(measureNotePitch(clear(4), at(1, 1.5), 60)).toBeCloseTo(10, 1);
    expect(code(measureNotePitch(clear(9, 0.59), at(1, 1.5), 60))).toBe('note-unsteady');
    expect(measureNotePitch(clear(9, 0.61), at(1, 1.5), 60)).toBeCloseTo(10, 1);
    expect(code(measureNotePitch(clear(9), { index: 0, status: 'left-out', confidence: 0 }, 60))).toBe(
      'note-not-heard',
    );
  });
});

/** Notes at levels, a second apart; NaN was not measured. */
function levelled(
  levels: readonly number[],
  marks: Partial<Part> = {},
  own: readonly number[] | null = null,
): LevelContext {
  const part = smallPart(
    levels.map((_, i) => ({ midi: 60 + (i % 5), quarters: 1 })),
    marks,
  );
  return {
    part,
    notes: levels.map((db, index) => {
      const levelDb = Number.isNaN(db) ? notMeasured('note-in-noise') : db;
      return { index, cents: 0, centsFromOwnTuning: 0, levelDb };
    }),
    alignment: { notes: levels.map((_, i) => at(i, i + 0.9, i)) },
    ownLoudness: own === null ? null : { of: (index: number) => own[index]! },
  } as unknown as LevelContext;
}

describe('the level under a mark', () => {
  const marks = { dynamics: [dynamic('p', 0, 0, 3), dynamic('f', 4, 4, 7)] };

  it('is the median of two notes and more, grace notes left out', () => {
    const levels = (context: NoteContext) => measureLevels(context).map(({ levelDb }) => code(levelDb));
    expect(levels(levelled([-30, -34, -50, -32, -20, -21, -22, -90], marks))).toEqual([-33, -21.5]);
    expect(levels(levelled([-30, -34, NaN, NaN, -20, NaN, NaN, NaN], marks))).toEqual([-32, 'too-few-under-this-mark']);
    const context = levelled([-30, -34, -10, -32, -20, -21, -22, -90], marks);
    const graced = {
      ...context.part,
      notes: context.part.notes.map((n) => (n.index === 2 ? { ...n, grace: true } : n)),
    };
    expect(levels({ ...context, part: graced })[0]).toBe(-32);
  });

  it('is set against the one before, raw and with what the notes do by themselves taken out', () => {
    const context = levelled([-30, -30, -32, -32, -20, -20, -18, -18], marks, [0, 0, 0, 0, 3, 3, 3, 3]);
    const [contrast] = measureContrasts(context, measureLevels(context));
    expect(contrast).toMatchObject({ from: 'p', to: 'f', index: 4, bar: '2', differenceDb: 12, registerAdjustedDb: 9 });
    // deviations of one from each median: 1.4826 · 1.2533 ÷ √4 = 0.929 on both sides, together 1.314; 1.96 times
    const half = 1.96 * Math.SQRT2 * ((1.2533 * 1.4826) / 2);
    expect(contrast!.intervalDb![0]).toBeCloseTo(12 - half, 3);
    expect(contrast!.intervalDb![1]).toBeCloseTo(12 + half, 3);
    const unknown = { ...context, ownLoudness: null };
    expect(code(measureContrasts(unknown, measureLevels(unknown))[0]!.registerAdjustedDb)).toBe('registers-unknown');
  });

  it('is no contrast to the same mark, and says which one is not known', () => {
    const same = { dynamics: [dynamic('p', 0, 0, 3), dynamic('p', 4, 4, 7)] };
    const alike = levelled([-30, -30, -32, -32, -20, -20, -18, -18], same);
    expect(measureContrasts(alike, measureLevels(alike))).toEqual([]);
    const facts = (levels: readonly number[]) => {
      const context = levelled(levels, marks);
      return (measureContrasts(context, measureLevels(context))[0]!.differenceDb as { notMeasured: object })
        .notMeasured;
    };
    expect(facts([NaN, NaN, NaN, -30, -20, -20, -20, -20])).toEqual({
      code: 'too-few-under-mark',
      facts: { mark: 'p' },
    });
    expect(facts([-30, -30, -30, -30, NaN, NaN, NaN, -20])).toEqual({
      code: 'too-few-under-mark',
      facts: { mark: 'f' },
    });
  });
});

describe('the order of the marks', () => {
  const marks = { dynamics: [dynamic('p', 0, 0, 5), dynamic('f', 6, 6, 11), dynamic('p', 12, 12, 17)] };
  const around = (middle: number) => [0, 1, -1, 0.5, -0.5, 0].map((off) => middle + off);

  it('is that of all passages under a mark together, of six notes and more', () => {
    const { marks: told, reversed } = measureMarkOrder(
      levelled([...around(-30), ...around(-20), ...around(-30)], marks),
    );
    expect(told.map(({ mark, count, levelDb }) => [mark, count, levelDb])).toEqual([
      ['p', 12, -30],
      ['f', 6, -20],
    ]);
    expect(reversed).toEqual([]);
    const few = measureMarkOrder(levelled([...around(-30), NaN, ...around(-20).slice(1), ...around(-30)], marks));
    expect(few.marks.map(({ mark }) => mark)).toEqual(['p']);
  });

  it('is reversed where the softer mark is surely louder', () => {
    const reversed = (p: number, f: number) =>
      measureMarkOrder(levelled([...around(p), ...around(f), ...around(p)], marks)).reversed;
    expect(reversed(-20, -24)).toEqual([{ softer: 'p', louder: 'f', byDb: 4 }]);
    expect(reversed(-24, -20)).toEqual([]);
    // median deviation 0.5: 1.96 · 1.2533 · 0.7413 ÷ √12 + the same ÷ √6 = 0.526 + 0.743 = 1.269
    expect(reversed(-20, -21.2)).toEqual([]);
    expect(reversed(-20, -21.3)).toHaveLength(1);
  });

  it('takes out what notes do by themselves', () => {
    const own = Array.from({ length: 18 }, (_, i) => (i >= 6 && i < 12 ? -6 : 0));
    const { marks: told } = measureMarkOrder(levelled([...around(-30), ...around(-20), ...around(-30)], marks, own));
    expect(told[1]!.levelDb).toBe(-14);
  });
});

describe('a hairpin', () => {
  const wedge = { hairpins: [crescendo(0, 8, 0, 7)] };
  const rising = (step: number, change: (i: number) => number = () => 0) =>
    Array.from({ length: 8 }, (_, i) => -30 + step * i + change(i));

  it('is the line through its levels, from the first note to the last', () => {
    const [hairpin] = measureHairpins(
      levelled(
        rising(1),
        wedge,
        Array.from({ length: 8 }, (_, i) => 0.5 * i),
      ),
    );
    // a decibel a second over seven seconds; bars of four quarters, a quarter is a second here
    expect(hairpin).toMatchObject({
      ...{ kind: 'crescendo', riseDb: expect.closeTo(7, 6), registerAdjustedRiseDb: expect.closeTo(3.5, 6) },
      ...{ slopeDbPerSecond: expect.closeTo(1, 6), slopeDbPerBar: expect.closeTo(4, 6) },
    });
    // what stands behind it, and a grace note in it, do not count
    const longer = measureHairpins(levelled([...rising(1), -90, -90], wedge))[0]!;
    expect(longer.riseDb).toBeCloseTo(7, 6);
    const context = levelled(
      rising(1).map((db, i) => (i === 3 ? -90 : db)),
      wedge,
    );
    const graced = {
      ...context.part,
      notes: context.part.notes.map((n) => (n.index === 3 ? { ...n, grace: true } : n)),
    };
    expect(measureHairpins({ ...context, part: graced })[0]).toMatchObject({
      ...{ riseDb: expect.closeTo(7, 6), slopeDbPerBar: expect.closeTo(4, 6) },
    });
    const unknown = measureHairpins(levelled(rising(1), wedge))[0]!;
    expect([code(unknown.registerAdjustedRiseDb), unknown.course]).toEqual(['registers-unknown', undefined]);
  });

  it('needs three notes', () => {
    const only = (count: number) =>
      measureHairpins(
        levelled(
          rising(1).map((v, i) => (i < count ? v : NaN)),
          wedge,
        ),
      )[0]!.riseDb;
    expect([code(only(2)), only(3)]).toEqual(['too-few-in-hairpin', expect.closeTo(2, 6)]);
  });

  it('happens evenly, early, or turns back', () => {
    const seconds = Array.from({ length: 10 }, (_, i) => i);
    const course = (levels: readonly number[], direction: 1 | -1 = 1) =>
      hairpinCourse(seconds.slice(0, levels.length), levels, direction);
    // medians of three: 1 to 8; half-way are the four in the middle 4, 5 (those within an eighth of the span of 7): 3.5 of 7
    const even = course(seconds);
    expect(even).toEqual({ halfwayShare: 0.5, peakAt: 1, turnedBackDb: 0, steadiness: 1 });
    expect(
      course(
        seconds.map((v) => -v),
        -1,
      ),
    ).toEqual(even);
    expect(course([0, 0, 0, 6, 6, 6, 6, 6, 6, 6])).toMatchObject({ halfwayShare: 1, turnedBackDb: 0 });
    expect(course([0, 0, 0, 0, 0, 0, 0, 6, 6, 6])).toMatchObject({ halfwayShare: 0, turnedBackDb: 0 });
    const turned = course([0, 2, 4, 6, 8, 8, 8, 5, 3, 3])!;
    // medians 2 4 6 8 8 8 5 3: the peak at the fourth of eight, and five back
    expect(turned).toMatchObject({ peakAt: expect.closeTo(3 / 7, 9), turnedBackDb: 5 });
    // of 45 pairs 25 rise, 16 fall and 4 are equal
    expect(turned.steadiness).toBeCloseTo(9 / 45, 9);
  });

  it('says nothing of fewer than eight notes or less than 3 dB', () => {
    const even = (count: number, step: number) =>
      hairpinCourse(
        [...Array(count).keys()],
        [...Array(count).keys()].map((i) => step * i),
        1,
      );
    expect([even(7, 3), even(8, 3)]).toEqual([null, expect.objectContaining({ halfwayShare: 0.5 })]);
    // medians of eight notes span five steps
    expect([even(8, 0.59), even(8, 0.61)]).toEqual([
      null,
      expect.objectContaining({ halfwayShare: expect.closeTo(0.5, 6) }),
    ]);
  });

  it('is steady by Kendall’s tau', () => {
    const seconds = [...Array(8).keys()];
    // one neighbouring pair of 28 the wrong way round: (27 − 1) ÷ 28
    expect(hairpinCourse(seconds, [0, 1, 2, 4, 3, 5, 6, 7], 1)!.steadiness).toBeCloseTo(26 / 28, 9);
  });
});

describe('what a note does by itself', () => {
  it('is told from the plan: its pitch and its length', () => {
    // p and f in turn every eight notes, ten apart; the two pitches three decibels apart, in both
    const levels = Array.from(
      { length: 32 },
      (_, i) => (Math.floor(i / 8) % 2 === 0 ? -30 : -20) + (i % 2 === 0 ? 1.5 : -1.5),
    );
    const part = smallPart(
      levels.map((_, i) => ({ midi: i % 2 === 0 ? 60 : 72, quarters: 1 })),
      { dynamics: [0, 1, 2, 3].map((k) => dynamic(k % 2 === 0 ? 'p' : 'f', 8 * k, 8 * k, 8 * k + 7)) },
    );
    const context = levelled(levels);
    const notes = context.alignment.notes.map((n) => ({ ...n, playedMidi: n.index % 2 === 0 ? 60 : 72 }));
    const own = fitOwnLoudness({ ...context, part, alignment: { ...context.alignment, notes } })!;
    expect(own.of(0)).toBeCloseTo(1.5, 1);
    expect(own.of(1)).toBeCloseTo(-1.5, 1);
    expect(own.of(9) - own.of(8)).toBeCloseTo(-3, 1);
  });

  it('is told from the plan where high notes are mostly loud', () => {
    const isHigh = (i: number) => (Math.floor(i / 8) % 2 === 0 ? i % 4 === 0 : i % 4 !== 0);
    const isLoud = (i: number) => Math.floor(i / 8) % 2 === 1;
    const levels = Array.from({ length: 32 }, (_, i) => (isLoud(i) ? -20 : -30) + (isHigh(i) ? -2 : 2));
    const marks = { dynamics: [0, 1, 2, 3].map((k) => dynamic(k % 2 === 0 ? 'p' : 'f', 8 * k, 8 * k, 8 * k + 7)) };
    const context = levelled(levels, marks);
    const notes = context.alignment.notes.map((n) => ({ ...n, playedMidi: isHigh(n.index) ? 72 : 60 }));
    const own = fitOwnLoudness({ ...context, alignment: { ...context.alignment, notes } })!;
    expect(own.of(1) - own.of(0)).toBeCloseTo(4, 1);
  });

  it('is not known of fewer than sixteen notes, and nought of a note that was not heard', () => {
    const marks = (count: number) => ({ dynamics: [dynamic('p', 0, 0, count - 1)] });
    const levels = (count: number) => Array.from({ length: count }, () => -30);
    expect(fitOwnLoudness(levelled(levels(15), marks(15)))).toBeNull();
    expect(fitOwnLoudness(levelled(levels(16), marks(16)))).not.toBeNull();
    // a note whose level is not known does not count, nor does a grace note
    const one = levelled([...levels(15), NaN], marks(16));
    expect(fitOwnLoudness(one)).toBeNull();
    const seventeen = levelled([...levels(16), NaN], marks(17));
    expect(fitOwnLoudness(seventeen)!.of(0)).toBeCloseTo(0, 9);
    const { part } = levelled(levels(16), marks(16));
    const graced = { ...part, notes: part.notes.map((n) => (n.index === 5 ? { ...n, grace: true } : n)) };
    expect(fitOwnLoudness({ ...levelled(levels(16), marks(16)), part: graced })).toBeNull();
    const context = levelled(levels(20), marks(20));
    const notes = context.alignment.notes.map((n) =>
      n.index === 3 ? { index: 3, status: 'left-out', confidence: 0 } : n,
    );
    const own = fitOwnLoudness({ ...context, alignment: { ...context.alignment, notes } } as LevelContext)!;
    expect(own.of(3)).toBe(0);
    expect(fitOwnLoudness(levelled(levels(20)))).toBeNull();
  });

  it('tells lengths apart by steps of one and a half', () => {
    // half of the notes 0.4 s, half 0.1 s: two decibels softer
    const levels = Array.from({ length: 32 }, (_, i) => -30 + (i % 2 === 0 ? 1 : -1));
    const context = levelled(levels, { dynamics: [dynamic('p', 0, 0, 31)] });
    const notes = context.alignment.notes.map((n) => ({
      ...n,
      playedMidi: 60,
      offsetSeconds: n.onsetSeconds! + (n.index % 2 === 0 ? 0.4 : 0.1),
    }));
    const own = fitOwnLoudness({ ...context, alignment: { ...context.alignment, notes } })!;
    expect(own.of(0) - own.of(1)).toBeGreaterThan(1.5);
    const alike = context.alignment.notes.map((n) => ({
      ...n,
      playedMidi: 60,
      offsetSeconds: n.onsetSeconds! + (n.index % 2 === 0 ? 0.4 : 0.34),
    }));
    const same = fitOwnLoudness({ ...context, alignment: { ...context.alignment, notes: alike } })!;
    expect(same.of(0) - same.of(1)).toBeCloseTo(0, 6);
  });
});

describe('how one note goes over into the next', () => {
  const part = smallPart(Array.from({ length: 8 }, (_, i) => ({ midi: 60 + i, quarters: 1 })));
  const notes = (offset: number, onset: number) =>
    part.notes.map(({ index }) =>
      index === 0
        ? at(1, offset, 0)
        : index === 1
          ? at(onset, onset + 0.9, 1)
          : at(onset + index - 1, onset + index - 0.1, index),
    );
  const over = (features: Features, offset = 1.9, onset = 2) =>
    measureTransitions({
      part,
      features,
      alignment: { notes: notes(offset, onset), added: [], restarts: [] },
    } as unknown as MeasureContext)[0]!;

  it('is the gap, the share that sounds, and how far the level dips', () => {
    const features = sounding(12, [1, 1.9, -20], [1.9, 2, -50], [2, 12, -26]);
    expect(over(features)).toMatchObject({
      ...{
        index: 0,
        toIndex: 1,
        betweenOnsetsSeconds: 1,
        gapSeconds: expect.closeTo(0.1, 9),
        soundedShare: expect.closeTo(0.9, 9),
      },
      // below the softer of the two sides
      dipDb: expect.closeTo(24, 2),
    });
    expect(over(sounding(12, [1, 12, -20])).dipDb).toBeCloseTo(0, 6);
    expect(over(features, 2.1)).toMatchObject({ gapSeconds: 0, soundedShare: 1 });
  });

  it('is compared with what is 0.12 s before and after, 20 ms beside', () => {
    // loud only where it does not count: further away than 0.12 s and 20 ms
    const far = sounding(12, [1, 1.75, -10], [1.75, 1.9, -30], [1.9, 2, -50], [2, 2.15, -30], [2.15, 12, -10]);
    expect(over(far).dipDb).toBeCloseTo(20, 2);
    const near = sounding(12, [1, 1.78, -10], [1.78, 1.9, -30], [1.9, 2, -50], [2, 2.12, -30], [2.12, 12, -10]);
    expect(over(near).dipDb).toBeCloseTo(40, 1);
  });
});

describe('what stands where a note was left out', () => {
  const part = smallPart(Array.from({ length: 20 }, (_, i) => ({ midi: 60 + (i % 12), quarters: 1 })));
  const missing = (features: Features, change: Partial<AlignedNote> = {}, shift = 0) => {
    const notes = part.notes.map(({ index }) => {
      if (index === 10) return { index, status: 'left-out', confidence: 0 };
      const onset = index + (index > 10 ? shift : 0);
      return { ...at(onset, onset + 0.9, index), ...(index === 9 ? change : {}) };
    });
    return measureEmptyPlaces({
      part,
      features,
      alignment: { notes, added: [], restarts: [] },
    } as unknown as MeasureContext)[0]!;
  };

  it('is silence, or sound, for so long', () => {
    // note 9 ends at 9.9 s, note 11 begins at 11 s; the place is looked at from its middle, 10.435 s, to 10.97 s
    const silent = missing(sounding(22, [0, 9.9, -20], [9.9, 11, -60], [11, 22, -20]));
    expect(silent).toEqual({
      ...{ index: 10, silentSeconds: expect.closeTo(1.1, 9), writtenSeconds: expect.closeTo(1, 9) },
      ...{ closedUpShare: expect.closeTo(0, 9), fallDb: expect.closeTo(40, 2) },
    });
    expect(missing(sounding(22, [0, 22, -20])).fallDb).toBe(0);
    expect(missing(sounding(22, [0, 10.4, -20], [10.4, 11, -60], [11, 22, -20])).fallDb).toBeCloseTo(40, 1);
    expect(missing(sounding(22, [0, 10.6, -20], [10.6, 11, -60], [11, 22, -20])).fallDb).toBeLessThan(10);
  });

  it('is told where four pairs of onsets beside it say how fast the music goes', () => {
    const beside = (before: number, behind: number) => {
      const few = smallPart(Array.from({ length: before + behind + 1 }, (_, i) => ({ midi: 60 + i, quarters: 1 })));
      const notes = few.notes.map(({ index }) =>
        index === before ? { index, status: 'left-out', confidence: 0 } : at(index, index + 0.9, index),
      );
      const context = { part: few, features: sounding(20), alignment: { notes, added: [], restarts: [] } };
      return measureEmptyPlaces(context as unknown as MeasureContext).length;
    };
    // three notes have three pairs, two have one
    expect([beside(3, 1), beside(3, 2), beside(1, 3), beside(2, 3), beside(4, 1)]).toEqual([0, 1, 0, 1, 1]);
  });

  it('is closed up where the music went on over it', () => {
    // the note behind it comes a quarter early: a half of the two quarters between is gone
    expect(missing(sounding(22), {}, -1).closedUpShare).toBeCloseTo(0.5, 9);
    expect(missing(sounding(22), {}, 1).closedUpShare).toBeCloseTo(-0.5, 9);
    expect(missing(sounding(22), { offsetSeconds: 11.2 })).toMatchObject({ silentSeconds: 0, fallDb: 0 });
  });
});

describe('a recording that ends in sound', () => {
  const ends = (features: Features, levels: readonly number[] = [-20]) =>
    endsInSound({ features, notes: levels.map((levelDb, index) => ({ index, levelDb })) } as unknown as NoteContext);

  it('is at its full level to the last', () => {
    expect(ends(sounding(2, [1, 2, -20]))).toBe(true);
    expect(ends(sounding(2, [1, 1.96, -20], [1.96, 2, -25.9]))).toBe(true);
    expect(ends(sounding(2, [1, 1.96, -20], [1.96, 2, -26.1]))).toBe(false);
    expect(ends(sounding(2, [1, 1.9, -20]))).toBe(false);
  });

  it('is compared with the half second before, in pieces of 40 ms', () => {
    // twelve pieces: back to 1.48 s
    expect(ends(sounding(2, [1, 1.47, -10], [1.47, 2, -20]))).toBe(true);
    expect(ends(sounding(2, [1, 1.53, -10], [1.53, 2, -20]))).toBe(false);
  });

  it('is 15 dB over the floor and no more than 20 dB under the notes', () => {
    expect([ends(sounding(2, [1, 2, -64.9]), [-60]), ends(sounding(2, [1, 2, -65.1]), [-60])]).toEqual([true, false]);
    expect([ends(sounding(2, [1, 2, -39.9])), ends(sounding(2, [1, 2, -40.1]))]).toEqual([true, false]);
    expect(ends(sounding(2, [1, 2, -20]), [])).toBe(false);
  });

  it('may have up to a tenth of a second of digital silence behind it, as a coding leaves', () => {
    const padded = (seconds: number) => {
      const features = sounding(2, [1, 2, -20]);
      features.power.fill(0, Math.round((2 - seconds) / HOP));
      return ends(features);
    };
    expect([padded(0.05), padded(0.1), padded(0.104)]).toEqual([true, true, false]);
  });
});

describe('how long a room rings', () => {
  const part = smallPart(Array.from({ length: 3 }, (_, i) => ({ midi: 60 + i, quarters: 1 })));
  /** Three notes of a second with two seconds between them, each followed by a fall of 60 dB in so many seconds. */
  const rings = (seconds: readonly number[], { floorDb = -90, next = 3 } = {}) => {
    const features = sounding(10);
    for (let f = 0; f < features.power.length; f++) {
      const t = f * HOP;
      const k = Math.min(2, Math.floor(t / next));
      const since = t - next * k - 1;
      const db = since < 0 ? -20 : -20 - (60 * since) / seconds[k]!;
      features.power[f] = 10 ** (Math.max(db, floorDb) / 10);
    }
    const notes = [0, 1, 2].map((i) => at(next * i, next * i + 1, i));
    return measureReverberation({
      part,
      features: { ...features, noiseFloorDb: floorDb },
      alignment: { notes, added: [] },
    } as unknown as MeasureContext);
  };

  it('is read from the line of the decay', () => {
    for (const seconds of [0.5, 1, 2]) expect(rings([seconds, seconds, seconds])).toBeCloseTo(seconds, 1);
  });

  it('is that of the quicker decays: a player may only make them longer', () => {
    // a quarter of the way from the first to the second of three in order: half-way between the two
    expect(rings([1, 1.2, 3])).toBeCloseTo(1.1, 1);
  });

  it('needs two silences of a quarter of a second, and 5 dB that can be seen', () => {
    expect(code(rings([1, 1, 1], { next: 1.24 }))).toBe('too-few-silences');
    expect(rings([1, 1, 1], { next: 1.27 })).toBeCloseTo(1, 1);
    // 20 dB a second: of 4.6 dB above the noise nothing is read, of 5.8 dB it is; 60 dB a second: a line of 0.08 s is too short
    expect(code(rings([3, 3, 3], { floorDb: -37.6 }))).toBe('decay-hidden');
    expect(rings([3, 3, 3], { floorDb: -38.8 })).toBeCloseTo(3, 0);
    expect(code(rings([1, 1, 1], { floorDb: -38.2 }))).toBe('decay-hidden');
    expect(rings([1, 1, 1], { floorDb: -40 })).toBeCloseTo(1, 1);
    expect(code(rings([1, 1, 1], { floorDb: -36 }))).toBe('decay-hidden');
    // noise 8 dB below what is read: from 5 dB below the note down to −45 + 8, over 0.2 s
    expect(rings([1, 1, 1], { floorDb: -50 })).toBeCloseTo(1, 1);
  });
});
