import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findCoarsePath } from '../../src/align/coarse/find-coarse-path.js';
import { smallPart } from '../demo/small-part.js';
import { framesOf, HOP_SECONDS, handGrid } from '../helpers/hand-grid.js';

/** Frames in one step of the coarse search. */
const STEP_FRAMES = 4;
const STEP_SECONDS = STEP_FRAMES * HOP_SECONDS;

/** Every way to cut `steps` into `count` stretches that are not empty: the step at which each begins. */
function allCuts(steps: number, count: number, from = 0): number[][] {
  if (count === 1) return [[from]];
  const cuts: number[][] = [];
  for (let next = from + 1; next <= steps - (count - 1); next++) {
    for (const rest of allCuts(steps, count - 1, next)) cuts.push([from, ...rest]);
  }
  return cuts;
}

describe('the coarse path', () => {
  /** Neighbours differ, so that every border can be heard. */
  const melody = fc
    .array(
      fc.record({ up: fc.integer({ min: 1, max: 3 }), sign: fc.boolean(), steps: fc.integer({ min: 3, max: 5 }) }),
      {
        minLength: 3,
        maxLength: 5,
      },
    )
    .map((moves) => {
      let midi = 70;
      return moves.map(({ up, sign, steps }) => {
        midi += sign ? up : -up;
        return { midi, steps };
      });
    });
  const doubts = fc.array(fc.double({ min: 0, max: 0.35, noNaN: true }), { minLength: 97, maxLength: 97 });

  // Source: exhaustive search. All monotone paths are tried, each weighed by its matched minus its mismatched time.
  it('is the best of all paths, found by trying them all', () => {
    fc.assert(
      fc.property(melody, doubts, (notes, doubt) => {
        const part = smallPart(notes.map(({ midi }) => ({ midi, quarters: 1 })));
        const frames = framesOf(...notes.map(({ midi, steps }) => [midi, steps * STEP_FRAMES] as const));
        const evidence = (step: number, midi: number): number => doubt[(step * 41 + midi) % doubt.length]!;
        const grid = handGrid(frames, (f, midi) => evidence(Math.floor(f / STEP_FRAMES), midi));
        const steps = frames.length / STEP_FRAMES;
        const match = (step: number, n: number): number => {
          const midi = notes[n]!.midi;
          return frames[step * STEP_FRAMES] === midi ? 1 : 2 * evidence(step, midi) - 1;
        };
        let best = { value: Number.NEGATIVE_INFINITY, cuts: [] as number[] };
        for (const cuts of allCuts(steps, notes.length)) {
          let value = 0;
          for (let s = 0; s < steps; s++)
            value += match(
              s,
              cuts.findLastIndex((from) => from <= s),
            );
          if (value > best.value) best = { value, cuts };
        }
        const { runs, fit } = findCoarsePath(grid, part, 0);
        expect(runs).toHaveLength(1);
        expect(runs[0]!.onsets.map((t) => Math.round(t / STEP_SECONDS))).toEqual(best.cuts);
        expect(fit).toBeCloseTo(best.value / steps, 4);
      }),
      { numRuns: 60 },
    );
  });

  const TUNE = [60, 64, 62, 65, 67, 64, 69, 65, 71, 67, 72, 69];
  const part = smallPart(TUNE.map((midi) => ({ midi, quarters: 1 })));
  const played = (...notes: readonly (readonly [number | null, number])[]) =>
    handGrid(framesOf(...notes.map(([midi, steps]) => [midi, steps * STEP_FRAMES] as const)));
  const straight = TUNE.map((midi) => [midi, 20] as const);

  it('of a take that is exactly the part costs nothing: fit 1, one run', () => {
    const { runs, fit } = findCoarsePath(played(...straight), part, 0);
    expect(fit).toBeCloseTo(1, 6);
    expect(runs).toHaveLength(1);
    expect(runs[0]).toMatchObject({ firstNote: 0, lastNote: TUNE.length - 1 });
    expect(runs[0]!.onsets.map((t) => Math.round(t / STEP_SECONDS))).toEqual(TUNE.map((_, i) => 20 * i));
  });

  it('of a transposed take fits at that transposition and nowhere else', () => {
    const grid = played(...TUNE.map((midi) => [midi + 3, 20] as const));
    expect(findCoarsePath(grid, part, 3).fit).toBeCloseTo(1, 6);
    expect(findCoarsePath(grid, part, 0).fit).toBeLessThan(0.3);
  });

  it('stays in order: notes and times of a run only go forwards, whatever is heard', () => {
    const anything = fc.array(fc.tuple(fc.option(fc.integer({ min: 58, max: 74 })), fc.integer({ min: 1, max: 30 })), {
      minLength: 1,
      maxLength: 30,
    });
    fc.assert(
      fc.property(anything, (notes) => {
        const { runs, fit } = findCoarsePath(played(...notes), part, 0);
        expect(fit).toBeGreaterThanOrEqual(-1 - 1e-6);
        expect(fit).toBeLessThanOrEqual(1 + 1e-6);
        let last = 0;
        for (const run of runs) {
          expect(run.startSeconds).toBeGreaterThanOrEqual(last);
          expect(run.endSeconds).toBeGreaterThanOrEqual(run.startSeconds);
          expect(run.onsets).toHaveLength(run.lastNote - run.firstNote + 1);
          const times = run.onsets.filter((t) => Number.isFinite(t));
          times.forEach((t, k) => {
            expect(t).toBeGreaterThanOrEqual(k === 0 ? last - STEP_SECONDS : times[k - 1]! + STEP_SECONDS / 2);
          });
          last = run.endSeconds;
        }
      }),
      { numRuns: 60 },
    );
  });

  it('has a new run where the player goes back after a silence', () => {
    const again = [...straight.slice(0, 7), [null, 60] as const, ...straight.slice(4)];
    const { runs } = findCoarsePath(played(...again), part, 0);
    expect(runs.map((run) => [run.firstNote, run.lastNote])).toEqual([
      [0, 6],
      [4, TUNE.length - 1],
    ]);
    expect(Math.round(runs[1]!.onsets[0]! / STEP_SECONDS)).toBe(7 * 20 + 60);
  });

  it('passes over a note that is not there and goes on in the same run', () => {
    const { runs } = findCoarsePath(played(...straight.slice(0, 5), ...straight.slice(6)), part, 0);
    expect(runs).toHaveLength(1);
    expect(runs[0]).toMatchObject({ firstNote: 0, lastNote: TUNE.length - 1 });
    expect(runs[0]!.onsets.flatMap((t, i) => (Number.isNaN(t) ? [i] : []))).toContain(5);
  });

  it('leaves out what sounds before the first and after the last note', () => {
    const around = [[69, 60] as const, [null, 40] as const, ...straight, [null, 40] as const, [70, 20] as const];
    const [run, ...others] = findCoarsePath(played(...around), part, 0).runs;
    expect(others).toEqual([]);
    expect(Math.round(run!.onsets[0]! / STEP_SECONDS)).toBe(100);
    expect(run!.endSeconds / STEP_SECONDS).toBeLessThanOrEqual(100 + 20 * TUNE.length + 41);
  });
});
