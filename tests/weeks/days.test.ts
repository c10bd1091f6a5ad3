import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MaybeNumber } from '../../src/base/index.js';
import { notMeasured } from '../../src/base/index.js';
import type { MeasureId } from '../../src/standards/index.js';
import { barStories } from '../../src/weeks/bar-stories.js';
import { dayNumber, isDay, weekOf } from '../../src/weeks/calendar.js';
import { countOnce } from '../../src/weeks/count-once.js';
import { findGaps } from '../../src/weeks/find-gaps.js';
import { foldName, usualSpelling } from '../../src/weeks/fold-name.js';
import { type Deviations, followPlayer } from '../../src/weeks/follow-player.js';
import { keepResult } from '../../src/weeks/keep-result.js';
import { nextGoal } from '../../src/weeks/next-goal.js';
import { sectionOverWeeks } from '../../src/weeks/section-over-weeks.js';
import { sectionShare } from '../../src/weeks/section-share.js';
import { sortEtudes } from '../../src/weeks/sort-etudes.js';
import { storiesThroughout } from '../../src/weeks/stories-throughout.js';
import { storyOf } from '../../src/weeks/story-of.js';
import type { KeptResult, KeptTake, LostTake, PlacedResult, Trouble } from '../../src/weeks/types.js';
import { takeOfWeeks } from '../helpers/weeks.js';

/**
 * Days, weeks and what is told of them, on takes put together by hand.
 *
 * Source: definition; the calendar by ISO 8601.
 */
const BARS = ['1', '2', '3', '4'];
const plain = keepResult(takeOfWeeks()).result;

/** A take as it is kept; its bars are 1 to 4, all of them played and judged. */
function take(change: Partial<KeptTake> & { readonly of?: Partial<KeptTake['take']> } = {}): KeptTake {
  const { of, ...more } = change;
  return {
    ...plain,
    bars: BARS,
    barsNotPlayed: [],
    troubles: [],
    judged: ['notes', 'rhythm', 'tempo'],
    ...more,
    take: { ...plain.take, ...of },
  };
}
const kept = (file: string, result: KeptTake): KeptResult => ({ file, result });
function placed(date: string, change: Parameters<typeof take>[0] = {}, player = 'Ada'): PlacedResult {
  return {
    file: `${player}-${date}.json`,
    player,
    date,
    result: take({ ...change, of: { player, date, ...change.of } }),
  };
}
const trouble = (bar: string, weight: 'fix' | 'watch', kind: Trouble['kind'] = 'wrong-note'): Trouble => {
  const criterion = kind === 'wrong-note' ? 'notes' : kind === 'late-entry' ? 'rhythm' : 'tempo';
  return { bar, weight, kind, criterion };
};
const day = (date: string, ...results: readonly KeptTake[]) => ({ date, results });

describe('the calendar', () => {
  // Source: ISO 8601; 2024 was a leap year, 2026 is none, 2100 is none.
  it.each([
    ['2026-03-02', true],
    ['2024-02-29', true],
    ['2026-02-29', false],
    ['2100-02-29', false],
    ['2026-04-31', false],
    ['2026-13-01', false],
    ['2026-3-2', false],
    ['02.03.2026', false],
    ['', false],
    ['x2026-03-02', false],
    ['2026-03-02x', false],
  ])('%s is a day: %s', (text, known) => {
    expect(isDay(text)).toBe(known);
  });

  // 2 March 2026 was a Monday, and so was 29 December 1969.
  it.each([
    ['2026-03-01', '2026-02-23'],
    ['2026-03-02', '2026-03-02'],
    ['2026-03-08', '2026-03-02'],
    ['2026-03-09', '2026-03-09'],
    ['2026-01-01', '2025-12-29'],
    ['1970-01-01', '1969-12-29'],
    ['1969-12-28', '1969-12-22'],
  ])('%s lies in the week of %s', (date, monday) => {
    expect(weekOf(date)).toBe(monday);
  });

  it('counts days, and every week begins on a Monday', () => {
    expect([dayNumber('1970-01-01'), dayNumber('1970-01-31'), dayNumber('1971-01-01')]).toEqual([0, 30, 365]);
    fc.assert(
      fc.property(fc.integer({ min: -20_000, max: 40_000 }), (n) => {
        const date = new Date(n * 86_400_000).toISOString().slice(0, 10);
        expect(new Date(`${weekOf(date)}T00:00:00Z`).getUTCDay()).toBe(1);
        expect(dayNumber(date) - dayNumber(weekOf(date))).toBeGreaterThanOrEqual(0);
        expect(dayNumber(date) - dayNumber(weekOf(date))).toBeLessThan(7);
      }),
    );
  });
});

describe('a name', () => {
  it('meets under other ways of writing it', () => {
    expect(foldName('  Ada\u2013Lou__Berg ')).toBe('ada lou berg');
    expect(foldName('ADA-LOU BERG')).toBe('ada lou berg');
    expect(foldName('Zoe\u0308')).toBe(foldName('ZOË'));
    expect(foldName('Zoe')).not.toBe(foldName('Zoë'));
  });

  it('is shown as it is written most often, of equals the first', () => {
    expect(usualSpelling(['b', 'a', 'b', 'c', 'c', 'c'])).toBe('c');
    expect(usualSpelling(['b', 'a', 'b', 'a'])).toBe('a');
    expect(usualSpelling([])).toBe('');
  });
});

describe('a recording with several results', () => {
  const one = (file: string, change: Parameters<typeof take>[0] = {}) =>
    kept(
      file,
      take({ toolVersion: '0.1.0', ...change, of: { sha256: 'aa', player: 'Ada', date: '2026-03-02', ...change.of } }),
    );
  const counted = (...all: readonly KeptResult[]) => countOnce(all).results.map(({ file }) => file);

  it('counts as the one that was reviewed, before anything else', () => {
    const out = { outcome: 'too-poor' as const, toolVersion: '9.0.0' };
    expect(counted(one('a', out), one('b', { of: { blind: true, player: null } }))).toEqual(['b']);
    expect(counted(one('b', { of: { blind: true, player: null } }), one('a', out))).toEqual(['b']);
  });

  it('counts as the one with a name instead of a number, then with player and day', () => {
    expect(counted(one('a', { of: { blind: true } }), one('b', { of: { date: null } }))).toEqual(['b']);
    expect(counted(one('a', { of: { date: null }, toolVersion: '2.0.0' }), one('b'))).toEqual(['b']);
    expect(counted(one('a', { of: { player: null }, toolVersion: '2.0.0' }), one('b'))).toEqual(['b']);
  });

  it.each([
    ['0.9.9', '1.0.0', 'b'],
    ['1.2.0', '1.10.0', 'b'],
    ['1.2.9', '1.2.10', 'b'],
    ['1.3.0', '1.2.10', 'a'],
    ['1.2', '1.2.1', 'b'],
    ['1.2.0', '1.2.0', 'a'],
    ['2.0.0', '1.9.9', 'a'],
  ])('of %s and %s counts as the newer one, of equals as the first', (first, second, file) => {
    expect(counted(one('a', { toolVersion: first }), one('b', { toolVersion: second }))).toEqual([file]);
  });

  it('is told once, with what was passed over and whether they differ', () => {
    const same = countOnce([one('a'), one('c'), one('b', { of: { player: 'ADA' } })]);
    expect(same.repeated).toEqual([{ sha256: 'aa', counted: 'a', passedOver: ['b', 'c'], differ: false }]);
    expect(countOnce([one('a'), one('b', { of: { date: '2026-03-03' } })]).repeated[0]!.differ).toBe(true);
    expect(countOnce([one('a'), one('b', { of: { player: 'Bo' } })]).repeated[0]!.differ).toBe(true);
  });

  it('is none where the recordings differ, or where it is not known which they are', () => {
    const apart = countOnce([one('b'), one('a', { of: { sha256: 'bb' } })]);
    expect([apart.results.map(({ file }) => file), apart.repeated]).toEqual([['b', 'a'], []]);
    expect(counted(one('b', { of: { sha256: '' } }), one('a', { of: { sha256: '' } }))).toEqual(['b', 'a']);
  });
});

describe('the story of a place', () => {
  const dates = ['2026-03-02', '2026-03-09', '2026-03-16', '2026-03-23'].map((date) => ({ date }));
  it.each([
    [['fix'], 'seen', 0],
    [['watch', 'fix'], 'grown', 1],
    [['clear', 'fix'], 'new', 1],
    [['not-judged', 'fix'], 'seen', 1],
    [['fix', 'fix'], 'still', 0],
    [['fix', 'watch', 'fix'], 'still', 2],
    [['fix', 'clear', 'fix'], 'returning', 2],
    [['clear', 'fix', 'fix'], 'still', 1],
    [['clear', 'watch', 'fix'], 'grown', 2],
    [['fix', 'clear'], 'fixed', 1],
    [['fix', 'clear', 'clear'], 'fixed', 1],
    [['fix', 'clear', 'not-judged', 'clear'], 'fixed', 1],
    [['fix', 'watch'], 'eased', 1],
    [['fix', 'not-judged'], 'not-judged', null],
  ] as const)('%s: %s', (marks, status, since) => {
    const story = storyOf(marks, dates);
    expect(story).toEqual({ status, days: marks, since: since === null ? null : dates[since]!.date });
  });
});

describe('the stories of bars', () => {
  const told = (...days: readonly ReturnType<typeof day>[]) =>
    barStories(days, BARS).map(
      ({ bar, criterion, kind, days: marks }) => `${bar} ${criterion} ${kind}: ${marks.join(' ')}`,
    );

  it('are told where something was ever to fix, in the order of the bars, then of the criteria', () => {
    const first = take({
      troubles: [trouble('3', 'fix'), trouble('2', 'watch'), trouble('1', 'fix', 'late-entry'), trouble('1', 'fix')],
    });
    expect(told(day('2026-03-02', first))).toEqual([
      '1 notes wrong-note: fix',
      '1 rhythm late-entry: fix',
      '3 notes wrong-note: fix',
    ]);
  });

  it('are as bad as the worst take of a day', () => {
    const clear = take();
    const watch = take({ troubles: [trouble('1', 'watch')] });
    const fix = take({ troubles: [trouble('1', 'fix')] });
    expect(told(day('a', clear, fix, watch), day('b', clear, watch), day('c', clear))).toEqual([
      '1 notes wrong-note: fix watch clear',
    ]);
  });

  it('are not judged where the bar was not played, is not there, or the criterion was left out', () => {
    const fix = take({ troubles: [trouble('2', 'fix')] });
    const days = [take({ barsNotPlayed: ['2'] }), take({ bars: ['1', '3'] }), take({ judged: ['rhythm'] }), take()].map(
      (one, i) => day(String(i), one),
    );
    expect(told(day('first', fix), ...days)).toEqual([
      '2 notes wrong-note: fix not-judged not-judged not-judged clear',
    ]);
  });

  it('leave out what is about the playing as a whole, and are called by the latest kind', () => {
    const [whole, one, other] = [
      take({ troubles: [trouble('1', 'fix', 'rushing')] }),
      take({ troubles: [trouble('2', 'fix')] }),
      take({ troubles: [{ ...trouble('2', 'fix'), kind: 'missed-note' }] }),
    ];
    expect(told(day('a', whole))).toEqual([]);
    expect(told(day('a', one), day('b', other))).toEqual(['2 notes missed-note: fix fix']);
    expect(storiesThroughout([day('a', whole), day('b', take())])).toEqual([
      { kind: 'rushing', criterion: 'tempo', status: 'fixed', days: ['fix', 'clear'], since: 'b' },
    ]);
    expect(storiesThroughout([day('a', one)])).toEqual([]);
    const eased = take({ troubles: [trouble('4', 'watch', 'rushing')] });
    expect(storiesThroughout([day('a', eased)])).toEqual([]);
    expect(storiesThroughout([day('a', whole), day('b', eased), day('c', take({ judged: [] }))])[0]!.days).toEqual([
      'fix',
      'watch',
      'not-judged',
    ]);
  });
});

const DEVIATIONS = new Proxy({}, { get: () => 10 }) as Deviations;
const numbers = (id: MeasureId, value: MaybeNumber): KeptTake['figures'] => {
  const none = notMeasured('no-slurs');
  const all = Object.fromEntries(Object.keys(plain.figures!).map((name) => [name, none]));
  return { ...all, [id]: value } as KeptTake['figures'];
};

describe('a player over days', () => {
  const followed = (...all: readonly (readonly [date: string, value: MaybeNumber])[]) => {
    const results = all.map(([date, value]) => placed(date, { figures: numbers('slurs', value) }));
    return followPlayer(results, BARS, DEVIATIONS, 'en').measures.find(({ measure }) => measure === 'slurs')!;
  };

  it('has the mean of the takes of a day', () => {
    const { days } = followed(['2026-03-09', 90], ['2026-03-02', 40], ['2026-03-09', 60]);
    expect(days).toEqual([
      { date: '2026-03-02', value: 40, takes: [40] },
      { date: '2026-03-09', value: 75, takes: [90, 60] },
    ]);
  });

  // Between single takes that scatter by 10 it takes 1.96 · √2 · 10 = 27.7 to be called a change, of two takes 1.96 · √1.5 · 10 = 24.
  it('has changed beyond chance, since the first day and since the last', () => {
    const { sinceFirst, sinceLast, course } = followed(['2026-03-02', 30], ['2026-03-09', 60], ['2026-03-16', 85]);
    expect(sinceFirst).toEqual({
      ...{ from: '2026-03-02', to: '2026-03-16', difference: 55, verdict: 'better' },
      smallest: expect.closeTo(27.72, 2),
    });
    expect(sinceLast).toMatchObject({ from: '2026-03-09', to: '2026-03-16', difference: 25, verdict: 'none' });
    expect(course).toBe('changed');
    const twice = followed(['2026-03-09', 60], ['2026-03-16', 85], ['2026-03-16', 85]);
    expect(twice.sinceLast).toMatchObject({ verdict: 'better', smallest: expect.closeTo(24, 1) });
  });

  it('is stable where no day left the noise, and went to and fro where one did', () => {
    expect(followed(['2026-03-02', 50], ['2026-03-09', 75], ['2026-03-16', 55]).course).toBe('stable');
    expect(followed(['2026-03-02', 50], ['2026-03-09', 80], ['2026-03-16', 55]).course).toBe('to-and-fro');
  });

  it('has nothing to compare on one day, and passes over days without a number', () => {
    const none = notMeasured('no-slurs');
    expect(followed(['2026-03-02', 50])).toMatchObject({ sinceFirst: null, sinceLast: null, course: null });
    const { days, sinceLast } = followed(['2026-03-02', 50], ['2026-03-09', none], ['2026-03-16', 90]);
    expect(days[1]).toMatchObject({ takes: [], value: { code: 'no-slurs' } });
    expect(sinceLast).toMatchObject({ from: '2026-03-02', to: '2026-03-16', verdict: 'better' });
  });

  it('is followed by reviewed takes alone, and written as usual', () => {
    const nothing = { outcome: 'too-poor' as const, figures: null };
    const all = [
      placed('2026-03-02', {}, 'ADA'),
      placed('2026-03-09'),
      placed('2026-03-09'),
      placed('2026-03-16', nothing),
    ];
    const { player, spellings, days } = followPlayer(all, BARS, DEVIATIONS, 'en');
    expect([player, spellings]).toEqual(['Ada', ['ADA', 'Ada']]);
    expect(days).toEqual([
      { date: '2026-03-02', week: '2026-03-02', takes: 1 },
      { date: '2026-03-09', week: '2026-03-09', takes: 2 },
    ]);
  });
});

describe('the goal', () => {
  const goal = (...takes: readonly KeptTake[]) => {
    const days = takes.map((one, i) => day(`2026-03-0${i + 2}`, one));
    const bars = barStories(days, BARS);
    return nextGoal(days, { bars, throughout: storiesThroughout(days), measures: [] });
  };

  it('is the first of the latest page that is to fix, with the bars that wait for the same', () => {
    const latest = take({
      troubles: [trouble('4', 'watch'), trouble('3', 'fix'), trouble('1', 'fix'), trouble('2', 'fix', 'late-entry')],
    });
    expect(goal(latest)).toEqual({ about: 'bars', kind: 'wrong-note', bars: ['1', '3'] });
    expect(goal(take({ troubles: [trouble('1', 'fix')] }), take({ troubles: [trouble('3', 'fix')] }))).toEqual({
      about: 'bars',
      kind: 'wrong-note',
      bars: ['3'],
    });
    expect(goal(take({ troubles: [trouble('1', 'fix', 'rushing'), trouble('3', 'fix')] }))).toEqual({
      about: 'throughout',
      kind: 'rushing',
    });
  });

  it('is that of the last take of the day', () => {
    const [first, last] = [
      take({ troubles: [trouble('1', 'fix')] }),
      take({ troubles: [trouble('2', 'fix', 'late-entry')] }),
    ];
    const days = [day('2026-03-02', first, last)];
    const bars = barStories(days, BARS);
    expect(nextGoal(days, { bars, throughout: [], measures: [] })).toMatchObject({ kind: 'late-entry', bars: ['2'] });
  });

  it('is then what slipped back, what is to be heard again, what is worth a listen, and to keep it', () => {
    const fix = take({ troubles: [trouble('1', 'fix'), trouble('2', 'fix', 'late-entry'), trouble('3', 'fix')] });
    const watch = take({
      troubles: [trouble('1', 'watch'), trouble('2', 'watch', 'late-entry'), trouble('3', 'watch')],
    });
    expect(goal(fix, watch)).toEqual({ about: 'listen', kind: 'wrong-note', bars: ['1', '3'] });
    const cut = { ...watch, troubles: watch.troubles.slice(0, 2), barsNotPlayed: ['3'] };
    expect(goal(fix, cut)).toEqual({ about: 'hear-again', bars: ['3'] });
    const days = [day('2026-03-02', fix), day('2026-03-03', cut)];
    const worse = { measure: 'slurs', sinceFirst: { verdict: 'worse' } } as never;
    const better = { measure: 'tempo', sinceFirst: { verdict: 'better' } } as never;
    const measures = [better, { measure: 'tuning', sinceFirst: null } as never, worse];
    expect(nextGoal(days, { bars: barStories(days, BARS), throughout: [], measures })).toEqual({
      about: 'measure',
      measure: 'slurs',
    });
    expect(goal(fix, take())).toEqual({ about: 'keep' });
    const rushed = take({ troubles: [trouble('1', 'fix', 'rushing')] });
    expect(goal(rushed, take({ troubles: [trouble('1', 'watch', 'rushing')] }))).toEqual({
      about: 'listen',
      kind: 'rushing',
      bars: [],
    });
    expect(nextGoal([], { bars: [], throughout: [], measures: [] })).toBeNull();
  });
});

describe('what a player lacks', () => {
  const WEEKS = ['2026-03-02', '2026-03-09', '2026-03-16', '2026-03-23'];
  const lost = (player: string | null, date: string | null): LostTake => {
    const fault = { code: 'wav-format-cut', facts: {} } as const;
    return { file: `${player}-${date}.wav`, scoreSha256: 'aa', player, date, fault };
  };
  const gaps = (all: readonly PlacedResult[], gone: readonly LostTake[] = []) =>
    findGaps(all, gone, WEEKS, 'en').map(({ week, why }) => `${week} ${why}`);

  it('are weeks of others from the first of the player on', () => {
    expect(gaps([placed('2026-03-10'), placed('2026-03-25')])).toEqual(['2026-03-16 no-take']);
    expect(gaps([placed('2026-03-25'), placed('2026-03-04')])).toEqual(['2026-03-09 no-take', '2026-03-16 no-take']);
  });

  it('are takes that were not reviewed, and weeks that have one are not missing', () => {
    const nothing = { outcome: 'too-poor' as const };
    expect(
      gaps([placed('2026-03-02'), placed('2026-03-11', nothing), placed('2026-03-17'), placed('2026-03-24')]),
    ).toEqual(['2026-03-09 too-poor']);
  });
  it('are takes of the player that could not be read, whatever the spelling', () => {
    const all = [placed('2026-03-02'), placed('2026-03-17'), placed('2026-03-24')];
    expect(gaps(all, [lost('ADA', '2026-03-12'), lost('Bo', '2026-03-12'), lost(null, '2026-03-12')])).toEqual([
      '2026-03-09 failed',
    ]);
    expect(gaps(all, [lost('ada', null)])).toEqual(['null failed', '2026-03-09 no-take']);
  });
});

describe('the section over weeks', () => {
  const share = (
    player: string,
    weeks: Record<string, readonly number[]>,
    bars: readonly { bar: string; status: string; days: readonly string[] }[] = [],
  ) => {
    const dated = Object.entries(weeks).flatMap(([week, values]) =>
      values.map((value, i) => ({ week, date: `${week}/${i}`, value })),
    );
    const measures = [{ measure: 'slurs', days: dated.map(({ date, value }) => ({ date, value, takes: [value] })) }];
    const stories = bars.map((story) => ({ criterion: 'notes', kind: 'wrong-note', since: null, ...story }));
    const days = dated.map(({ week, date }) => ({ week, date, takes: 1 }));
    return sectionShare({ player, days, measures, bars: stories } as unknown as Parameters<typeof sectionShare>[0]);
  };

  it('has the median of its players a week, of each the mean of the days', () => {
    const section = sectionOverWeeks(
      [share('Ada', { w1: [40, 60], w2: [90] }), share('Bo', { w1: [80] }), share('Cy', { w1: [70], w3: [10] })],
      BARS,
    );
    expect(section.weeks).toEqual(['w1', 'w2', 'w3']);
    expect(section.medians.find(({ measure }) => measure === 'slurs')!.weeks).toEqual([
      { week: 'w1', value: 70, players: 3 },
      { week: 'w2', value: 90, players: 1 },
      { week: 'w3', value: 10, players: 1 },
    ]);
    expect(section.medians.find(({ measure }) => measure === 'tempo')!.weeks).toEqual([]);
  });

  it('tells of each bar who had it to fix, who has, and of whom it is open', () => {
    const section = sectionOverWeeks(
      [
        share('Ada', { w1: [1] }, [
          { bar: '3', status: 'fixed', days: ['fix', 'clear'] },
          { bar: '1', status: 'seen', days: ['fix'] },
        ]),
        share('Bo', { w1: [1] }, [
          { bar: '3', status: 'eased', days: ['fix', 'watch'] },
          { bar: '2', status: 'fixed', days: ['fix', 'clear'] },
        ]),
        share('Cy', { w1: [1] }, [{ bar: '3', status: 'not-judged', days: ['fix', 'not-judged'] }]),
      ],
      BARS,
    );
    const common = { criterion: 'notes', kind: 'wrong-note' };
    const both = sectionOverWeeks(
      [
        share('Ada', { w1: [1] }, [{ bar: '1', status: 'eased', days: ['fix', 'watch'] }]),
        share('Bo', { w1: [1] }, [{ bar: '1', status: 'seen', days: ['fix'] }]),
      ],
      BARS,
    );
    expect(both.bars).toEqual([{ ...common, bar: '1', had: ['Ada'], have: ['Bo'], open: ['Ada'], mastered: false }]);
    expect(section.bars).toEqual([
      { ...common, bar: '1', had: [], have: ['Ada'], open: [], mastered: false },
      { ...common, bar: '2', had: ['Bo'], have: [], open: [], mastered: true },
      { ...common, bar: '3', had: ['Ada', 'Bo', 'Cy'], have: [], open: ['Bo', 'Cy'], mastered: false },
    ]);
  });
});

describe('études', () => {
  const of = (sha256: string, score: Partial<KeptTake['score']> = {}, date: string | null = '2026-03-02') =>
    kept(
      `${sha256}-${date}.json`,
      take({ score: { ...plain.score, sha256, file: `${sha256}.xml`, ...score }, of: { date } }),
    );
  const briefly = (...all: readonly KeptResult[]) =>
    sortEtudes(all).map(({ title, files, change, results }) => [
      title,
      files.map(({ sha256 }) => sha256).join('+'),
      change,
      results.length,
    ]);

  it('are one where title, part, bars and notes are the same, told in the order of their first days', () => {
    expect(briefly(of('bb', {}, '2026-03-09'), of('aa', {}, '2026-03-02'), of('aa', {}, '2026-03-16'))).toEqual([
      [plain.score.title, 'aa+bb', 'compared', 3],
    ]);
    expect(briefly(of('bb', {}, '2026-03-02'), of('aa', {}, '2026-03-09'))[0]![1]).toBe('bb+aa');
    expect(briefly(of('bb', {}, '2026-03-02'), of('aa', {}, '2026-03-02'))[0]![1]).toBe('aa+bb');
    expect(briefly(of('bb', {}, '2026-03-02'), of('aa', {}, null))[0]![1]).toBe('aa+bb');
  });

  it('are followed apart where bars or notes differ', () => {
    const notes = plain.score.notes + 1;
    expect(briefly(of('aa'), of('bb', { notes }, '2026-03-09'))).toEqual([
      [plain.score.title, 'aa', 'apart', 1],
      [plain.score.title, 'bb', 'apart', 1],
    ]);
    expect(briefly(of('aa', {}, '2026-03-09'), of('bb', { bars: plain.score.bars + 1 }))[0]![1]).toBe('bb');
  });

  it('are different ones under another title or for another part, by title', () => {
    expect(briefly(of('aa', { title: 'Zwei' }), of('bb', { title: 'eins' }))).toEqual([
      ['eins', 'bb', 'none', 1],
      ['Zwei', 'aa', 'none', 1],
    ]);
    expect(briefly(of('aa', { part: 'Oboe' }), of('bb')).map(([, files]) => files)).toEqual(['aa', 'bb']);
  });

  it('are called by the latest title, or by the file where there is none', () => {
    expect(briefly(of('aa', { title: 'New' }, '2026-03-09'), of('aa', { title: 'Old' }, '2026-03-02'))[0]![0]).toBe(
      'New',
    );
    expect(briefly(of('aa', { title: '  ' }))[0]![0]).toBe('aa.xml');
  });
});
