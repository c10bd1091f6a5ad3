import type { SegmentEvidence } from './grid/segment-evidence.js';

/** Periods repeat an octave or two lower as well; so much of the strongest evidence is near enough to it. */
const NEARLY = 0.6;
const OCTAVES = [-24, -12, 12, 24];

/**
 * What sounds in a stretch: of the semitone with most evidence and its octaves with nearly as much, the one nearest to
 * what is expected there.
 *
 * @param evidence sums over the frames
 * @param from first pitch frame
 * @param to frame after the last
 * @param expectedMidi a pitch that would not surprise
 * @returns the semitone and its share
 */
export function chooseOctave(
  evidence: SegmentEvidence,
  from: number,
  to: number,
  expectedMidi: number,
): { readonly midi: number; readonly share: number } {
  const strongest = evidence.strongest(from, to);
  let chosen = strongest;
  for (const away of OCTAVES) {
    const midi = strongest.midi + away;
    if (Math.abs(midi - expectedMidi) >= Math.abs(chosen.midi - expectedMidi)) continue;
    const share = evidence.share(midi, from, to);
    if (share > 0 && share >= NEARLY * strongest.share) chosen = { midi, share };
  }
  return chosen;
}
