import { describe, expect, it } from 'vitest';
import { judgeContinuity } from '../../src/judge/judges/continuity.js';
import type { Measurements } from '../../src/measure/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { judgeInput } from '../helpers/judged.js';

/**
 * What was begun again and what was passed over, on both sides of what excuses it. Bars are counted by hand.
 *
 * Source: definition; what the recording leaves out is no fault of the player.
 */
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PART = smallPart(QUARTERS);

describe('a new beginning', () => {
  const weights = (stoppedAtIndex: number, resumedAtIndex: number) =>
    judgeContinuity(
      judgeInput(PART, { alignment: { restarts: [{ stoppedAtIndex, resumedAtIndex, onsetSeconds: 40 }] } }),
    ).map(({ weight, bar, toBar, onset, facts }) => ({ weight, bar, toBar, onset, facts }));

  it('is no stumble where the whole part was played before', () => {
    const whole = { weight: 'watch', bar: '1', toBar: '6', onset: 40, facts: { stoppedAtBar: '6', whole: true } };
    expect([weights(23, 0), weights(20, 0)]).toEqual([[whole], [whole]]);
  });

  it('is one in any other case', () => {
    const fix = (bar: string, toBar: string) => {
      return [{ weight: 'fix', bar, toBar, onset: 40, facts: { stoppedAtBar: toBar, whole: false } }];
    };
    expect(weights(19, 0)).toEqual(fix('1', '5'));
    expect(weights(23, 1)).toEqual(fix('1', '6'));
    expect(weights(23, 16)).toEqual(fix('5', '6'));
  });

  it('is told where it began when it stopped behind the last note', () => {
    expect(weights(24, 16)).toEqual([
      { weight: 'fix', bar: '5', toBar: '5', onset: 40, facts: { stoppedAtBar: '5', whole: false } },
    ]);
  });
});

describe('bars that were passed over', () => {
  const skipped = (
    fromIndex: number,
    toIndex: number,
    recording: Partial<Measurements['recording']> = {},
    restart?: number,
  ) => {
    const restarts = restart === undefined ? [] : [{ stoppedAtIndex: 9, resumedAtIndex: restart, onsetSeconds: 40 }];
    const input = judgeInput(PART, { alignment: { skips: [{ fromIndex, toIndex, onsetSeconds: 9 }], restarts } });
    const heard = { ...input.measurements.recording, ...recording };
    return judgeContinuity({ ...input, measurements: { ...input.measurements, recording: heard } }).filter(
      ({ kind }) => kind === 'skipped-bars',
    );
  };

  it('are a fix, told from the first note to the last', () => {
    expect(skipped(8, 13)).toMatchObject([
      {
        ...{ weight: 'fix', bar: '3', toBar: '4', index: 8, toIndex: 13, onset: 9 },
        facts: { toBar: '4', atEnd: false, fileEnds: false },
      },
    ]);
  });

  it('are to be watched at the end of a recording that breaks off there', () => {
    const told = (toIndex: number, recording: object) =>
      skipped(20, toIndex, recording).map(({ weight, facts }) => [weight, facts]);
    expect(told(23, {})).toEqual([['fix', { toBar: '6', atEnd: true, fileEnds: false }]]);
    expect(told(23, { breaksOff: true })).toEqual([['watch', { toBar: '6', atEnd: true, fileEnds: true }]]);
    expect(told(23, { endsInSound: true })).toEqual([['watch', { toBar: '6', atEnd: true, fileEnds: true }]]);
    expect(told(22, { breaksOff: true })).toEqual([['fix', { toBar: '6', atEnd: false, fileEnds: false }]]);
  });

  it('are none where the player began again right behind them', () => {
    expect([13, 14, 15].map((restart) => skipped(8, 13, {}, restart).length)).toEqual([1, 0, 1]);
  });
});
