import { batches, joined } from './batches.js';
import { decodeNatively } from './native.js';
import { cut, type Sound, type Stretch } from './stretch.js';
import type { Track } from './track.js';

const BATCH_PACKETS = 512;
/** A packet may use bits of up to 511 bytes before it, ten packets at the lowest bit rates; two more for the overlap. */
const WARMING = 12;
/** What every decoder adds, in samples. Source: the description of the LAME tag. */
const DECODER_DELAY = 529;
/** What the most used encoder adds, for files that do not say it. Source: the same. */
const USUAL_DELAY = 576;
const TAG_SEARCH_BYTES = 4096;
const ID3_HEADER_BYTES = 10;

/** What the encoder put before and behind the sound, in samples. */
interface Delays {
  readonly before: number;
  readonly behind: number;
}

function afterId3(bytes: Uint8Array): number {
  if (bytes[0] !== 0x49 || bytes[1] !== 0x44 || bytes[2] !== 0x33) return 0;
  const [a = 0, b = 0, c = 0, d = 0] = bytes.subarray(6, ID3_HEADER_BYTES);
  return ID3_HEADER_BYTES + ((a & 127) << 21) + ((b & 127) << 14) + ((c & 127) << 7) + (d & 127);
}

/**
 * @param bytes a whole MP3 file
 * @returns what lies before and behind the sound, counted as a decoder gives it
 *
 * Source: the Xing header and LAME tag as their makers describe them: flags, then 4, 4, 100 and 4 bytes as flagged, then
 * the encoder's name, and 21 bytes from there two numbers of 12 bits.
 */
export function readDelays(bytes: Uint8Array): Delays {
  const begin = afterId3(bytes);
  const head = Buffer.from(bytes.buffer, bytes.byteOffset + begin, Math.min(TAG_SEARCH_BYTES, bytes.length - begin));
  const found = [head.indexOf('Xing'), head.indexOf('Info')].filter((at) => at >= 0);
  const usual = { before: USUAL_DELAY + DECODER_DELAY, behind: 0 };
  if (found.length === 0) return usual;
  const tag = Math.min(...found);
  if (tag + 8 > head.length) return usual;
  const flags = head.readUInt32BE(tag + 4);
  const name = tag + 8 + (flags & 1 ? 4 : 0) + (flags & 2 ? 4 : 0) + (flags & 4 ? 100 : 0) + (flags & 8 ? 4 : 0);
  if (name + 24 > head.length || !/^L[Aa][MAmav]/.test(head.toString('latin1', name, name + 3))) return usual;
  const both = head.readUIntBE(name + 21, 3);
  return { before: (both >> 12) + DECODER_DELAY, behind: Math.max(0, (both & 0xfff) - DECODER_DELAY) };
}

/**
 * Decodes MP3 in batches of packets.
 *
 * @param track MP3
 * @param delays what to leave out at both ends
 * @returns the sound
 *
 * Source: ISO/IEC 11172-3, ISO/IEC 13818-3.
 */
export function readMp3(track: Track, delays: Delays): Sound {
  return { codec: 'mp3', sampleRateHz: track.sampleRateHz, stretches: decode(track, delays) };
}

async function* decode(track: Track, { before, behind }: Delays): AsyncGenerator<Stretch> {
  let skip = before;
  let held: Stretch | null = null;
  for await (const { packets, warming } of batches(track.packets(), BATCH_PACKETS, WARMING)) {
    const frames = Math.round((packets[0]?.duration ?? 0) * track.sampleRateHz);
    const decoded = await decodeNatively(joined(packets), track.sampleRateHz);
    if (decoded.frames !== packets.length * frames) throw new Error('packets are damaged');
    if (held !== null) yield held;
    const own = cut(decoded, warming * frames, decoded.frames);
    held = cut(own, skip, own.frames);
    skip = Math.max(0, skip - own.frames);
  }
  if (held !== null) yield cut(held, 0, held.frames - behind);
}
