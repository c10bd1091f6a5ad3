import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareDays } from '../../src/weeks/compare-days.js';
import { moderatedDeviation, smallestChange, WORKING_WEIGHT, withinDays } from '../../src/weeks/noise.js';

describe('the scatter within days', () => {
  // Bland & Altman 1996, "Measurement error", BMJ 313:744: for pairs, the within-subject variance is the sum of squared
  // differences over twice the number of pairs. Differences 4, 2 and 6: (16 + 4 + 36) / 6 = 9.333…
  it('is for pairs what half the mean squared difference says', () => {
    const found = withinDays([
      [90, 94],
      [101, 99],
      [80, 86],
    ]);
    expect(found.standardDeviation).toBeCloseTo(Math.sqrt(56 / 6), 12);
    expect([found.degreesOfFreedom, found.days]).toEqual([3, 3]);
  });

  // JCGM 100:2008 (GUM), 4.2.2: the experimental variance of 1, 2, 3, 4, 5 is 10 / 4.
  it('is for one day the standard deviation of its takes', () => {
    expect(withinDays([[1, 2, 3, 4, 5]]).standardDeviation).toBeCloseTo(Math.sqrt(2.5), 12);
  });

  // One-way analysis of variance, within groups: squares (0.5² · 2) + (1² + 0 + 1²) = 2.5 on 1 + 2 degrees of freedom.
  it('weighs days by their takes, and leaves out days with one take', () => {
    const found = withinDays([[1, 2], [7, 8, 9], [1000], []]);
    expect(found.standardDeviation).toBeCloseTo(Math.sqrt(2.5 / 3), 12);
    expect([found.degreesOfFreedom, found.days]).toEqual([3, 2]);
  });

  it('does not see how far the days lie apart', () => {
    const numbers = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 2, maxLength: 5 });
    fc.assert(
      fc.property(
        fc.array(numbers, { minLength: 1, maxLength: 6 }),
        fc.double({ min: -99, max: 99, noNaN: true }),
        (days, by) => {
          const moved = days.map((takes, i) => takes.map((value) => value + i * by));
          expect(withinDays(moved).standardDeviation).toBeCloseTo(withinDays(days).standardDeviation, 6);
        },
      ),
    );
  });
});

describe('the noise that is used', () => {
  it('is the working value when no day has two takes', () => {
    expect(moderatedDeviation(withinDays([[3], [9]]), 2)).toBe(2);
  });

  // Smyth 2004, section 4: (d0 · s0² + d · s²) / (d0 + d). With s0 = 2, s = 5 and d = d0 the variance is (4 + 25) / 2.
  it('stands half-way, in variance, when the takes weigh as much as the working value', () => {
    const found = { standardDeviation: 5, degreesOfFreedom: WORKING_WEIGHT, days: WORKING_WEIGHT };
    expect(moderatedDeviation(found, 2)).toBeCloseTo(Math.sqrt(14.5), 12);
  });

  // √((6 · 2² + 6 · 4²) ÷ 12) = √10
  it('has the weight of six degrees of freedom on the side of the working value', () => {
    expect(moderatedDeviation({ standardDeviation: 4, degreesOfFreedom: 6, days: 6 }, 2)).toBeCloseTo(Math.sqrt(10), 9);
  });

  it('lies between the two, and comes to the takes when there are many', () => {
    const positive = fc.double({ min: 0.1, max: 50, noNaN: true });
    fc.assert(
      fc.property(positive, positive, fc.integer({ min: 1, max: 500 }), (found, working, degreesOfFreedom) => {
        const used = moderatedDeviation(
          { standardDeviation: found, degreesOfFreedom, days: degreesOfFreedom },
          working,
        );
        expect(used).toBeGreaterThanOrEqual(Math.min(found, working) - 1e-9);
        expect(used).toBeLessThanOrEqual(Math.max(found, working) + 1e-9);
      }),
    );
    expect(moderatedDeviation({ standardDeviation: 5, degreesOfFreedom: 60_000, days: 1 }, 2)).toBeCloseTo(5, 2);
  });
});

describe('the smallest change', () => {
  // Weir 2005, J Strength Cond Res 19:231: minimal difference = SEM · 1.96 · √2, which is 2.77 SEM (Bland & Altman 1996).
  it('is 2.77 standard deviations between single takes', () => {
    expect(smallestChange(1)).toBeCloseTo(2.77, 2);
    expect(smallestChange(4.2)).toBeCloseTo(4.2 * 2.77, 1);
  });

  // Variance of a mean of n is s² / n: two takes a day on both days make it smaller by √2.
  it('is smaller for the means of several takes', () => {
    expect(smallestChange(1, 2, 2)).toBeCloseTo(1.96, 12);
    expect(smallestChange(1, 1, 4)).toBeCloseTo(1.96 * Math.sqrt(1.25), 12);
  });

  // Definition of the 95 % interval: of pairs of takes that differ by chance alone, about one in twenty goes beyond.
  it('lets about one in twenty pairs pass that differ by chance alone', () => {
    const normal = normals(20260302);
    let beyond = 0;
    for (let pair = 0; pair < 20_000; pair++) if (Math.abs(normal() - normal()) > smallestChange(1)) beyond += 1;
    expect(beyond / 20_000).toBeGreaterThan(0.045);
    expect(beyond / 20_000).toBeLessThan(0.055);
  });
});

/** Standard normal numbers from a fixed start. Source: Box & Muller 1958; Park & Miller 1988 for the generator. */
function normals(start: number): () => number {
  let state = start;
  const next = (): number => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  return () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
}

// Source: definition; the sides of what is wanted are those of the trade (common practice).
describe('two days', () => {
  const most = { low: null, high: 0 };
  const contrast = { low: 3, high: null };
  const tempo = { low: 100, high: 100 };
  const fermata = { low: 1.25, high: 3 };

  it.each([
    ['an equal number', 4, 4, 1, most, 'none'],
    ['a difference as large as the noise', 4, 3, 1, most, 'none'],
    ['fewer errors', 4, 2, 1, most, 'better'],
    ['more errors', 2, 4, 1, most, 'worse'],
    ['a contrast that can be heard now', 1, 11, 3, contrast, 'better'],
    ['a contrast that is large and becomes larger', 8, 14, 3, contrast, 'different'],
    ['a contrast that is lost', 8, 1, 3, contrast, 'worse'],
    ['from below nearer to the mark', 85, 98, 4, tempo, 'better'],
    ['from above away from the mark', 101, 109, 4, tempo, 'worse'],
    ['as far above the mark as below before', 94, 106, 4, tempo, 'different'],
    ['a little nearer, on the other side', 94, 105, 4, tempo, 'different'],
    ['a little further away, on the other side', 94, 108, 4, tempo, 'different'],
    ['from the mark itself, by little more than the noise', 100, 104.1, 4, tempo, 'worse'],
    ['to the mark itself, by little more than the noise', 95.9, 100, 4, tempo, 'better'],
    ['a long fermata that comes to a usual length', 3.3, 1.5, 0.7, fermata, 'better'],
    ['a usual fermata that becomes long', 2.2, 3.2, 0.7, fermata, 'worse'],
    ['a fermata within the usual', 1.4, 2.8, 0.7, fermata, 'different'],
  ] as const)('%s: %d to %d', (_what, from, to, smallest, wanted, verdict) => {
    expect(compareDays(from, to, smallest, wanted)).toBe(verdict);
  });
});
