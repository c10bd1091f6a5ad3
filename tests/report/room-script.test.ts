import { describe, expect, it } from 'vitest';
import { readMarks } from '../../src/batch/standing/read-marks.js';
import { barsAsked, readAddress, writeAddress } from '../../src/report/listen/page/address.js';
import { changesBetween } from '../../src/report/listen/page/changes.js';
import { againstKnots, alongKnots } from '../../src/report/listen/page/clock.js';
import { gatedLoudness } from '../../src/report/listen/page/loudness.js';
import { marksTable, readMark } from '../../src/report/listen/page/marks-table.js';
import { drawLots, orderOf } from '../../src/report/listen/page/order.js';
import { nextPass, reachFrom } from '../../src/report/listen/page/selection.js';
import type { TakeData, TakeHead } from '../../src/report/listen/room-data.js';
import { readPart } from '../../src/score/index.js';
import { ROOM_PART } from '../helpers/listening-room.js';

const part = readPart(ROOM_PART);

describe('time and music', () => {
  it('goes from time to music and back', () => {
    const knots = [
      [0, 0],
      [1000, 2],
      [3000, 3],
    ] as const;
    expect(alongKnots(knots, 500)).toBe(1);
    expect(againstKnots(knots, 2.5)).toBe(2000);
    expect([alongKnots(knots, -5), alongKnots(knots, 9000)]).toEqual([0, 3]);
    expect(alongKnots([], 7)).toBe(0);
  });
});

describe('choosing bars', () => {
  // performed 1 2 3 2 3 4 5 6
  const { bars } = {
    bars: part.bars.map(
      ({ bar, barIndex, pass, startQuarters }) => [bar, barIndex, pass, startQuarters, 4, 1] as const,
    ),
  };

  it('reaches through a repeat the shortest way that is played', () => {
    expect(reachFrom(bars, 0, 3)).toEqual({ from: 0, to: 5 });
    expect(reachFrom(bars, 2, 1)).toEqual({ from: 1, to: 2 });
    expect(reachFrom(bars, 4, 1)).toEqual({ from: 3, to: 4 });
    expect(reachFrom(bars, 1, 2)).toEqual({ from: 1, to: 2 });
  });

  it('goes to the next time the same bars are played, and round', () => {
    expect(nextPass(bars, { from: 1, to: 2 })).toEqual({ from: 3, to: 4 });
    expect(nextPass(bars, { from: 3, to: 4 })).toEqual({ from: 1, to: 2 });
    expect(nextPass(bars, { from: 6, to: 7 })).toEqual({ from: 6, to: 7 });
  });

  it('is written in the address and read from it again', () => {
    const takes = [{ name: 'Ada & Ben #1' }, { name: '李明华' }] as TakeHead[];
    for (const [from, to] of [
      [0, 0],
      [1, 2],
      [3, 4],
      [6, 7],
    ] as const) {
      for (const [i, { name }] of takes.entries()) {
        const asked = readAddress(writeAddress({ from, to }, bars, name), takes);
        expect([asked.take, barsAsked(asked, bars)]).toEqual([i, { from, to }]);
      }
    }
    // RFC 3986: a name may also come percent-encoded, as links of other documents have it
    expect(readAddress(`#bar=5&take=${encodeURIComponent('Ada & Ben #1')}`, takes)).toMatchObject({
      take: 0,
      bar: '5',
    });
    const nowhere = readAddress('#bar=99&take=nobody', takes);
    expect([nowhere.take, barsAsked(nowhere, bars)]).toEqual([null, null]);
    expect(writeAddress({ from: 0, to: 0 }, bars, null)).toBe('#bar=1');
  });
});

describe('loudness of a passage', () => {
  const tenths = (...stretches: (readonly [db: number | null, count: number])[]) =>
    stretches.flatMap(([db, count]) => Array.from({ length: count }, () => (db === null ? null : db * 10)));

  // EBU Tech 3341, minimum requirements: a K-weighted steady tone whose power is −22.309 dB reads −23.0 LUFS (offset −0.691).
  it('of a steady tone is its power with the offset', () => {
    expect(gatedLoudness(tenths([-22.309, 200]), 0, 20_000)).toBeCloseTo(-23, 2);
  });

  // EBU Tech 3341, test signal 3: 10 s at −36, 60 s at −23, 10 s at −36 LUFS reads −23.0 ± 0.1.
  it('leaves out what is far softer than the rest', () => {
    const signal = tenths([-35.309, 100], [-22.309, 600], [-35.309, 100]);
    expect(Math.abs(gatedLoudness(signal, 0, 80_000)! + 23)).toBeLessThanOrEqual(0.1);
  });

  // EBU Tech 3341, test signal 4: the same between 10 s at −72 LUFS.
  it('leaves out what is below the absolute gate', () => {
    const signal = tenths([-71.309, 100], [-35.309, 100], [-22.309, 600], [-35.309, 100], [-71.309, 100]);
    expect(Math.abs(gatedLoudness(signal, 0, 100_000)! + 23)).toBeLessThanOrEqual(0.1);
  });

  it('is that of the passage alone, also of a very short one, and of silence there is none', () => {
    expect(gatedLoudness(tenths([-10, 50], [-40.309, 50]), 5000, 10_000)).toBeCloseTo(-41, 2);
    expect(gatedLoudness(tenths([-10, 50], [-40.309, 2]), 5000, 5200)).toBeCloseTo(-41, 2);
    expect(gatedLoudness(tenths([null, 50]), 0, 5000)).toBeNull();
  });
});

describe('the order of takes', () => {
  const head = (name: string, met: number | null, more: Partial<TakeHead> = {}): TakeHead => ({
    ...{ name, label: name, day: '', date: '', player: name, part: 0, sound: 's', pages: null },
    met: met === null ? {} : { notes: met },
    ...more,
  });
  const takes = [
    head('a', 0.5),
    head('b', 0.9),
    head('c', null),
    head('d', 0.9),
    head('e', 1, { part: 1 }),
    head('f', 1, { sound: null }),
  ];

  it('is that of the list, of a criterion, or of a lot, and holds what can be heard of one part', () => {
    expect(orderOf(takes, 0, 'list', [])).toEqual([0, 1, 2, 3]);
    expect(orderOf(takes, 0, 'notes', [])).toEqual([1, 3, 0, 2]);
    expect(orderOf(takes, 0, 'lot', [5, 3, 4, 0, 2, 1])).toEqual([3, 0, 2, 1]);
    expect(orderOf(takes, null, 'list', [])).toEqual([]);
  });

  it('by lot holds every take once, wherever chance falls', () => {
    let seed = 1;
    const chance = () => {
      seed = (seed * 48_271) % 2_147_483_647;
      return seed / 2_147_483_647;
    };
    const firsts = Array.from({ length: 400 }, () => {
      const lot = drawLots(4, chance);
      expect([...lot].sort()).toEqual([0, 1, 2, 3]);
      return lot[0];
    });
    // four equal chances in 400 draws: 100 each, standard deviation 8.7; five of them are never seen
    for (const take of [0, 1, 2, 3])
      expect(Math.abs(firsts.filter((one) => one === take).length - 100)).toBeLessThan(44);
  });
});

describe('what changed between two days', () => {
  const finding = (key: string, places: readonly [number, number] | null = [1, 1]) => ({
    ...{ id: key, kind: 'dragging', key, headline: key, hear: '', where: '', passage: null },
    places,
  });
  const take = (
    findings: ReturnType<typeof finding>[],
    bars = [
      [0, 1],
      [1, 2],
      [2, 3],
    ] as (readonly [number, number] | null)[],
  ) => ({ findings, bars }) as unknown as TakeData;
  const keys = (found: readonly { key: string }[]) => found.map(({ key }) => key);

  it('is gone, new or still there; what one day did not play is none of these', () => {
    const changes = changesBetween(
      take([finding('early'), finding('both'), finding('whole', null), finding('skipped later', [2, 2])]),
      take([finding('both'), finding('late')], [[0, 1], [1, 2], null]),
    );
    expect(keys(changes.gone)).toEqual(['early', 'whole']);
    expect(keys(changes.fresh)).toEqual(['late']);
    expect(keys(changes.still)).toEqual(['both']);
    expect(keys(changes.notComparable)).toEqual(['skipped later']);
  });

  it('is still there when what goes over several bars has moved a little, and a note is another note', () => {
    const bars = Array.from({ length: 9 }, (_, i) => [i, i + 1] as const);
    const between = (before: ReturnType<typeof finding>, now: ReturnType<typeof finding>) =>
      keys(changesBetween(take([before], bars), take([now], bars)).still);
    expect(between(finding('bars 3 to 6', [2, 5]), finding('bars 5 to 7', [4, 6]))).toEqual(['bars 5 to 7']);
    expect(between(finding('bars 3 to 6', [2, 5]), finding('bars 7 to 8', [6, 7]))).toEqual([]);
    expect(between(finding('bar 3, beat 1', [2, 2]), finding('bar 3, beat 4', [2, 2]))).toEqual([]);
    expect(between(finding('bars 3 to 6', [2, 5]), { ...finding('bars 3 to 5', [2, 4]), kind: 'rushing' })).toEqual([]);
  });
});

describe('marks of one’s own', () => {
  it('are read by whoever reads the marks of a panel', () => {
    const marks = [
      { take: 'Ada, "the first"', criterion: 'notes', points: 17.5, word: 'warm; clear' },
      { take: '007', criterion: 'dynamics', points: 3, word: '=SUM(A1)' },
    ];
    const table = marksTable('Judge; North', marks);
    expect(readMarks(new TextEncoder().encode(table))).toEqual([
      { take: 'Ada, "the first"', judge: 'Judge; North', criterion: 'notes', points: 17.5 },
      { take: '007', judge: 'Judge; North', criterion: 'dynamics', points: 3 },
    ]);
    expect(table).toContain("'=SUM(A1)");
  });

  it('are numbers as that reader takes them', () => {
    expect(['17', '17,5', ' 3.25 ', '', 'x', '-1', '12345', '1e3'].map(readMark)).toEqual([
      17,
      17.5,
      3.25,
      null,
      null,
      null,
      null,
      null,
    ]);
  });
});
