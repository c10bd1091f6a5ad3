import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planSearch } from '../../src/align/coarse/plan-search.js';
import { poolGrid } from '../../src/align/coarse/pool-grid.js';
import { ENTER, JUMP, searchPath } from '../../src/align/coarse/search-path.js';
import { WayBack } from '../../src/align/coarse/way-back.js';
import { GridSums } from '../../src/align/grid/grid-sums.js';
import { smallPart } from '../demo/small-part.js';
import { type FramePitch, framesOf, handGrid } from '../helpers/hand-grid.js';

/** Frames in one step of the coarse search. */
const STEP_FRAMES = 4;
/** Some evidence that looks like chance, the same in every run. */
const doubt = (f: number, midi: number): number => ((f * 7919 + midi * 104_729) % 97) / 200;

function searched(tune: readonly number[], frames: readonly FramePitch[], doubts: typeof doubt) {
  const part = smallPart(tune.map((midi) => ({ midi, quarters: 1 })));
  const grid = handGrid(frames, doubts);
  const pooled = poolGrid(grid);
  const plan = planSearch(part, grid, pooled, 0);
  return { pooled, plan, found: searchPath(pooled, plan) };
}

/**
 * The same search as its prices describe it, with everything kept: a table of the best way into every state at every step.
 * The prices are a copy of those in the source, so this proves that the search leaves nothing out by its bounds and its short
 * memory, and nothing about the prices: whether those are right only takes with known truth tell (`takes.test.ts`).
 */
function fullSearch({ pooled, plan }: Pick<ReturnType<typeof searched>, 'pooled' | 'plan'>) {
  const count = plan.pitchOf.length;
  const row = new Float32Array(pooled.pitches);
  const ways: number[][] = [];
  const jumpedFrom: number[] = [];
  let [values, heard] = [Array<number>(count).fill(-Infinity), Array<number>(count).fill(0)];
  let [entry, silent, best, lastStep, lastState] = [0, 0, -Infinity, -1, -1];
  for (let s = 0; s < pooled.steps; s++) {
    pooled.read(s, row);
    const voiced = pooled.voicing[s]!;
    const top = values.indexOf(Math.max(...values));
    const pause = silent >= Math.max(0.8 / pooled.stepSeconds, 2 / plan.unit);
    const resumed = pause && voiced >= 0.5;
    silent = voiced < 0.5 ? silent + 1 : 0;
    jumpedFrom.push(top);
    const next: number[] = [];
    const nextHeard: number[] = [];
    ways.push([]);
    for (let i = 0; i < count; i++) {
      const broken = resumed && plan.afterRest[i] === 0;
      const choices: [number, number][] = [[0, values[i]! - (resumed && heard[i]! > 0 ? 2 : broken ? 0.8 : 0)]];
      for (let ahead = 1; ahead <= Math.min(4, i); ahead++) {
        const left = i - ahead;
        const cut = Math.max(0, 1 - heard[left]! / plan.leastSteps[left]!);
        const cutOff = broken && heard[left]! < 0.45 * plan.mostSteps[left]! ? 0.8 : 0;
        choices.push([ahead, values[left]! - (ahead - 1 + cut) * 0.7 - cutOff]);
      }
      choices.push([ENTER, entry - Math.min(3 + plan.entryPrice[i]!, i * 0.7)]);
      const far = 0.25 * Math.log2(1 + Math.abs(i - top));
      if (i !== top || pause) choices.push([JUMP, values[top]! - (pause ? 0.6 : 3) - plan.entryPrice[i]! - far]);
      const [way, value] = choices.reduce((most, choice) => (choice[1] > most[1] ? choice : most));
      const soFar = way === 0 ? heard[i]! : 0;
      const match = 2 * row[plan.pitchOf[i]!]! - 1;
      const counted = match > 0 && soFar >= plan.mostSteps[i]! ? 0 : match;
      next.push(value + plan.unit * (voiced * counted - (1 - voiced) * 0.1));
      nextHeard.push(soFar + voiced);
      ways[s]!.push(way);
    }
    [values, heard] = [next, nextHeard];
    entry = Math.max(-1.5, entry - plan.unit * voiced * 0.15);
    const after = pooled.voicing.subarray(s + 1).reduceRight((sum, v) => sum + v, 0);
    values.forEach((value, i) => {
      const end = value - Math.min(3, (count - 1 - i) * 0.7) - Math.min(1.5, plan.unit * 0.15 * after);
      if (end > best) [best, lastStep, lastState] = [end, s, i];
    });
  }
  const entered: { state: number; step: number; way: number }[] = [];
  for (let step = lastStep, state = lastState; step >= 0; step--) {
    const way = ways[step]![state]!;
    if (way !== 0) entered.push({ state, step, way });
    if (way === ENTER) break;
    state = way === JUMP ? jumpedFrom[step]! : state - way;
  }
  return { entered, lastStep };
}

describe('the search for the way through a part', () => {
  const tune = fc.array(fc.integer({ min: 58, max: 72 }), { minLength: 4, maxLength: 12 });
  const pitch = fc.option(fc.integer({ min: 57, max: 73 }), { freq: 4 });
  const playing = fc.array(fc.tuple(pitch, fc.integer({ min: 1, max: 200 })), { minLength: 1, maxLength: 25 });
  const again = fc.tuple(fc.nat(11), fc.integer({ min: 8, max: 60 }), fc.integer({ min: 0, max: 240 }));

  // Source: exhaustive table (Rabiner 1989), written here without anything left out and without bounds.
  it('loses nothing by its bounds: the same way, at the same prices, as a search that keeps everything', () => {
    let jumps = 0;
    fc.assert(
      fc.property(tune, playing, again, (notes, sounds, [from, length, pause]) => {
        // the tune, a pause, the tune from somewhere on, and then anything
        const plain = (midi: number): [number, number] => [midi, length];
        const twice = [...notes.map(plain), [null, pause] as const, ...notes.slice(from % notes.length).map(plain)];
        const { found, ...problem } = searched(notes, framesOf(...twice, ...sounds), doubt);
        const full = fullSearch(problem);
        expect(found.entered).toEqual(full.entered);
        expect(found.lastStep).toBe(full.lastStep);
        jumps += full.entered.filter(({ way }) => way === JUMP).length;
      }),
      { numRuns: 120, seed: 3 },
    );
    expect(jumps).toBeGreaterThan(10);
  });

  // A table of a byte for every step and state would grow sixteenfold where take and part are four times as long.
  it('keeps no more than in proportion to the length of the take', () => {
    const bytesOf = (notes: number): number => {
      const melody = Array.from({ length: notes }, (_, i) => 60 + ((i * 5 + (i >> 3)) % 12));
      const frames = framesOf(...melody.map((midi) => [midi, 20 * STEP_FRAMES] as const));
      return searched(melody, frames, () => 0).found.bytes;
    };
    const [one, four] = [bytesOf(200), bytesOf(800)];
    expect(four).toBeLessThan(4.4 * one);
    expect(four).toBeLessThan((800 * 800 * 20) / 16);
  });
});

describe('the way back', () => {
  // Source: a plain list that forgets nothing.
  it('leads where it led, however often room is made', () => {
    const move = fc.record({ state: fc.nat(4), from: fc.nat(4), fresh: fc.boolean() });
    fc.assert(
      fc.property(fc.array(move, { minLength: 50, maxLength: 200 }), (moves) => {
        const kept = new WayBack(0);
        const roots = new Int32Array(5).fill(-1);
        const plain: number[][] = [[], [], [], [], []];
        for (let round = 0; round < 200; round++) {
          for (const [k, { state, from, fresh }] of moves.entries()) {
            kept.makeRoom(1, [roots]);
            const step = round * moves.length + k;
            roots[state] = kept.add(step, state + 1, fresh ? -1 : roots[from]!);
            plain[state] = fresh ? [step] : [step, ...plain[from]!.slice(0, 200)];
          }
        }
        for (const [state, steps] of plain.entries()) {
          expect(
            kept
              .trace(roots[state]!)
              .slice(0, 200)
              .map(({ step }) => step),
          ).toEqual(steps.slice(0, 200));
        }
      }),
      { numRuns: 10 },
    );
  });
});

describe('sums of evidence', () => {
  // Source: definition; summed here frame after frame.
  it('are those of all frames before, wherever and in whatever order they are asked for', () => {
    const frames = Array.from({ length: 12_345 }, (_, f) => 50 + (Math.floor(f / 40) % 41));
    const grid = handGrid(frames, (f, midi) => (midi % 7 === f % 7 ? doubt(f, midi) : 0));
    const place = 12;
    const plain = [0];
    for (let f = 0; f < frames.length; f++) {
      const row = [...grid.place.subarray(grid.rowStart[f], grid.rowStart[f + 1])];
      const at = row.indexOf(place);
      plain.push(plain[f]! + (at < 0 ? 0 : grid.voicing[f]! * grid.salience[grid.rowStart[f]! + at]!));
    }
    const sums = new GridSums(grid);
    fc.assert(
      fc.property(fc.nat(frames.length), fc.nat(frames.length), (a, b) => {
        expect(sums.at(a, place)).toBe(plain[a]);
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const most = sums.strongest(from, to);
        const all = Array.from({ length: grid.pitches }, (_, p) => sums.at(to, p) - sums.at(from, p));
        expect(all[most]).toBe(Math.max(...all));
      }),
      { numRuns: 300 },
    );
    // 32 pages of 256 frames of 41 semitones, and a row a page; all frames would be 4 MB
    expect(sums.bytes).toBeLessThan(2.8e6);
  });
});
