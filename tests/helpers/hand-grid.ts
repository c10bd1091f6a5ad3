import type { PitchGrid } from '../../src/align/grid/pitch-grid.js';

/** What is plainly heard in one frame; null is silence. */
export type FramePitch = number | null;

export const HOP_SECONDS = 0.006;

/** So many frames of each pitch, one after the other. */
export function framesOf(...stretches: readonly (readonly [midi: FramePitch, frames: number])[]): FramePitch[] {
  return stretches.flatMap(([midi, frames]) => Array.from({ length: frames }, () => midi));
}

/**
 * A grid from 50 to 90 in which each frame has one pitch, fully sure unless `sure` says otherwise; `doubt` gives every other
 * pitch some evidence.
 */
export function handGrid(
  frames: readonly FramePitch[],
  doubt: (frame: number, midi: number) => number = () => 0,
  sure: (frame: number) => number = () => 1,
): PitchGrid {
  const [lowestMidi, pitches] = [50, 41];
  const evidence = (sounding: FramePitch, f: number, midi: number): number =>
    sounding === null ? 0 : midi === sounding ? sure(f) : doubt(f, midi);
  const rows = frames.map((sounding, f) =>
    Array.from({ length: pitches }, (_, place) => ({ place, value: evidence(sounding, f, place + lowestMidi) })).filter(
      ({ value }) => value > 0,
    ),
  );
  const entries = rows.flat();
  let end = 0;
  const ends = rows.map((row) => (end += row.length));
  return {
    frames: frames.length,
    hopSeconds: HOP_SECONDS,
    lowestMidi,
    pitches,
    rowStart: Int32Array.from([0, ...ends]),
    place: Uint16Array.from(entries, ({ place }) => place),
    salience: Float32Array.from(entries, ({ value }) => value),
    byPeriod: Float32Array.from(entries, ({ value }) => value),
    sounding: Float32Array.from(frames, (midi) => (midi === null ? 0 : 1)),
    voicing: Float32Array.from(frames, (midi) => (midi === null ? 0 : 1)),
    strongest: Int16Array.from(frames, (midi) => midi ?? -1),
    levelDb: Float32Array.from(frames, (midi) => (midi === null ? -80 : -20)),
  };
}
