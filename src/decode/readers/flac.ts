import { batches, joined } from './batches.js';
import { decodeNatively } from './native.js';
import type { Sound, Stretch } from './stretch.js';
import type { Track } from './track.js';

const BATCH_PACKETS = 256;
const MARK_BYTES = 4;
const BLOCK_HEADER_BYTES = 4;
const STREAM_INFO_BYTES = 34;

/**
 * Decodes FLAC in batches of packets, each behind the stream's own description.
 *
 * @param track FLAC
 * @returns the sound
 *
 * Source: RFC 9639, 8.2 STREAMINFO: the number of samples (36 bits from byte 13, low half of it) and the checksum (16
 * bytes from byte 18) are set to 0, "unknown", since a batch is not the whole.
 */
export function readFlac(track: Track): Sound {
  return { codec: 'flac', sampleRateHz: track.sampleRateHz, stretches: decode(track) };
}

async function* decode(track: Track): AsyncGenerator<Stretch> {
  const head = headFor(track.description);
  for await (const { packets } of batches(track.packets(), BATCH_PACKETS, 0)) {
    yield decodeNatively(joined([{ data: head }, ...packets]), track.sampleRateHz);
  }
}

function headFor(description: Uint8Array | null): Uint8Array {
  const length = MARK_BYTES + BLOCK_HEADER_BYTES + STREAM_INFO_BYTES;
  if (description === null || description.length < length) throw new Error('the description is damaged');
  const head = description.slice(0, length);
  // The last block before the sound.
  head[MARK_BYTES] = 0x80;
  const info = MARK_BYTES + BLOCK_HEADER_BYTES;
  head[info + 13] = (head[info + 13] as number) & 0xf0;
  head.fill(0, info + 14);
  return head;
}
