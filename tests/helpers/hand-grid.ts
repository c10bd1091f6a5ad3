import type { PitchGrid } from '../../src/align/pitch-grid.js';

/** What is plainly heard in one frame; null is silence. */
export type FramePitch = number | null;

export const HOP_SECONDS = 0.006;

/** So many frames of each pitch, one after the other. */
export function framesOf(...stretches: readonly (readonly [midi: FramePitch, frames: number])[]): FramePitch[] {
  return stretches.flatMap(([midi, frames]) => Array.from({ length: frames }, () => midi));
}

/**
 * A grid from 50 to 90 in which each frame has one pitch, fully sure; `doubt` gives every other pitch some evidence.
 */
export function handGrid(
  frames: readonly FramePitch[],
  doubt: (frame: number, midi: number) => number = () => 0,
): PitchGrid {
  const [lowestMidi, pitches] = [50, 41];
  const salience = new Float32Array(frames.length * pitches);
  frames.forEach((sounding, f) => {
    if (sounding === null) return;
    for (let p = 0; p < pitches; p++) {
      const midi = p + lowestMidi;
      salience[f * pitches + p] = midi === sounding ? 1 : doubt(f, midi);
    }
  });
  return {
    frames: frames.length,
    hopSeconds: HOP_SECONDS,
    lowestMidi,
    pitches,
    salience,
    sounding: Float32Array.from(frames, (midi) => (midi === null ? 0 : 1)),
    voicing: Float32Array.from(frames, (midi) => (midi === null ? 0 : 1)),
    strongest: Int16Array.from(frames, (midi) => midi ?? -1),
    levelDb: Float32Array.from(frames, (midi) => (midi === null ? -80 : -20)),
  };
}
