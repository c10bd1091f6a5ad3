import { alacMp4 } from './alac-mp4.js';
import { batches } from './batches.js';
import { decodeNatively } from './native.js';
import type { Sound, Stretch } from './stretch.js';
import type { Packet } from './track.js';

const BATCH_PACKETS = 256;
const COOKIE_BYTES = 24;
const BOX_HEADER_BYTES = 12;

/**
 * @param bytes a whole file, or its part that describes the coding
 * @returns the description of its ALAC sound, found by the box that holds it; null when there is none
 *
 * Source: Apple Lossless Audio Codec, magic cookie description: a box `alac` of 36 bytes, 24 of them the description.
 */
export function findAlacCookie(bytes: Uint8Array): Uint8Array | null {
  const whole = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const begin = Buffer.from([0, 0, 0, BOX_HEADER_BYTES + COOKIE_BYTES, 0x61, 0x6c, 0x61, 0x63, 0, 0, 0, 0]);
  const at = whole.indexOf(begin);
  const end = at + BOX_HEADER_BYTES + COOKIE_BYTES;
  return at < 0 || end > bytes.length ? null : bytes.subarray(at + BOX_HEADER_BYTES, end);
}

/**
 * Decodes ALAC in batches of packets, each as a small file of its own: the engine wants the index first, and no film beside.
 *
 * @param cookie the description, 24 bytes
 * @param packets in order
 * @returns the sound
 * @throws Error when the description contradicts itself
 *
 * Source: Apple Lossless Audio Codec, magic cookie description; numbers are big-endian.
 */
export function readAlac(cookie: Uint8Array, packets: () => AsyncIterable<Packet>): Sound {
  const view = new DataView(cookie.buffer, cookie.byteOffset, cookie.byteLength);
  const format = {
    cookie,
    packetFrames: view.getUint32(0),
    bits: view.getUint8(5),
    channels: view.getUint8(9),
    sampleRateHz: view.getUint32(20),
  };
  const isPlain = format.packetFrames > 0 && format.packetFrames <= 2 ** 16 && format.channels > 0;
  if (!isPlain) throw new Error('the description is damaged');
  return { codec: 'alac', sampleRateHz: format.sampleRateHz, stretches: decode(packets()) };

  async function* decode(all: AsyncIterable<Packet>): AsyncGenerator<Stretch> {
    for await (const batch of batches(all, BATCH_PACKETS, 0)) {
      yield decodeNatively(alacMp4(format, batch.packets), format.sampleRateHz);
    }
  }
}
