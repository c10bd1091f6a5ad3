import { describe, expect, it } from 'vitest';
import { fitHuberModel } from '../../src/measure/gain/fit-huber-model.js';
import { planCourse } from '../../src/measure/gain/plan-course.js';
import { measureTake } from '../../src/measure/index.js';
import { dynamic, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';

describe('a model with outliers', () => {
  it('is found although one number of twelve is far off', () => {
    const x = Float64Array.from({ length: 12 }, (_, i) => i);
    const z = x.map((v) => (v % 3) - 1);
    const y = x.map((v, i) => 2 + 0.5 * v - 3 * z[i]! + (i === 7 ? 40 : 0));
    const fitted = fitHuberModel([new Float64Array(12).fill(1), x, z], y)!;
    // Source: the numbers the model was made from; Huber 1981, an outlier moves the fit by a bounded amount.
    expect(fitted.coefficients[0]).toBeCloseTo(2, 1);
    expect(fitted.coefficients[1]).toBeCloseTo(0.5, 1);
    expect(fitted.coefficients[2]).toBeCloseTo(-3, 1);
  });

  it('is none where two columns say the same', () => {
    const x = Float64Array.from({ length: 8 }, (_, i) => i);
    expect(fitHuberModel([x, x], x)).toBeNull();
  });
});

describe('the course of a gain', () => {
  // Source: step response of a first-order low-pass, 1 − e^(−t/τ), read at the middle of each note of one second.
  it('comes after a step as a first-order low-pass does', () => {
    const onsets = Float64Array.from({ length: 12 }, (_, i) => i);
    const step = onsets.map((t) => (t < 6 ? 0 : 1));
    const course = planCourse(onsets, step, { looksAhead: false, seconds: 2 });
    [0.5, 1.5, 2.5, 3.5].forEach((after, k) => {
      expect(Math.abs(course[6 + k]! - (1 - Math.exp(-after / 2)))).toBeLessThan(0.02);
    });
    expect(course[5]).toBe(0);
  });

  it('is already under way before a step when it looks ahead', () => {
    const onsets = Float64Array.from({ length: 12 }, (_, i) => i);
    const course = planCourse(
      onsets,
      onsets.map((t) => (t < 6 ? 0 : 1)),
      { looksAhead: true, seconds: 1 },
    );
    // Source: table of the normal distribution, P(z < −0.5) = 0.3085 and P(z < 0.5) = 0.6915.
    expect(course[5]).toBeCloseTo(0.3085, 2);
    expect(course[6]).toBeCloseTo(0.6915, 2);
  });
});

/** Eight passages of eight quarters at one a second, soft and loud in turn. */
const PART = smallPart(
  Array.from({ length: 64 }, (_, i) => ({ midi: 60 + ((5 * i) % 12), quarters: 1 })),
  { dynamics: Array.from({ length: 8 }, (_, k) => dynamic(k % 2 === 0 ? 'p' : 'f', 8 * k, 8 * k, 8 * k + 7)) },
);
/** A scatter that repeats nowhere, so that chance plays its part; the golden ratio's multiples are spread evenly. */
const scatter = (i: number): number => 2 * (((i * 0.618034) % 1) - 0.5);

function rides(levelOf: (index: number) => number): boolean {
  const notes = playEvenly(PART).map((note) => ({ ...note, levelDb: levelOf(note.index) + scatter(note.index) }));
  return measureTake(handContext(PART, notes)).recording.levelRiding;
}

const loud = (i: number): boolean => Math.floor(i / 8) % 2 === 1;

describe('an automatic gain', () => {
  // Source: definition of automatic gain control: what changes at once comes back with its time constant.
  it('is told by contrasts that are taken back', () => {
    expect(rides((i) => -24 + (loud(i) ? 8 : -8) * Math.exp(-((i % 8) + 0.5) / 1.5))).toBe(true);
  });

  it('is not suspected of a player who stays with the marks', () => {
    expect(rides((i) => (loud(i) ? -20 : -28))).toBe(false);
  });

  it('is not suspected of a player without any contrast', () => {
    expect(rides(() => -24)).toBe(false);
  });
});
