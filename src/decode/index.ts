/**
 * Bytes of a WAV file in, a mono recording out; and the way back for the demo and the tests.
 *
 * Conventions: samples are 32 bit floats with full scale at ±1, one channel, the file's own sample rate; sample 0 is the
 * time origin of everything that follows. Nothing here touches the disk.
 */
export { decodeWav } from './decode-wav.js';
export { encodeWav } from './encode-wav.js';
export { createScratch } from './scratch.js';
export type { Samples, Take } from './types.js';
