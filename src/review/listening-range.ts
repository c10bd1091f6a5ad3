import type { PitchRange } from '../features/index.js';
import type { Part } from '../score/index.js';

/** Room above the part's highest note, for wrong notes. Below there is none: it would lengthen the window and blur time. */
const ABOVE_SEMITONES = 4;

/**
 * @param part the part that should be played
 * @returns sounding pitches to listen for: those of the part and some room around them for what may be played instead
 */
export function listeningRange(part: Part): PitchRange {
  const pitches = part.notes.map((note) => note.soundingMidi);
  return {
    lowestMidi: Math.min(...pitches),
    highestMidi: Math.max(...pitches) + ABOVE_SEMITONES,
  };
}
