import type { DecodedSegment, DecodeInput } from './fine/types.js';

/** Where so much of what missing notes would take is filled with sound of another pitch, they were not left out. */
const LEAST_FILLED = 0.5;

/**
 * Notes of a piece that were not found although something sounds in their place: they may have been played and only not be
 * made out, so nobody is told to have left them out.
 *
 * @param input the piece as it was searched
 * @param segments what was found, in order of time
 * @returns indexes of such notes
 */
export function notMadeOut(input: DecodeInput, segments: readonly DecodedSegment[]): Set<number> {
  const { notes } = input;
  const placeOf = new Map(notes.map((note, n) => [note.index, n]));
  const found = segments.filter((s) => s.index !== null);
  const unsure = new Set<number>();
  found.forEach((segment, k) => {
    const next = found[k + 1];
    const from = placeOf.get(segment.index!)!;
    const to = next === undefined ? notes.length : placeOf.get(next.index!)!;
    const missing = notes.slice(from + 1, to);
    if (next === undefined || missing.length === 0) return;
    const seconds = missing.reduce((sum, note) => sum + note.durationQuarters, 0) * input.pace[from]!;
    const end = found[k + 2]?.fromFrame ?? next.toFrame;
    const pitches = new Set([notes[from]!.soundingMidi, notes[to]!.soundingMidi]);
    if (otherSound(input, pitches, segment.fromFrame, end) < LEAST_FILLED * seconds) return;
    for (const note of missing) unsure.add(note.index);
  });
  return unsure;
}

/** Seconds of sound between two frames at none of these pitches. */
function otherSound(input: DecodeInput, pitches: ReadonlySet<number>, from: number, to: number): number {
  const { evidence, offsetSemitones } = input;
  let share = 0;
  for (const midi of pitches) share += evidence.share(midi + offsetSemitones, from, to);
  return evidence.voicedSeconds(from, to) * (1 - Math.min(1, share));
}
