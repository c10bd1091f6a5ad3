import { describe, expect, it } from 'vitest';
import { type MaybeNumber, notMeasured } from '../../src/base/index.js';
import type { TakeResult } from '../../src/result/index.js';
import type { MeasureId } from '../../src/standards/index.js';
import { figuresOf } from '../../src/weeks/figures-of.js';
import { keepResult } from '../../src/weeks/keep-result.js';
import { loudnessRank } from '../../src/weeks/loudness-rank.js';
import { MEASURES } from '../../src/weeks/measures.js';
import { workingDeviation } from '../../src/weeks/noise.js';
import { inBar, notJudged, takeOfWeeks } from '../helpers/weeks.js';

/**
 * The numbers that are followed over weeks, from documents written by hand.
 *
 * Source: definition of each, beside `figuresOf`; limits in absolute numbers as the standards have them.
 */
function figure(id: MeasureId, changed: Partial<TakeResult>): MaybeNumber {
  return figuresOf(takeOfWeeks({ changed }).result)[id];
}
const reason = (value: MaybeNumber) => (typeof value === 'number' ? value : value.notMeasured.code);
const TOLD = { notMeasured: 'There is no number.', code: 'note-unsteady' } as const;

type Notes = TakeResult['notes'];
const PLAIN = takeOfWeeks().result.notes;
const notes = (count: number, change: (i: number) => Partial<Notes[number]> = () => ({})): Notes =>
  Array.from({ length: count }, (_, i) => {
    const plain = { ...(PLAIN[0] as Notes[number]), index: i, grace: false, status: 'as-written' as const };
    return { ...plain, onset: i, offset: i + 0.5, ...change(i) };
  });

describe('the share of notes as written', () => {
  it('is that of all but grace notes, in percent', () => {
    const changed = {
      notes: notes(9, (i) => (i === 0 ? { grace: true, status: 'left-out' } : i < 3 ? { status: 'other-pitch' } : {})),
    };
    expect(figure('as-written', changed)).toBe(75);
    expect(reason(figure('as-written', { notes: notes(1, () => ({ grace: true })) }))).toBe('no-notes-to-count');
  });
});

describe('rhythm over weeks', () => {
  const group = (...shares: readonly number[]) => {
    return {
      index: 0,
      toIndex: 2,
      bar: '1',
      pass: 1,
      tuplet: true,
      seconds: 1,
      shares: [...shares],
      written: [0.25, 0.25, 0.5],
    };
  };
  const entry = (lateSeconds: number) => {
    return { index: 3, bar: '1', pass: 1, restQuarters: 1, lateSeconds, secondsAQuarter: 0.5 };
  };

  it('is how far the worst note of a group is off, on average, in percent of the group', () => {
    // 0.05 and 0.15: 10 on average
    expect(figure('evenness', { groups: [group(0.3, 0.22, 0.48), group(0.2, 0.15, 0.65)] })).toBeCloseTo(10, 9);
    expect(reason(figure('evenness', { groups: [] }))).toBe('no-groups');
    expect(reason(figure('evenness', { groups: undefined }))).toBe('number-not-kept');
  });

  it('is how many milliseconds entries are off, early or late', () => {
    expect(figure('entries', { entries: [entry(0.03), entry(-0.05), entry(0.1)] })).toBeCloseTo(60, 9);
    expect(reason(figure('entries', { entries: [] }))).toBe('no-entries');
    expect(reason(figure('entries', { entries: undefined }))).toBe('number-not-kept');
  });

  it('is the fermata that is furthest from twice its length, by ratio', () => {
    const fermatas = (...ratios: readonly TakeResult['fermatas'][number]['ratio'][]) =>
      ratios.map((ratio) => ({ index: 5, bar: '2', pass: 1, writtenSeconds: 1, heldSeconds: 2, ratio }));
    // half of twice is as far as twice of twice: 1 lies at 2 ÷ 2, 3.9 below 2 × 2
    expect(figure('fermatas', { fermatas: fermatas(1, 3.9) })).toBe(1);
    expect(figure('fermatas', { fermatas: fermatas(1.1, 3.9) })).toBe(3.9);
    expect(figure('fermatas', { fermatas: fermatas(TOLD, 2.1) })).toBe(2.1);
    expect(reason(figure('fermatas', { fermatas: fermatas(TOLD) }))).toBe('no-fermatas');
  });
});

describe('tempo over weeks', () => {
  const tempo = (markedQuarterBpm: number | null, ...bpm: readonly number[]): Partial<TakeResult> => ({
    tempo: {
      ...{ markedQuarterBpm, playedQuarterBpm: 90 },
      bars: bpm.map((quarterBpm, i) => ({ bar: String(i + 1), pass: 1, startQuarters: 4 * i, quarterBpm })),
    },
  });

  it('is percent of the mark', () => {
    expect(figure('tempo', tempo(120))).toBe(75);
    expect(reason(figure('tempo', tempo(null)))).toBe('no-tempo-mark');
    expect(reason(figure('tempo', { tempo: { notMeasured: 'Too few.', code: 'too-few-bars' } }))).toBe('too-few-bars');
  });

  it('is steady by the robust spread of its bars, in percent of their median, from four bars on', () => {
    // Median 100, absolute deviations 2, 0, 0, 6, 2 with the median 2; 1.4826 × 2 (Rousseeuw & Croux 1993).
    expect(figure('steadiness', tempo(100, 98, 100, 100, 106, 102))).toBeCloseTo(2.9652, 9);
    // 198, 200, 202, 206: median 201, deviations 3, 1, 1, 5 with the median 2
    expect(figure('steadiness', tempo(100, 198, 200, 202, 206))).toBeCloseTo((100 * 1.4826 * 2) / 201, 9);
    expect(reason(figure('steadiness', tempo(100, 98, 100, 106)))).toBe('too-few-bars-to-compare');
    expect(reason(figure('steadiness', { tempo: { notMeasured: 'Too few.', code: 'too-few-bars' } }))).toBe(
      'too-few-bars',
    );
  });
});

describe('dynamics over weeks', () => {
  const contrast = (
    from: string,
    to: string,
    differenceDb: TakeResult['contrasts'][number]['differenceDb'],
    registerAdjustedDb: typeof differenceDb = TOLD,
  ) => ({ from, to, index: 4, bar: '2', pass: 1, differenceDb, registerAdjustedDb });

  it('are the median of the contrasts, positive the way that is written, with the register taken out where that is known', () => {
    const contrasts = [contrast('p', 'f', 9, 7), contrast('f', 'p', -5), contrast('mf', 'mp', 3)];
    // 7, 5 and −3
    expect(figure('contrast', { contrasts })).toBe(5);
    expect(figure('contrast', { contrasts: [contrast('p', 'f', TOLD), contrast('ff', 'pp', -8)] })).toBe(8);
    expect(reason(figure('contrast', { contrasts: [contrast('p', 'sfz', 9), contrast('p', 'f', TOLD)] }))).toBe(
      'no-contrasts',
    );
    expect(reason(figure('contrast', { contrasts: [contrast('f', 'f', 9)] }))).toBe('no-contrasts');
  });

  it('are the median of the hairpins, positive the way that is written', () => {
    type Rise = TakeResult['hairpins'][number]['riseDb'];
    const hairpin = (
      kind: 'crescendo' | 'diminuendo',
      riseDb: Rise,
      registerAdjustedRiseDb: Rise | undefined = TOLD,
    ) => ({
      ...{ kind, index: 4, toIndex: 8, bar: '2', toBar: '3', pass: 1, riseDb, registerAdjustedRiseDb },
      ...{ slopeDbPerBar: riseDb, slopeDbPerSecond: riseDb },
    });
    const hairpins = [hairpin('crescendo', 9, 6), hairpin('diminuendo', -4), hairpin('diminuendo', 2)];
    expect(figure('hairpins', { hairpins })).toBe(4);
    expect(reason(figure('hairpins', { hairpins: [] }))).toBe('no-hairpins');
    expect(reason(figure('hairpins', { hairpins: [hairpin('crescendo', TOLD)] }))).toBe('no-hairpins');
    const older = { ...hairpin('crescendo', 9), registerAdjustedRiseDb: undefined };
    expect(reason(figure('hairpins', { hairpins: [older, hairpin('crescendo', 9)] }))).toBe('number-not-kept');
  });

  it('rank marks from soft to loud', () => {
    const marks = ['pppppp', 'pp', 'p', 'mp', 'mf', 'f', 'ff', 'ffffff'];
    const ranks = marks.map(loudnessRank);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(new Set(ranks).size).toBe(marks.length);
    for (const mark of ['sfz', 'fp', 'pf', 'ppppppp', 'fffffff', '', 'm']) expect(loudnessRank(mark)).toBeNaN();
  });
});

describe('articulation and breath over weeks', () => {
  const pairs = (asked: 'slur' | 'staccato' | 'breath', ...values: readonly number[]) =>
    values.map((v, index) => ({ index, toIndex: index + 1, asked, gapSeconds: v, soundedShare: v }));

  it('are percent of slurs joined up to 28 ms, of dots sounding, of breaths above 0.12 s', () => {
    const transitions = [
      ...pairs('slur', 0, 0.028, 0.029, 0.02),
      ...pairs('staccato', 0.4, 0.5, 0.9),
      ...pairs('breath', 0.12, 0.13, 0.3, 0.1, 0.5),
    ];
    expect(figure('slurs', { transitions })).toBe(75);
    expect(figure('staccato', { transitions })).toBe(50);
    expect(figure('breaths', { transitions })).toBe(60);
  });

  it.each([
    ['slurs', 'no-slurs'],
    ['staccato', 'no-staccato'],
    ['breaths', 'no-breaths'],
  ] as const)('%s: there are none, or they were not kept', (id, code) => {
    expect(reason(figure(id, { transitions: [] }))).toBe(code);
    expect(reason(figure(id, { transitions: undefined }))).toBe('number-not-kept');
  });
});

describe('tuning over weeks', () => {
  const tuned = (count: number, change: (i: number) => Partial<Notes[number]> = () => ({})) =>
    figure('own-tuning', { notes: notes(count, (i) => ({ centsFromOwnTuning: i % 2 === 0 ? i : -i, ...change(i) })) });

  it('is within what nine of ten held notes lie, of ten and more', () => {
    // 0 to 10 cents: the ninth of eleven in order
    expect(tuned(11)).toBe(9);
    expect(reason(tuned(9))).toBe('too-few-held-notes');
    expect(tuned(10)).toBeCloseTo(8.1, 9);
  });

  it('leaves out notes shorter than 0.2 s, not as written, not heard or without a pitch', () => {
    const without = (change: Partial<Notes[number]>) => reason(tuned(10, (i) => (i === 4 ? change : {})));
    expect(without({ onset: 3, offset: 3.2 })).not.toBe('too-few-held-notes');
    for (const change of [
      { onset: 3, offset: 3.19 },
      { status: 'other-pitch' },
      { onset: undefined },
      { offset: undefined },
      { centsFromOwnTuning: undefined },
      { centsFromOwnTuning: TOLD },
    ] as const) {
      expect([change, without(change as Partial<Notes[number]>)]).toEqual([change, 'too-few-held-notes']);
    }
  });

  it('of the whole take is its own number', () => {
    expect(figure('tuning', { tuning: { centsFromA440: -12, a4Hz: 437 } })).toBe(-12);
    expect(reason(figure('tuning', { tuning: { notMeasured: 'Too few.', code: 'too-few-pitches' } }))).toBe(
      'too-few-pitches',
    );
  });
});

describe('stops', () => {
  it('are restarts, skips and waits, each once', () => {
    const restart = { stoppedAtBar: '3', resumedAtBar: '2', stoppedAtIndex: 9, resumedAtIndex: 5, onset: 9 };
    const skip = { fromBar: '3', toBar: '4', fromIndex: 9, toIndex: 12, onset: 9 };
    const findings = [inBar('1', 'watch', 'hesitation'), inBar('2', 'watch', 'hesitation'), inBar('3')];
    const { result } = takeOfWeeks({ findings, changed: { restarts: [restart], skips: [skip, skip] } });
    expect(figuresOf(result).stops).toBe(5);
  });
});

describe('a criterion that was not judged', () => {
  it('gives a reason instead of a number', () => {
    const coded = figure('slurs', notJudged('articulation', 'Your teacher leaves this out.', 'brief-leaves-out'));
    expect(coded).not.toBeTypeOf('number');
    const told = figure('slurs', notJudged('articulation', 'Nothing to judge by.'));
    expect(told).toEqual(notMeasured('told-there', { said: 'Nothing to judge by.', language: 'en' }));
    expect(figure('tuning', { ...notJudged('articulation', 'x'), tuning: { centsFromA440: 3, a4Hz: 441 } })).toBe(3);
  });
});

describe('what is followed', () => {
  // Typed here by hand: what is asked for, and how far one take scatters (see the sources beside the measures).
  const usual = (id: MeasureId) => MEASURES.find((one) => one.id === id)!;

  it.each([
    ['as-written', 100, null, []],
    ['evenness', null, 0, [6.5]],
    ['entries', null, 0, [45]],
    ['fermatas', 1.25, 3, [1.25, 3]],
    ['tempo', 100, 100, [100]],
    ['steadiness', null, 0, [3]],
    ['contrast', 3, null, [3]],
    ['hairpins', 3, null, [3]],
    ['slurs', 100, null, []],
    ['staccato', null, 72, [72]],
    ['breaths', 100, null, []],
    ['own-tuning', null, 0, [25]],
    ['tuning', 0, 0, [0]],
    ['stops', null, 0, []],
  ] as const)('%s is meant to lie from %s to %s', (id, low, high, lines) => {
    expect(usual(id).wanted).toEqual({ low, high });
    expect(usual(id).usual).toEqual(lines);
  });

  it.each([
    ['as-written', 0.8, 1],
    ['evenness', 1, 1.5],
    ['entries', 10.378, 20],
    ['fermatas', 0.03, 0.25],
    ['tempo', 0.3, 1.5],
    ['steadiness', 0.5, 1],
    ['contrast', 0.519, 1],
    ['hairpins', 1.048, 1.2],
    ['slurs', 1, 3],
    ['staccato', 5, 4],
    ['breaths', 3, 10],
    ['own-tuning', 1.038, 3],
    ['tuning', 1.038, 5],
    ['stops', 0.2, 0.7],
  ] as const)('%s is measured within %d and played within %d', (id, measuring, playing) => {
    const { noise } = usual(id);
    expect(noise.measuring).toBeCloseTo(measuring, 3);
    expect(noise.playing).toBe(playing);
    expect(workingDeviation(noise)).toBeCloseTo(Math.sqrt(measuring ** 2 + playing ** 2), 2);
  });

  it('is each measure once', () => {
    expect(new Set(MEASURES.map(({ id }) => id)).size).toBe(17);
    expect(MEASURES).toHaveLength(17);
  });
});

describe('what is kept of a take', () => {
  const kept = (changed: Partial<TakeResult>, findings: TakeResult['findings'] = []) =>
    keepResult(takeOfWeeks({ changed, findings })).result;
  const inBars = (...bars: readonly string[]) => notes(bars.length, (i) => ({ bar: bars[i]! }));
  const skip = (fromIndex: number, toIndex: number) => {
    return { fromBar: '1', toBar: '2', fromIndex, toIndex, onset: 3 };
  };

  it('are its bars in order, and those of which no note was played', () => {
    const bars = inBars('1', '1', '2', '2', '3', '1');
    expect(kept({ notes: bars, skips: [] })).toMatchObject({ bars: ['1', '2', '3'], barsNotPlayed: [], notes: 6 });
    const left = bars.map((n) => (n.index === 2 || n.index === 3 ? { ...n, status: 'left-out' as const } : n));
    expect(kept({ notes: left, skips: [] }).barsNotPlayed).toEqual(['2']);
    expect(kept({ notes: left.map((n) => (n.index === 3 ? bars[3]! : n)), skips: [] }).barsNotPlayed).toEqual([]);
  });

  it('are bars passed over, from the first note to the last with it', () => {
    const bars = inBars('1', '1', '2', '2', '3', '3');
    expect(kept({ notes: bars, skips: [skip(2, 3)] }).barsNotPlayed).toEqual(['2']);
    expect(kept({ notes: bars, skips: [skip(2, 2)] }).barsNotPlayed).toEqual([]);
    expect(kept({ notes: bars, skips: [skip(3, 4)] }).barsNotPlayed).toEqual([]);
    expect(kept({ notes: bars, skips: [skip(0, 1), skip(4, 5)] }).barsNotPlayed).toEqual(['1', '3']);
  });

  it('are troubles as they weigh by themselves, and no praise', () => {
    const led = { ...inBar('2', 'watch'), ownWeight: 'fix' as const };
    const praise = { ...inBar('3', 'well'), kind: 'went-well' as const };
    const { troubles } = kept({}, [inBar('1', 'watch'), led, praise]);
    expect(troubles.map(({ bar, weight }) => [bar, weight])).toEqual([
      ['1', 'watch'],
      ['2', 'fix'],
    ]);
  });

  it('are the criteria that were judged, and numbers only of what was reviewed', () => {
    const { judged, figures } = kept(notJudged('articulation', 'x'));
    expect(judged).not.toContain('articulation');
    expect(judged).toContain('notes');
    expect(figures).not.toBeNull();
    expect(kept({ outcome: 'not-this-score' }).figures).toBeNull();
  });
});
