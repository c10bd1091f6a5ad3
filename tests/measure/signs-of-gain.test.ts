import { describe, expect, it } from 'vitest';
import { notMeasured } from '../../src/base/index.js';
import type { FloorInPauses } from '../../src/measure/gain/floor-in-pauses.js';
import type { PlanFollowing } from '../../src/measure/gain/follow-plan.js';
import type { Settling } from '../../src/measure/gain/settling.js';
import { saysGain } from '../../src/measure/gain/signs-of-gain.js';

/**
 * What is called a moved gain, on both sides of each sign, in absolute numbers.
 *
 * Source: working values set on takes with known gain; that a player is not suspected without a sign is the rule of the house.
 */
interface Signs {
  readonly ceiling?: number;
  readonly plan?: Partial<PlanFollowing> | null;
  readonly settling?: Settling;
  readonly long?: FloorInPauses;
  readonly short?: FloorInPauses;
}

/** Half of what is written is played, and nothing else is known. */
function moved({ ceiling = 0, plan = {}, settling, long, short }: Signs): boolean {
  return saysGain({
    ceiling: () => ceiling,
    plan: () => (plan === null ? null : { followed: 0.5, undone: 0, sureness: 0, ...plan }),
    settling: () => settling ?? notMeasured('too-few-long-notes'),
    floorInLongPauses: () => long ?? notMeasured('too-few-pauses'),
    floorInShortPauses: () => short ?? notMeasured('too-few-pauses'),
  });
}

describe('a gain', () => {
  it('is not said to have moved where nothing is known', () => {
    expect([moved({}), moved({ plan: null }), moved({ plan: { followed: 0 } })]).toEqual([false, false, false]);
  });

  it('is told by 35 of 100 notes under one ceiling', () => {
    expect([moved({ ceiling: 0.34 }), moved({ ceiling: 0.35 })]).toEqual([false, true]);
  });

  it('is told by a floor that moves by 10 dB against the playing in long pauses', () => {
    const floor = (moveDb: number, withPlaying: number) => moved({ long: { moveDb, withPlaying }, plan: null });
    expect([floor(9.9, -1), floor(10, -1)]).toEqual([false, true]);
    expect([floor(20, -0.69), floor(20, -0.7)]).toEqual([false, true]);
    expect([floor(9.9, -0.69), floor(20, 0.7)]).toEqual([false, false]);
  });

  it('is told by changes that are taken back by three tenths, three standard errors sure', () => {
    const undone = (share: number, sureness: number) => moved({ plan: { undone: share, sureness } });
    expect([undone(0.29, 9), undone(0.3, 9)]).toEqual([false, true]);
    expect([undone(0.9, 2.9), undone(0.9, 3)]).toEqual([false, true]);
  });

  it('is not looked for where more than eight tenths of what is written are played', () => {
    const settling = { slope: -0.5, correlation: -0.9 };
    const followed = (share: number) => moved({ plan: { followed: share, undone: 0.9, sureness: 9 }, settling });
    expect([followed(0.8), followed(0.81)]).toEqual([true, false]);
    expect(moved({ plan: null, settling })).toBe(false);
  });

  it('is told by held notes that take back a third of a jump', () => {
    const settles = (slope: number, correlation: number) => moved({ settling: { slope, correlation } });
    expect([settles(-0.32, -0.9), settles(-0.33, -0.9)]).toEqual([false, true]);
    expect([settles(-0.5, -0.64), settles(-0.5, -0.65)]).toEqual([false, true]);
  });
});

describe('where hardly anything is left of what is written', () => {
  const hardly = (signs: Signs, followed = 0.45) => moved({ ...signs, plan: { ...signs.plan, followed } });

  it('changes that are mostly taken back are enough with 2.4 standard errors', () => {
    const undone = (share: number, sureness: number, followed?: number) =>
      hardly({ plan: { undone: share, sureness } }, followed);
    expect([undone(0.59, 2.9), undone(0.6, 2.9)]).toEqual([false, true]);
    expect([undone(0.9, 2.3), undone(0.9, 2.4)]).toEqual([false, true]);
    expect([undone(0.9, 2.4, 0.45), undone(0.9, 2.4, 0.46)]).toEqual([true, false]);
  });

  it('held notes that take back a quarter are enough', () => {
    const settles = (slope: number, correlation: number) => hardly({ settling: { slope, correlation } });
    expect([settles(-0.24, -0.9), settles(-0.25, -0.9)]).toEqual([false, true]);
    expect([settles(-0.3, -0.44), settles(-0.3, -0.45)]).toEqual([false, true]);
  });

  it('a floor in short pauses that goes against the playing is enough', () => {
    const floor = (withPlaying: number, followed?: number) => hardly({ short: { moveDb: 0, withPlaying } }, followed);
    expect([floor(-0.44), floor(-0.45)]).toEqual([false, true]);
    expect(floor(-0.9, 0.46)).toBe(false);
  });
});
