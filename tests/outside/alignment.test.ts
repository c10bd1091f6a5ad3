import DynamicTimeWarping from 'dynamic-time-warping';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findCoarsePath } from '../../src/align/coarse/find-coarse-path.js';
import { CANDIDATES } from '../../src/features/index.js';
import type { Part } from '../../src/score/index.js';
import { smallPart } from '../demo/small-part.js';
import { HOP_SECONDS, handGrid } from '../helpers/hand-grid.js';
import { demoPart, type HeardTake, hearTake, middle, shareWithin } from '../helpers/heard-take.js';

/** Frames in one step of the coarse search. */
const STEP_FRAMES = 4;
const STEP_SECONDS = STEP_FRAMES * HOP_SECONDS;

/** A melody whose neighbours differ, the steps each note sounds, and how sure every step is of its pitch and of others. */
const problem = fc
  .record({
    moves: fc.array(fc.tuple(fc.constantFrom(-5, -3, -2, -1, 1, 2, 3, 5), fc.integer({ min: 3, max: 9 })), {
      minLength: 4,
      maxLength: 12,
    }),
    sure: fc.array(fc.double({ min: 0.55, max: 1, noNaN: true }), { minLength: 53, maxLength: 53 }),
    doubt: fc.array(fc.double({ min: 0, max: 0.5, noNaN: true }), { minLength: 97, maxLength: 97 }),
  })
  .map(({ moves, sure, doubt }) => {
    let midi = 70;
    const notes = moves.map(([by, steps]) => {
      midi = midi + by > 88 || midi + by < 52 ? midi - by : midi + by;
      return { midi, steps };
    });
    const sounding = notes.flatMap((note) => Array.from({ length: note.steps }, () => note.midi));
    const salience = (step: number, pitch: number): number =>
      sounding[step] === pitch ? sure[step % sure.length]! : doubt[(step * 41 + pitch) % doubt.length]!;
    return { notes, sounding, salience };
  });

/** Evidence as the listening room gives it, four frames a step. */
function gridOf(sounding: readonly number[], salience: (step: number, pitch: number) => number) {
  const frames = sounding.flatMap((midi) => Array.from({ length: STEP_FRAMES }, () => midi));
  const evidence = (f: number, midi: number): number => salience(Math.floor(f / STEP_FRAMES), midi);
  return handGrid(frames, evidence, (f) => evidence(f, frames[f]!));
}

describe('the coarse path and an independent dynamic time warping', () => {
  // Source: the npm package dynamic-time-warping 1.0.0, which minimises the sum of the distances along a monotone path.
  it('find the same path at the same price wherever both can take it', () => {
    let compared = 0;
    fc.assert(
      fc.property(problem, ({ notes, sounding, salience }) => {
        const part = smallPart(notes.map(({ midi, steps }) => ({ midi, quarters: steps })));
        const theirs = new DynamicTimeWarping(
          notes.map(({ midi }) => midi),
          sounding.map((_, step) => step),
          (midi, step) => 1 - salience(step, midi),
        );
        const distance = theirs.getDistance();
        const path = theirs.getPath();
        const begins = notes.map((_, n) => path.find(([note]) => note === n)![1]);
        // ours plays one note at a time, and a note earns nothing beyond 1.4 times its length
        const oneAtATime = new Set(path.map(([, step]) => step)).size === path.length;
        const lengths = begins.map((from, n) => (begins[n + 1] ?? sounding.length) - from);
        fc.pre(oneAtATime && lengths.every((steps, n) => steps >= 2 && steps <= 1.4 * notes[n]!.steps));
        compared++;
        const { runs, fit } = findCoarsePath(gridOf(sounding, salience), part, 0);
        expect(runs).toHaveLength(1);
        expect(runs[0]!.onsets.map((t) => Math.round(t / STEP_SECONDS))).toEqual(begins);
        // fit counts matched minus mismatched time; distance is mismatched time
        expect(fit).toBeCloseTo(1 - (2 * distance) / sounding.length, 4);
      }),
      { numRuns: 200, seed: 7 },
    );
    expect(compared).toBe(200);
  });
});

/** Pitch class of what is written, every so many quarters, and the score time of each. */
function writtenSeries(part: Part, stepQuarters: number): { midi: number; quarters: number }[] {
  const end = part.notes.at(-1)!.onsetQuarters + part.notes.at(-1)!.durationQuarters;
  return Array.from({ length: Math.floor(end / stepQuarters) }, (_, i) => {
    const quarters = i * stepQuarters;
    const note = part.notes.findLast(({ onsetQuarters }) => onsetQuarters <= quarters + 1e-6) ?? part.notes[0]!;
    return { midi: note.soundingMidi, quarters };
  });
}

/** Strongest pitch heard, every so many frames, without what is not clear. */
function heardSeries({ features }: HeardTake, everyFrames: number): { midi: number; seconds: number }[] {
  const series: { midi: number; seconds: number }[] = [];
  for (let f = 0; f < features.pitchFrames; f += everyFrames) {
    const clear = features.candidateClarity[f * CANDIDATES]! > 0.9;
    if (clear) series.push({ midi: features.candidateMidi[f * CANDIDATES]!, seconds: f * features.pitchHopSeconds });
  }
  return series;
}

/** When each note begins by a plain warping of the written onto the heard pitches. */
function warpedOnsets(heard: HeardTake): number[] {
  const written = writtenSeries(heard.part, 1 / 12);
  const sounded = heardSeries(heard, 4);
  const warping = new DynamicTimeWarping(written, sounded, (a, b) => Math.min(2, Math.abs(a.midi - b.midi)));
  const path = warping.getPath();
  return heard.part.notes.map(({ onsetQuarters }) => {
    const first = written.findIndex(({ quarters }) => quarters >= onsetQuarters - 1e-6);
    return sounded[path.find(([step]) => step === first)![1]]!.seconds;
  });
}

describe.each([
  ['at the tempo', {}],
  ['at 70 % of it, ever faster', { tempoFactor: 0.7, tempoDrift: 1.3 }],
  ['at 130 % of it, in a room of 1.2 s', { tempoFactor: 1.3, roomSeconds: 1.2 }],
] as const)('a whole take %s and a plain warping of its pitches', (_, plan) => {
  const heard = hearTake(demoPart(), { seed: 21, voice: 'clarinet', ...plan });
  const warped = warpedOnsets(heard);

  it('put the notes at the same places', () => {
    const { notes } = heard.part;
    // repeated notes look alike to a warping of pitches: only a new pitch has a place there
    const fresh = heard.alignment.notes.filter(
      ({ index }) => notes[index]?.soundingMidi !== notes[index - 1]?.soundingMidi,
    );
    const apart = fresh.map(({ index, onsetSeconds }) => Math.abs((onsetSeconds ?? Number.NaN) - warped[index]!));
    expect(fresh.length).toBeGreaterThan(70);
    expect(apart.some(Number.isNaN)).toBe(false);
    // a step of the warping is 23 ms of sound or a twelfth of a quarter of score
    expect(middle(apart)).toBeLessThan(0.05);
    expect(shareWithin(apart, 0.15)).toBeGreaterThan(0.9);
  });
});
