/**
 * From where every note is to numbers with units. Nothing here says whether a number is good.
 *
 * Levels are dBFS (RMS of the mono mix), differences dB; pitch deviations are cents, sharp positive; times are seconds
 * from the first sample; order is the performed order of the part. What lacks evidence is `notMeasured` with the reason.
 */
export { type AskedPlaces, askedPlaces, asksHowToLeave } from './asked-places.js';
export type { MeasureContext } from './context/context.js';
export { isWet } from './is-wet.js';
export { measureTake } from './measure-take.js';
export { measureToneColour } from './measures/tone-colour.js';
export type * from './types.js';
export { causesIn } from './uneven/causes-in.js';
