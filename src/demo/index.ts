/**
 * The built-in demo: an invented étude, an invented section that plays it over three weeks, and the synthesiser that
 * lets them sound. It serves as a generator of takes with known truth for the tests of the listening rooms, too.
 *
 * Conventions: times in seconds from the first sample, levels in dBFS (RMS), pitch in MIDI numbers and cents. Everything
 * follows from the seed in the plan; there is no clock and no other chance. Bytes are returned, nothing is written.
 */
export { type DemoTake, demoSection } from './demo-section.js';
export { readDemoScore } from './etude-musicxml.js';
export { performPart } from './perform-part.js';
export { performTake } from './perform-take.js';
export type { Fault, NoteAddress, PerformedTake, PlayedNote, TakePlan, VoiceName } from './types.js';
