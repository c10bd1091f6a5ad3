import type { PartNote } from '../score/index.js';
import { chooseOctave } from './choose-octave.js';
import type { SegmentEvidence } from './grid/segment-evidence.js';
import type { NoteStatus } from './types.js';

/** What was played in the stretch of sound given to a note. */
export interface SegmentVerdict {
  readonly status: Exclude<NoteStatus, 'left-out'>;
  /** semitone in the part's own pitch */
  readonly playedMidi: number;
  /** 0 to 1 */
  readonly confidence: number;
}

/** Another pitch must have this much of the sound, and this much more of it than the written one. */
const OTHER_SHARE = 0.6;
const OTHER_MARGIN = 0.3;
/** Octaves and twelfths are confused by the ear of a program, so they must be plainer. */
const HARMONIC_MARGIN = 0.6;
const HARMONIC_STEPS = new Set([12, 19, 24]);
/** Nobody slips by more than this; such a pitch is a mistake of listening. */
const WIDEST_SLIP = 13;
const WRITTEN_SHARE = 0.3;
const LEAST_VOICED_SECONDS = 0.03;

/**
 * @param note the note as written
 * @param from first pitch frame of its stretch
 * @param to frame after the last
 * @param evidence sums over the frames
 * @param offsetSemitones by which the whole take sounds above the part
 * @returns as written, another pitch, or unclear, with confidence
 *
 * Margins set so that doubt never becomes an accusation.
 */
export function judgeSegment(
  note: PartNote,
  from: number,
  to: number,
  evidence: SegmentEvidence,
  offsetSemitones: number,
): SegmentVerdict {
  const wanted = note.soundingMidi + offsetSemitones;
  const written = evidence.share(wanted, from, to);
  const voicedSeconds = evidence.voicedSeconds(from, to);
  const other = chooseOctave(evidence, from, to, wanted);
  const enough = Math.min(1, voicedSeconds / 0.08);
  if (other.midi !== wanted && Math.abs(other.midi - wanted) <= WIDEST_SLIP && voicedSeconds >= LEAST_VOICED_SECONDS) {
    const margin = HARMONIC_STEPS.has(Math.abs(other.midi - wanted)) ? HARMONIC_MARGIN : OTHER_MARGIN;
    if (other.share >= OTHER_SHARE && other.share - written >= margin) {
      const confidence = enough * Math.min(1, (other.share - written) / 0.8);
      return { status: 'other-pitch', playedMidi: other.midi - offsetSemitones, confidence };
    }
  }
  if (written >= WRITTEN_SHARE || voicedSeconds < LEAST_VOICED_SECONDS) {
    return { status: 'as-written', playedMidi: note.soundingMidi, confidence: enough * Math.min(1, written / 0.8) };
  }
  return { status: 'unclear', playedMidi: note.soundingMidi, confidence: 0.2 };
}
