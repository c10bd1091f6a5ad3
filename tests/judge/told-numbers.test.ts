import { describe, expect, it } from 'vitest';
import type { FindingKind } from '../../src/judge/index.js';
import type { Measurements, TransitionMeasure } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { judged, ofKind } from '../helpers/judged.js';

/**
 * The number that stands beside each finding, with its unit, and the facts its words are made of: worked out by hand from what
 * was measured. Source: definition of the units; seconds to milliseconds, shares to percent.
 */
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PART = smallPart(QUARTERS);
const PLACE = { bar: '3', pass: 1 };
const partWith = (change: (i: number) => Partial<NoteSketch>): Part =>
  smallPart(QUARTERS.map((note, i) => ({ ...note, ...change(i) })));
const SLURRED = partWith((i) => ({ slurredToNext: i === 8, slurredFromPrevious: i === 9 }));
const DOTTED = partWith(() => ({ articulations: ['staccato'] }));
const MARKED = partWith((i) => ({ breathAfter: i === 8 ? 'breath' : null }));

function goingOver(change: Partial<TransitionMeasure>, others = 0.9): Partial<Measurements> {
  const pace = { betweenOnsetsSeconds: 1, expectedSeconds: 1, secondsAQuarter: 1 };
  const usual = { gapSeconds: 1 - others, soundedShare: others, dipDb: 30 };
  const transitions = PART.notes.slice(1).map(({ index }): TransitionMeasure => {
    return { index: index - 1, toIndex: index, ...pace, ...usual, ...(index === 9 ? change : {}) };
  });
  return { transitions };
}
const tempoOf = (playedQuarterBpm: number, bars: readonly number[]): Partial<Measurements> => ({
  tempo: {
    ...{ markedQuarterBpm: 100, playedQuarterBpm },
    bars: bars.map((quarterBpm, i) => ({ bar: String(i + 1), pass: 1, startQuarters: 4 * i, quarterBpm })),
  },
});
const contrast = (from: string, to: string, db: number): Partial<Measurements> => ({
  contrasts: [
    { from, to, index: 8, ...PLACE, differenceDb: db, registerAdjustedDb: db, intervalDb: [db, db] as const },
  ],
});
const entry = (lateSeconds: number): Partial<Measurements> => ({
  entries: [{ index: 8, ...PLACE, restQuarters: 2, lateSeconds, secondsAQuarter: 1 }],
});
const fermata = (ratio: number): Partial<Measurements> => ({
  fermatas: [{ index: 5, ...PLACE, writtenSeconds: 1, heldSeconds: ratio, ratio }],
});
const late = (seconds: number) =>
  goingOver({ betweenOnsetsSeconds: 1 + seconds, gapSeconds: 0.5 + seconds, soundedShare: 0.6 });

type Row = readonly [FindingKind, Partial<Measurements>, Part, value: number, unit: string, facts: object];
const ROWS: readonly Row[] = [
  ['rushing', tempoOf(100, [100, 100, 112, 112, 112, 100]), PART, 12, '%', { percent: 12 }],
  ['dragging', tempoOf(100, [100, 100, 88, 88, 88, 100]), PART, -12, '%', { percent: 12 }],
  // nine bars from 95 to 105: a tenth from end to end
  [
    'rushing',
    tempoOf(
      100,
      [0, 1, 2, 3, 4, 5, 6, 7, 8].map((i) => 95 + 1.25 * i),
    ),
    PART,
    10,
    '%',
    { percent: 10, throughout: true },
  ],
  ['off-tempo', tempoOf(80, []), PART, 80, 'quarter notes a minute', { played: 80, marked: 100 }],
  ['weak-contrast', contrast('p', 'f', 1.2), PART, 1.2, 'dB', { from: 'p', to: 'f', db: 1.2, least: 3 }],
  ['weak-contrast', contrast('f', 'p', -1.2), PART, -1.2, 'dB', { from: 'f', to: 'p', db: 1.2, least: 3 }],
  ['reversed-contrast', contrast('f', 'p', 4), PART, 4, 'dB', { from: 'f', to: 'p', db: -4 }],
  ['late-entry', entry(0.3), PART, 0.3, 's', { milliseconds: 300, restQuarters: 2 }],
  ['early-entry', entry(-0.3), PART, -0.3, 's', { milliseconds: 300, restQuarters: 2 }],
  ['fermata-long', fermata(4), PART, 4, 'times the written length', { ratio: 4, most: 3 }],
  ['fermata-short', fermata(1), PART, 1, 'times the written length', { ratio: 1, least: 1.25 }],
  ['slur-broken', goingOver({ gapSeconds: 0.1 }), SLURRED, 0.1, 's', { milliseconds: 100 }],
  [
    'staccato-long',
    goingOver({ soundedShare: 0.9, gapSeconds: 0.1, dipDb: 2 }, 0.45),
    DOTTED,
    ...([90, '%', { percent: 90, usual: 45, all: false }] as const),
  ],
  [
    'breath-unmarked',
    goingOver({ gapSeconds: 0.6, soundedShare: 0.4 }),
    PART,
    ...([0.6, 's', { seconds: 0.6, inSlur: false }] as const),
  ],
  ['breath-late', late(0.5), MARKED, 0.5, 's', { seconds: 0.5 }],
  ['hesitation', late(1.5), PART, 1.5, 's', { seconds: 1.5 }],
  ['tuning-off', { tuning: { centsFromA440: -30, a4Hz: 432.4 } }, PART, -30, 'cents', { cents: -30 }],
  [
    'accent-weak',
    { accents: [{ mark: 'accent', index: 8, ...PLACE, overDb: 0.2, spreadDb: 1 }] },
    PART,
    ...([0.2, 'dB', { db: 0.2 }] as const),
  ],
  [
    'accent-weak',
    { accents: [{ mark: 'fp', index: 8, ...PLACE, overDb: 5, spreadDb: 1, fallDb: 1.5 }] },
    PART,
    ...([1.5, 'dB', { db: 1.5, falls: true }] as const),
  ],
  [
    'uneven-group',
    {
      groups: [
        {
          ...{ index: 4, toIndex: 6, ...PLACE, tuplet: true, seconds: 1.5 },
          ...{ shares: [0.25, 0.5, 0.25], written: [0.25, 0.25, 0.5] },
        },
      ],
    },
    PART,
    ...([50, '%', { notes: 3, tuplet: true, which: 1, share: 0.5, written: 0.25 }] as const),
  ],
];

describe('the number beside a finding', () => {
  it.each(ROWS)('%s', (kind, measurements, part, value, unit, facts) => {
    const [finding, ...more] = ofKind(judged(part, { measurements }), kind);
    expect(more).toEqual([]);
    expect(finding!.measured!.unit).toBe(unit);
    expect(finding!.measured!.value).toBeCloseTo(value, 6);
    const told = finding!.facts as Record<string, unknown>;
    for (const [name, fact] of Object.entries(facts)) {
      expect([name, told[name]]).toEqual([name, typeof fact === 'number' ? expect.closeTo(fact, 6) : fact]);
    }
  });

  // Three times the same note sharp is one tendency: told at the worst place, with the median of the three.
  it('out of tune, of a note that strays three times', () => {
    const strays = new Map([
      [0, 40],
      [12, 60],
    ]);
    const told = (third: number) => {
      const notes = PART.notes.map(({ index }) => {
        const cents = index === 14 ? third : (strays.get(index) ?? 0);
        return { index, cents, centsFromOwnTuning: cents, levelDb: -24 };
      });
      const same = partWith((i) => (i === 14 ? { midi: QUARTERS[0]!.midi } : {}));
      return ofKind(judged(same, { measurements: { notes } }), 'note-out-of-tune');
    };
    expect(told(45)).toMatchObject([{ index: 12, measured: { value: 45, unit: 'cents' }, facts: { times: 3 } }]);
    // twice sharp and once flat is no tendency
    expect(told(-45).map((f) => [f.index, f.measured!.value])).toEqual([
      [12, 60],
      [14, -45],
      [0, 40],
    ]);
  });
});
