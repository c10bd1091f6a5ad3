/**
 * A recording becomes a file that every browser can play, and what is known of its loudness on the way. The coding is Opus,
 * the container WebM, written here. Nothing in the file says who plays, or when.
 *
 * Conventions: times are seconds from the first sample of the recording; the file's time is the recording's. The same
 * samples give the same bytes. Nothing here touches the disk.
 */
export { type EncodedSound, encodeSound } from './encode-sound.js';
