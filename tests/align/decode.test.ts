import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodePiece } from '../../src/align/fine/decode-piece.js';
import { createSegmentEvidence } from '../../src/align/grid/segment-evidence.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { type FramePitch, framesOf, HOP_SECONDS, handGrid } from '../helpers/hand-grid.js';

/** One quarter of the parts here lasts so many frames. */
const QUARTER = 80;

interface Played {
  readonly frames: readonly FramePitch[];
  /** frames at which something attacks or changes */
  readonly attacks: readonly number[];
  /** further moments to choose from, without an attack */
  readonly decoys?: readonly number[];
}

/** Runs the search on hand-made evidence; rough onsets are those of the part at its pace. */
function decode(sketches: readonly NoteSketch[], { frames, attacks, decoys = [] }: Played) {
  const { notes } = smallPart(sketches);
  const moments = [...attacks, ...decoys].sort((a, b) => a - b);
  const changes = (frame: number): number => (frames[frame - 1] === frames[frame] ? 0 : 1);
  const pace = QUARTER * HOP_SECONDS;
  return decodePiece({
    notes,
    graceAfter: notes.map(() => false),
    roughOnsets: notes.map((note) => note.onsetQuarters * pace),
    startSeconds: 0,
    endSeconds: frames.length * HOP_SECONDS,
    pace: new Float64Array(notes.length).fill(pace),
    boundaries: {
      frame: Int32Array.from(moments),
      attack: Float32Array.from(moments, (frame) => (attacks.includes(frame) ? 1 : 0.15)),
      pitchChange: Float32Array.from(moments, changes),
    },
    evidence: createSegmentEvidence(handGrid(frames)),
    hopSeconds: HOP_SECONDS,
    offsetSemitones: 0,
  });
}

const quarters = (...midi: readonly number[]): NoteSketch[] => midi.map((m) => ({ midi: m, quarters: 1 }));

/** Every choice of `count` from `values`, in order. */
function choices(values: readonly number[], count: number): number[][] {
  if (count === 0) return [[]];
  return values.flatMap((value, i) => choices(values.slice(i + 1), count - 1).map((rest) => [value, ...rest]));
}

describe('the notes of one piece of playing', () => {
  // Source: exhaustive search over all ways to choose onsets from the moments there are; the best has most frames at the
  // pitch that is written.
  it('begin where trying every choice of moments says', () => {
    const note = fc.record({ midi: fc.integer({ min: 60, max: 75 }), late: fc.integer({ min: -15, max: 15 }) });
    const decoys = fc.uniqueArray(fc.integer({ min: 1, max: 13 }), { maxLength: 4 });
    fc.assert(
      fc.property(
        fc.uniqueArray(note, { minLength: 3, maxLength: 4, selector: (n) => n.midi }),
        decoys,
        (melody, extra) => {
          const onsets = melody.map(({ late }, i) => (i === 0 ? 0 : QUARTER * i + late));
          const end = QUARTER * melody.length;
          const frames = framesOf(...melody.map(({ midi }, i) => [midi, (onsets[i + 1] ?? end) - onsets[i]!] as const));
          const away = extra
            .map((k) => k * 23)
            .filter((f) => f < end - 8 && onsets.every((onset) => Math.abs(onset - f) > 8));
          const moments = [...onsets, ...away].sort((a, b) => a - b);
          let best = { matched: -1, chosen: [] as number[] };
          for (const chosen of choices(moments, melody.length)) {
            const matched = frames.filter(
              (sounding, f) => sounding === melody[chosen.findLastIndex((c) => c <= f)]?.midi,
            ).length;
            if (matched > best.matched) best = { matched, chosen };
          }
          const found = decode(quarters(...melody.map(({ midi }) => midi)), { frames, attacks: onsets, decoys: away });
          expect(found.map((segment) => segment.index)).toEqual(melody.map((_, i) => i));
          expect(found.map((segment) => segment.fromFrame)).toEqual(best.chosen);
        },
      ),
      { numRuns: 80 },
    );
  });

  it('follow each other without a gap', () => {
    const found = decode(quarters(60, 64, 67), {
      frames: framesOf([60, 80], [64, 80], [67, 80]),
      attacks: [0, 80, 160],
    });
    expect(found).toEqual([
      { index: 0, fromFrame: 0, toFrame: 80 },
      { index: 1, fromFrame: 80, toFrame: 160 },
      { index: 2, fromFrame: 160, toFrame: 240 },
    ]);
  });

  it('keep their places when one of them is played at another pitch', () => {
    const found = decode(quarters(60, 64, 67, 65), {
      frames: framesOf([60, 80], [64, 80], [70, 80], [65, 80]),
      attacks: [0, 80, 160, 240],
    });
    expect(found.map((s) => [s.index, s.fromFrame])).toEqual([
      [0, 0],
      [1, 80],
      [2, 160],
      [3, 240],
    ]);
  });

  it('leave out the one that was not played', () => {
    const frames = framesOf([60, 80], [64, 80], [null, 80], [65, 80], [69, 80]);
    const found = decode(quarters(60, 64, 67, 65, 69), { frames, attacks: [0, 80, 240, 320] });
    expect(found.map((s) => [s.index, s.fromFrame])).toEqual([
      [0, 0],
      [1, 80],
      [3, 240],
      [4, 320],
    ]);
  });

  it('have a stranger among them when an extra note slips in', () => {
    const frames = framesOf([60, 80], [64, 50], [66, 30], [67, 80], [65, 80]);
    const found = decode(quarters(60, 64, 67, 65), { frames, attacks: [0, 80, 130, 160, 240] });
    expect(found.map((s) => [s.index, s.fromFrame])).toEqual([
      [0, 0],
      [1, 80],
      [null, 130],
      [2, 160],
      [3, 240],
    ]);
  });

  it('are told apart by their attacks when they repeat one pitch', () => {
    const found = decode(quarters(60, 60, 60, 64), {
      frames: framesOf([60, 240], [64, 80]),
      attacks: [0, 80, 160, 240],
      decoys: [40, 120, 200],
    });
    expect(found.map((s) => s.fromFrame)).toEqual([0, 80, 160, 240]);
  });

  it('have a fermata that may last longer than written', () => {
    const held: NoteSketch[] = [...quarters(60, 64), { midi: 67, quarters: 1, fermata: true }, ...quarters(65)];
    const frames = framesOf([60, 80], [64, 80], [67, 170], [65, 80]);
    const found = decode(held, { frames, attacks: [0, 80, 160, 330] });
    expect(found.map((s) => s.fromFrame)).toEqual([0, 80, 160, 330]);
  });
});
