import { describe, expect, it } from 'vitest';
import { notMeasured } from '../../src/base/index.js';
import type { NoteContext } from '../../src/measure/context/context.js';
import { ceilingShare } from '../../src/measure/gain/ceiling-share.js';
import { fitHuberModel } from '../../src/measure/gain/fit-huber-model.js';
import { floorInPauses } from '../../src/measure/gain/floor-in-pauses.js';
import { followPlan } from '../../src/measure/gain/follow-plan.js';
import { planCourse } from '../../src/measure/gain/plan-course.js';
import { correlation, measureSettling } from '../../src/measure/gain/settling.js';
import { writtenPlan } from '../../src/measure/gain/written-plan.js';
import { crescendo, dynamic, smallPart } from '../demo/small-part.js';

/**
 * Each sign of an automatic gain on recordings made by hand: power frame by frame, notes where they are put. Expected values are
 * worked out on paper.
 *
 * Source: definitions named beside the functions; correlation: Pearson's coefficient.
 */
const HOP = 0.002;

interface Sound {
  readonly onset: number;
  readonly offset: number;
  readonly db: number;
  readonly peak?: number;
}

/** Notes at a level each, over a floor that may differ from place to place. */
function recorded(
  sounds: readonly Sound[],
  { floorDb = () => -90, seconds }: { floorDb?: (t: number) => number; seconds?: number } = {},
): NoteContext {
  const durationSeconds = seconds ?? Math.max(...sounds.map(({ offset }) => offset)) + 1;
  const frames = Math.round(durationSeconds / HOP);
  const power = Float32Array.from({ length: frames }, (_, f) => 10 ** (floorDb(f * HOP) / 10));
  const peak = new Float32Array(frames);
  for (const { onset, offset, db, peak: height = 0.5 } of sounds) {
    power.fill(10 ** (db / 10), Math.round(onset / HOP), Math.round(offset / HOP));
    peak.fill(height, Math.round(onset / HOP), Math.round(offset / HOP));
  }
  const part = smallPart(sounds.map((_, i) => ({ midi: 60 + (i % 12), quarters: 1 })));
  const notes = sounds.map(({ onset, offset }, index) => {
    const midi = 60 + (index % 12);
    return { index, status: 'as-written', confidence: 1, playedMidi: midi, onsetSeconds: onset, offsetSeconds: offset };
  });
  return {
    part,
    features: { power, peak, levelHopSeconds: HOP, durationSeconds },
    alignment: { notes },
    notes: sounds.map(({ db }, index) => ({ index, cents: 0, centsFromOwnTuning: 0, levelDb: db })),
  } as unknown as NoteContext;
}

const seconds = (count: number, of: (i: number) => Partial<Sound> = () => ({})): Sound[] =>
  Array.from({ length: count }, (_, i) => ({ onset: 1 + i, offset: 1.9 + i, db: -20, ...of(i) }));

describe('notes under one ceiling', () => {
  it('are those whose peaks lie within 0.6 dB of the highest', () => {
    // 0.6 dB below 0.8 is 0.7466
    const share = (height: number) => ceilingShare(recorded(seconds(12, (i) => ({ peak: i < 3 ? 0.8 : height }))));
    expect([share(0.745), share(0.748)]).toEqual([0.25, 1]);
  });

  it('are none of fewer than twelve', () => {
    expect([ceilingShare(recorded(seconds(11))), ceilingShare(recorded(seconds(12)))]).toEqual([0, 1]);
  });

  it('are found by the loudest moment within each note, notes that were not heard left out', () => {
    const context = recorded(seconds(13, (i) => ({ peak: i === 12 ? 0.8 : 0.4 })));
    expect(ceilingShare(context)).toBeCloseTo(1 / 13, 9);
    // one frame in the middle of the second note, and one between the second and the third
    context.features.peak[Math.round(2.4 / HOP)] = 0.8;
    context.features.peak[Math.round(2.95 / HOP)] = 5;
    expect(ceilingShare(context)).toBeCloseTo(2 / 13, 9);
    const notes = context.alignment.notes.map((n) => (n.index === 0 ? { ...n, onsetSeconds: undefined } : n));
    const without = { ...context, alignment: { ...context.alignment, notes } } as unknown as NoteContext;
    expect(ceilingShare(without)).toBeCloseTo(2 / 12, 9);
  });
});

describe('the floor in pauses', () => {
  /** A note of half a second every second; the floor behind each as it is given. */
  const pauses = (levels: readonly number[], floors: readonly number[]) =>
    recorded(
      levels.map((db, i) => ({ onset: 1 + i, offset: 1.5 + i, db })),
      {
        floorDb: (t) => floors[Math.min(floors.length - 1, Math.max(0, Math.floor(t - 1)))]!,
        seconds: levels.length + 1,
      },
    );

  it('goes against the playing where it rises after soft notes', () => {
    const against = floorInPauses(pauses([-20, -30, -40, -30], [-80, -75, -70, -75]), 0.4, 4);
    expect(against).toMatchObject({ withPlaying: expect.closeTo(-1, 4), moveDb: expect.closeTo(10, 1) });
    const along = floorInPauses(pauses([-20, -30, -40, -30], [-70, -75, -80, -75]), 0.4, 4);
    expect(along).toMatchObject({ withPlaying: expect.closeTo(1, 4), moveDb: expect.closeTo(10, 1) });
  });

  it('needs so many pauses, of so many seconds', () => {
    const four = pauses([-20, -30, -40, -30], [-80, -75, -70, -75]);
    expect(floorInPauses(four, 0.4, 5)).toEqual(notMeasured('too-few-pauses'));
    expect(floorInPauses(four, 0.6, 1)).toEqual(notMeasured('too-few-pauses'));
    expect(floorInPauses(four, 0.49, 4)).toHaveProperty('moveDb');
  });

  it('is the quietest 40 ms between the release and the next attack', () => {
    const context = pauses([-20, -30, -40, -30], [-60, -60, -60, -60]);
    const hush = (from: number, to: number) => {
      const power = Float32Array.from(context.features.power);
      power.fill(1e-8, Math.round(from / HOP), Math.round(to / HOP));
      const quiet = { ...context, features: { ...context.features, power } };
      return (floorInPauses(quiet, 0.4, 4) as { moveDb: number }).moveDb;
    };
    // −80 dB over 40 ms of the second pause, which lies between 2.55 s and 2.98 s
    expect(hush(2.7, 2.74)).toBeCloseTo(20, 1);
    // over 20 ms it is half of it: 10 · lg(2) above half of the −60
    expect(hush(2.7, 2.72)).toBeCloseTo(3, 1);
    expect(hush(2.55, 2.59)).toBeCloseTo(20, 1);
    expect(hush(2.51, 2.53)).toBeCloseTo(0, 3);
    expect(hush(2.94, 2.98)).toBeCloseTo(20, 1);
    expect(hush(2.98, 3)).toBeCloseTo(0, 3);
  });

  it('leaves out notes whose level was not measured', () => {
    const context = pauses([-20, -30, -40, -30, -20], [-80, -75, -70, -75, -20]);
    const notes = context.notes.map((n) => (n.index === 4 ? { ...n, levelDb: notMeasured('note-in-noise') } : n));
    expect(floorInPauses({ ...context, notes }, 0.4, 4)).toMatchObject({ moveDb: expect.closeTo(10, 1) });
    expect(floorInPauses({ ...context, notes }, 0.4, 5)).toEqual(notMeasured('too-few-pauses'));
  });
});

describe('a held note after a jump', () => {
  /** Notes of 0.8 s, one a second, loud and soft in turn; of each jump a share is taken back after half of the note. */
  function jumping(count: number, backShare: number, change: (i: number) => Partial<Sound> = () => ({})): NoteContext {
    const sounds = seconds(count, (i) => ({
      offset: 1.8 + i,
      db: i % 2 === 0 ? -20 : -20 - 2 * (i % 3) - 4,
      ...change(i),
    }));
    const context = recorded(sounds);
    sounds.forEach(({ offset, db }, i) => {
      const before = i === 0 ? db : sounds[i - 1]!.db;
      const end = db - backShare * (db - before);
      context.features.power.fill(10 ** (end / 10), Math.round((offset - 0.2) / HOP), Math.round(offset / HOP));
    });
    return context;
  }

  it('comes back by a share of it, or not at all', () => {
    expect(measureSettling(jumping(14, 0))).toEqual({ slope: expect.closeTo(0, 6), correlation: expect.closeTo(0, 6) });
    // what is taken back is a share of the jump between the beginnings; the jump is counted from the end of the note before
    const { slope, correlation: alike } = measureSettling(jumping(14, 0.4)) as { slope: number; correlation: number };
    expect(slope).toBeLessThan(-0.2);
    expect(alike).toBeLessThan(-0.9);
    expect((measureSettling(jumping(14, -0.4)) as { slope: number }).slope).toBeGreaterThan(0.2);
  });

  it('is told by twelve notes and more that follow another', () => {
    expect(measureSettling(jumping(12, 0.4))).toEqual(notMeasured('too-few-long-notes'));
    expect(measureSettling(jumping(13, 0.4))).toHaveProperty('slope');
  });

  it('is as long as 0.35 s, and no more than half a second after the other', () => {
    const last = (onset: number, offset: number) =>
      measureSettling(jumping(13, 0.4, (i) => (i === 12 ? { onset, offset } : {})));
    expect(last(13, 13.34)).toEqual(notMeasured('too-few-long-notes'));
    expect(last(13, 13.36)).toHaveProperty('slope');
    // the note before it ends at 12.8 s
    expect(last(13.31, 14)).toEqual(notMeasured('too-few-long-notes'));
    expect(last(13.29, 14)).toHaveProperty('slope');
  });

  it('is read where it begins, where it ends, and at the end of the one before', () => {
    const base = jumping(14, 0);
    const slopeWith = (from: number, to: number, db: number) => {
      const power = Float32Array.from(base.features.power);
      // the same stretch of every second note from the third on
      for (let i = 2; i < 14; i += 2) {
        const onset = 1 + i;
        power.fill(10 ** (db / 10), Math.round((onset + from) / HOP), Math.round((onset + to) / HOP));
      }
      const { slope } = measureSettling({ ...base, features: { ...base.features, power } }) as { slope: number };
      return Math.abs(slope) > 1e-3;
    };
    // loud notes begin at n.0 and end at n.8: beginning 0.04 to 0.12, end 0.64 to 0.74, and as the one before 0.65 to 0.77
    expect([slopeWith(0, 0.038, 0), slopeWith(0.042, 0.06, 0)]).toEqual([false, true]);
    expect([slopeWith(0.1, 0.118, 0), slopeWith(0.122, 0.638, 0)]).toEqual([true, false]);
    expect([slopeWith(0.642, 0.66, 0), slopeWith(0.72, 0.738, 0)]).toEqual([true, true]);
    expect(slopeWith(0.772, 0.8, 0)).toBe(false);
  });
});

describe('a correlation', () => {
  it('is that of Pearson', () => {
    expect(correlation([1, 2, 3], [2, 4, 6])).toBeCloseTo(1, 12);
    expect(correlation([1, 2, 3], [6, 4, 2])).toBeCloseTo(-1, 12);
    expect(correlation([0, 0.1, 0.2], [0, 0.1, 0.2])).toBeCloseTo(1, 9);
    // deviations −1, 0, 1 and −1, 1, 0: 1 ÷ 2
    expect(correlation([1, 2, 3], [1, 3, 2])).toBeCloseTo(0.5, 12);
    // deviations −2, −1, 0, 1, 2 and −1, 0, 2, −1, 0: 2 + 0 + 0 − 1 + 0 = 1, √(10 · 6)
    expect(correlation([1, 2, 3, 4, 5], [1, 2, 4, 1, 2])).toBeCloseTo(1 / Math.sqrt(60), 12);
  });

  it('is 0 where one does not vary', () => {
    expect([correlation([1, 1, 1], [1, 2, 3]), correlation([1, 2, 3], [5, 5, 5])]).toEqual([0, 0]);
  });
});

describe('the plan as it is written', () => {
  const part = (marks: readonly (readonly [string, number])[], hairpins: Parameters<typeof crescendo>[] = []) =>
    smallPart(
      Array.from({ length: 12 }, () => ({ midi: 60, quarters: 1 })),
      {
        dynamics: marks.map(([mark, index]) => dynamic(mark, index, index, index)),
        hairpins: hairpins.map((each) => crescendo(...each)),
      },
    );

  it('is four decibels a mark, from soft to loud', () => {
    const plan = writtenPlan(
      part([
        ['p', 2],
        ['mf', 5],
        ['ff', 9],
      ]),
    )!;
    expect([...plan]).toEqual([NaN, NaN, 12, 12, 12, 20, 20, 20, 20, 28, 28, 28]);
  });

  it('is none with one mark alone, or with marks that have no place in the order', () => {
    expect(
      writtenPlan(
        part([
          ['p', 0],
          ['p', 4],
        ]),
      ),
    ).toBeNull();
    expect(
      writtenPlan(
        part([
          ['p', 0],
          ['sfz', 4],
        ]),
      ),
    ).toBeNull();
    expect(
      writtenPlan(
        part([
          ['p', 0],
          ['f', 4],
        ]),
      ),
    ).not.toBeNull();
    expect(writtenPlan(part([]))).toBeNull();
  });

  it('goes evenly along a hairpin to the mark at its end, or up to two notes behind it', () => {
    const rising = (toIndex: number, at: number) =>
      [
        ...writtenPlan(
          part(
            [
              ['p', 0],
              ['f', at],
            ],
            [[2, toIndex, 2, toIndex]],
          ),
        )!,
      ].slice(0, 10);
    // from 12 at note 2 to 24 at note 6: three decibels a note
    expect(rising(6, 7)).toEqual([12, 12, 12, 15, 18, 21, 24, 24, 24, 24]);
    expect(rising(6, 8)).toEqual([12, 12, 12, 15, 18, 21, 24, 12, 24, 24]);
    expect(rising(6, 9)).toEqual([12, 12, 12, 12, 12, 12, 12, 12, 12, 24]);
    expect(rising(2, 3)).toEqual([12, 12, 12, 24, 24, 24, 24, 24, 24, 24]);
  });

  it('stays where it is along a hairpin to nowhere', () => {
    expect(
      [
        ...writtenPlan(
          part(
            [
              ['p', 0],
              ['f', 2],
            ],
            [[4, 8, 4, 8]],
          ),
        )!,
      ].slice(4, 9),
    ).toEqual([24, 24, 24, 24, 24]);
  });
});

describe('the course of a gain', () => {
  const onsets = Float64Array.from({ length: 12 }, (_, i) => i);
  const step = onsets.map((t) => (t < 6 ? 0 : 10));

  it('is the plan itself where that does not change, and for a gain far quicker than the notes', () => {
    for (const looksAhead of [false, true]) {
      for (const value of planCourse(
        onsets,
        onsets.map(() => 7),
        { looksAhead, seconds: 2 },
      ))
        expect(value).toBeCloseTo(7, 9);
      planCourse(onsets, step, { looksAhead, seconds: 0.01 }).forEach((v, i) => {
        expect(v).toBeCloseTo(step[i]!, 6);
      });
    }
  });

  it('does not know what is to come unless it looks ahead', () => {
    expect(planCourse(onsets, step, { looksAhead: false, seconds: 1 })[5]).toBe(0);
    expect(planCourse(onsets, step, { looksAhead: true, seconds: 1 })[5]).toBeGreaterThan(2);
  });

  // Read half a second after the onset, 1 − e^(−0.5) of a step has come; of a note that begins at 0 s only what is known counts,
  // 1 − e^(−3.5) of everything.
  it('is read half a second into a long note, and in the middle of a short one', () => {
    const come = (since: number, at: number) => (10 * (1 - Math.exp(-since))) / (1 - Math.exp(-at));
    const long = planCourse(Float64Array.of(0, 3, 6), Float64Array.of(0, 10, 10), { looksAhead: false, seconds: 1 });
    expect(long[1]).toBeCloseTo(come(0.5, 3.5), 9);
    const short = planCourse(Float64Array.of(0, 3, 3.4), Float64Array.of(0, 10, 10), { looksAhead: false, seconds: 1 });
    expect(short[1]).toBeCloseTo(come(0.2, 3.2), 9);
    expect(short[2]).toBeCloseTo(come(0.5, 3.9) + (come(0.9, 3.9) - come(0.5, 3.9)), 9);
  });

  // From the middle of note 12, six time constants back lead into note 6; three there and back, for one that looks ahead, into
  // notes 9 and 15.
  it('looks no further than it has to', () => {
    const many = Float64Array.from({ length: 24 }, (_, i) => i);
    const reached = (looksAhead: boolean) =>
      [...many.keys()].filter((k) => {
        const plan = many.map((_, i) => (i === k ? 1e9 : 0));
        return planCourse(many, plan, { looksAhead, seconds: 1 })[12] !== 0;
      });
    expect(reached(false)).toEqual([6, 7, 8, 9, 10, 11, 12]);
    expect(reached(true)).toEqual([9, 10, 11, 12, 13, 14, 15]);
  });
});

describe('how levels follow the marks', () => {
  /** Marks p and f in turn every five notes; all on one pitch and of one length. */
  const marked = (count: number) =>
    smallPart(
      Array.from({ length: count }, () => ({ midi: 60, quarters: 1 })),
      {
        dynamics: Array.from({ length: Math.ceil(count / 5) }, (_, k) =>
          dynamic(k % 2 === 0 ? 'p' : 'f', 5 * k, 5 * k, 5 * k + 4),
        ),
      },
    );
  const follow = (count: number, levelOf: (i: number) => number, mostFollowed = 9) => {
    const context = recorded(seconds(count, (i) => ({ db: levelOf(i) })));
    const alignment = { ...context.alignment, notes: context.alignment.notes.map((n) => ({ ...n, playedMidi: 60 })) };
    return followPlan({ ...context, alignment, part: marked(count) } as NoteContext, mostFollowed);
  };
  const loud = (i: number) => Math.floor(i / 5) % 2 === 1;
  /** Evenly spread scatter that repeats nowhere, so that the fit has something to weigh. */
  const scatter = (i: number) => 0.2 * (((i * 0.618034) % 1) - 0.5);

  it('is one decibel for each that is written where p and f lie twelve apart', () => {
    const { followed, undone } = follow(60, (i) => (loud(i) ? -18 : -30) + scatter(i))!;
    expect(followed).toBeCloseTo(1, 1);
    expect(undone).toBeLessThan(0.1);
    expect(follow(60, (i) => (loud(i) ? -24 : -30) + scatter(i))!.followed).toBeCloseTo(0.5, 1);
  });

  it('is surely undone where a gain takes the change back', () => {
    const taken = follow(60, (i) => -24 + (loud(i) ? 6 : -6) * Math.exp(-((i % 5) + 0.5) / 1.2) + scatter(i))!;
    expect(taken.undone).toBeGreaterThan(0.5);
    expect(taken.sureness).toBeGreaterThan(5);
  });

  it('is not looked into further where more is followed than is asked about', () => {
    const undone = (mostFollowed: number) =>
      follow(60, (i) => (loud(i) ? -18 : -30) - (loud(i) ? 1 : -1) * (i % 5) + scatter(i), mostFollowed)!.sureness;
    expect(undone(0.3)).toBe(0);
    expect(undone(9)).toBeGreaterThan(5);
  });

  it('is told by thirty notes and more, and of a part with two marks', () => {
    expect(follow(29, (i) => (loud(i) ? -18 : -30))).toBeNull();
    expect(follow(30, (i) => (loud(i) ? -18 : -30))).not.toBeNull();
    const thirty = recorded(seconds(30, (i) => ({ db: loud(i) ? -18 : -30 })));
    const without = (change: (context: NoteContext) => Partial<NoteContext>) => {
      const marks = { ...thirty, part: marked(30) } as NoteContext;
      return followPlan({ ...marks, ...change(marks) } as NoteContext, 9);
    };
    const unheard =
      (gone: object) =>
      ({ alignment }: NoteContext) => ({
        alignment: { ...alignment, notes: alignment.notes.map((n) => (n.index === 7 ? { ...n, ...gone } : n)) },
      });
    expect(without(() => ({}))).not.toBeNull();
    expect(without(unheard({ onsetSeconds: undefined }))).toBeNull();
    expect(without(unheard({ offsetSeconds: undefined }))).toBeNull();
    const soft = notMeasured('note-in-noise');
    expect(
      without(({ notes }) => ({ notes: notes.map((n) => (n.index === 7 ? { ...n, levelDb: soft } : n)) })),
    ).toBeNull();
    const grace = ({ part }: NoteContext) => ({
      part: { ...part, notes: part.notes.map((n) => (n.index === 7 ? { ...n, grace: true } : n)) },
    });
    expect(without(grace)).toBeNull();
    const context = recorded(seconds(40));
    expect(followPlan(context, 9)).toBeNull();
  });
});

describe('a model', () => {
  // Normal equations on paper: y = 1 + 2x at 0, 1, 2, 3 with every second number moved by ±1 leaves the line where it is by symmetry.
  it('has errors like those of least squares where nothing is an outlier', () => {
    const x = Float64Array.from({ length: 40 }, (_, i) => i);
    const noise = x.map((_, i) => (i % 4 === 0 || i % 4 === 3 ? 1 : -1));
    const fitted = fitHuberModel(
      [x.map(() => 1), x],
      x.map((v, i) => 1 + 2 * v + noise[i]!),
    )!;
    expect(fitted.coefficients[0]).toBeCloseTo(1, 0);
    expect(fitted.coefficients[1]).toBeCloseTo(2, 2);
    // spread 1.4826 for a scatter of one; Σ(x − 19.5)² = 5330: 1.4826 / √5330 = 0.0203, a little more where all weigh less
    expect(fitted.errors[1]).toBeGreaterThan(0.019);
    expect(fitted.errors[1]).toBeLessThan(0.026);
  });

  it('needs columns in no special order', () => {
    const x = Float64Array.from({ length: 10 }, (_, i) => (i === 0 ? 0 : i));
    const first = Float64Array.from({ length: 10 }, (_, i) => (i === 9 ? 1 : 0));
    const fitted = fitHuberModel(
      [first, x],
      x.map((v, i) => 3 * v + 5 * first[i]!),
    )!;
    expect(fitted.coefficients[0]).toBeCloseTo(5, 6);
    expect(fitted.coefficients[1]).toBeCloseTo(3, 6);
  });
});
