/**
 * A second opinion on the tuning of notes, by an engine that shares no code with ours. It is told which note to look for:
 * it is no judge of which note was played, nor of when.
 *
 * Conventions: seconds from the first sample; MIDI note numbers at A = 440 Hz; cents, sharp positive. The engine is loaded
 * with the first question.
 */
export { type Colour, hearColours } from './hear-colours.js';
export { hearPitches, type NoteSpan, type SampleStretch } from './hear-pitches.js';
