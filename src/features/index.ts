/**
 * The ear: a recording becomes pitch candidates, spectral change and power, frame by frame. Knows nothing of any score.
 *
 * Times are seconds from the first sample. Pitch is fractional MIDI numbers. Power is mean square, full scale = 1.
 */
export type { PitchRange } from './frame-plan.js';
export { HarmonicsReader } from './harmonics-reader.js';
export { listen } from './listen.js';
export { CANDIDATES, type Features } from './types.js';
