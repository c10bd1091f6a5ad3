import type { PitchRange } from '../features/index.js';
import type { Part } from '../score/index.js';

/** Room below the part's lowest note. Every semitone here lengthens the window and blurs what happens in time. */
const BELOW_SEMITONES = 0;
/** Room above the part's highest note, for wrong notes; a take in another octave or transposition is heard by its lower notes. */
const ABOVE_SEMITONES = 4;

/**
 * @param part the part that should be played
 * @returns sounding pitches to listen for: those of the part and some room around them for what may be played instead
 *
 * Source: definition.
 */
export function listeningRange(part: Part): PitchRange {
  const pitches = part.notes.map((note) => note.soundingMidi);
  return {
    lowestMidi: Math.min(...pitches) - BELOW_SEMITONES,
    highestMidi: Math.max(...pitches) + ABOVE_SEMITONES,
  };
}
