import { GridSums } from './grid-sums.js';
import type { PitchGrid } from './pitch-grid.js';

/** Answers, in constant time, how much of a stretch of sound has a given pitch. */
export interface SegmentEvidence {
  /** voiced seconds between two frames */
  voicedSeconds(from: number, to: number): number;
  /** the same with what is left of louder tones counted less */
  heldSeconds(from: number, to: number): number;
  /** share of the voiced time, 0 to 1, in which this semitone sounds, releases counted less; 0 when nothing is voiced */
  share(midi: number, from: number, to: number): number;
  /** the semitone with the largest share */
  strongest(from: number, to: number): { readonly midi: number; readonly share: number };
}

/**
 * @param grid evidence a frame and semitone
 * @returns sums over any stretch of frames [from, to)
 *
 * Source: definition (summed-area sums).
 */
export function createSegmentEvidence(grid: PitchGrid): SegmentEvidence {
  const { frames, pitches, sounding, voicing, hopSeconds, lowestMidi } = grid;
  const voiced = new Float64Array(frames + 1);
  const weighed = new Float64Array(frames + 1);
  for (let f = 0; f < frames; f++) {
    voiced[f + 1] = voiced[f]! + sounding[f]!;
    weighed[f + 1] = weighed[f]! + voicing[f]!;
  }
  const sums = new GridSums(grid);
  const inside = (frame: number) => Math.min(frames, Math.max(0, frame));
  const shareAt = (place: number, from: number, to: number): number => {
    const total = weighed[to]! - weighed[from]!;
    if (total <= 0 || place < 0 || place >= pitches) return 0;
    return (sums.at(to, place) - sums.at(from, place)) / total;
  };
  return {
    voicedSeconds: (from, to) => (voiced[inside(to)]! - voiced[inside(from)]!) * hopSeconds,
    heldSeconds: (from, to) => (weighed[inside(to)]! - weighed[inside(from)]!) * hopSeconds,
    share: (midi, from, to) => shareAt(midi - lowestMidi, inside(from), inside(to)),
    strongest(from, to) {
      const best = sums.strongest(inside(from), inside(to));
      const share = shareAt(best, inside(from), inside(to));
      return share > 0 ? { midi: best + lowestMidi, share } : { midi: lowestMidi, share: 0 };
    },
  };
}
