/**
 * Bytes of a recording in, mono samples out; and the way back to WAV for the demo and the tests. WAV is read here;
 * everything else is decoded by a process of its own (`apart/`, with what it reads by in `readers/`).
 *
 * Conventions: samples are 32 bit floats with full scale at ±1, one channel, the file's own sample rate; sample 0 is the
 * time origin of everything that follows. Nothing here touches the disk.
 */

export { soundsLikeOne } from './common/recognise.js';
export { copyStretch } from './copy-stretch.js';
export { decodeTake, prepareFor } from './decode-take.js';
export { decodeWav } from './decode-wav.js';
export { encodeWav } from './encode-wav.js';
export { refuseOverAnHour } from './refuse-over-an-hour.js';
export type { Origin, Samples, Take } from './types.js';
