import { CANDIDATES, type Features } from '../../features/index.js';

const WITHIN_SEMITONES = 0.8;

/** The pitch of a stretch of sound, frame by frame where it could be heard, in time order. */
export interface PitchCourse {
  readonly seconds: number[];
  /** from the pitch that was asked about */
  readonly cents: number[];
}

/**
 * @param features what was heard
 * @param soundedMidi semitone that sounded in the recording
 * @param fromSeconds from where on
 * @param toSeconds up to where
 * @param leastClarity periodicity below which a frame says nothing, 0 to 1
 * @returns what of the stretch is near that semitone
 */
export function pitchCourse(
  features: Features,
  soundedMidi: number,
  fromSeconds: number,
  toSeconds: number,
  leastClarity: number,
): PitchCourse {
  const { pitchHopSeconds: hop, pitchFrames, candidateMidi, candidateClarity } = features;
  const course: PitchCourse = { seconds: [], cents: [] };
  const last = Math.min(Math.floor(toSeconds / hop), pitchFrames - 1);
  for (let f = Math.max(0, Math.ceil(fromSeconds / hop)); f <= last; f++) {
    for (let c = f * CANDIDATES; c < (f + 1) * CANDIDATES; c++) {
      const midi = candidateMidi[c]!;
      if (Math.abs(midi - soundedMidi) > WITHIN_SEMITONES) continue;
      if (candidateClarity[c]! >= leastClarity) {
        course.seconds.push(f * hop);
        course.cents.push(100 * (midi - soundedMidi));
      }
      break;
    }
  }
  return course;
}
