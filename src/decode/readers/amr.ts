import { decoder as createAmr } from '@audio/decode-amr';
import { batches, joined } from './batches.js';
import { cut, type Sound, type Stretch, stretchOf } from './stretch.js';
import type { Packet } from './track.js';

const ASCII = new TextEncoder();
/** 20 s of packets. */
const BATCH_PACKETS = 1000;
const PACKET_SECONDS = 0.02;
/** Bytes of a packet by its mode, its own first byte counted. Source: RFC 4867, 5.3 and table 1; 3GPP TS 26.101, 26.201. */
const NARROW = [13, 14, 16, 18, 20, 21, 27, 32, 6, 0, 0, 0, 0, 0, 0, 1];
const WIDE = [18, 24, 33, 37, 41, 47, 51, 59, 61, 6, 0, 0, 0, 0, 1, 1];

/**
 * Samples by which the encoder looks ahead and filters: 5 ms of 8 kHz, 5.9375 ms of 16 kHz. Source: 3GPP TS 26.090, 4.4;
 * ITU-T G.722.2, algorithmic delay of 25.9375 ms, 20 of them a packet.
 */
const DELAY = { narrow: 40, wide: 95 };

/**
 * Decodes speech packets of a telephone, 20 ms each.
 *
 * @param wide AMR-WB (16 kHz) instead of AMR (8 kHz)
 * @param packets as they stand in a file
 * @returns the sound
 *
 * Source: RFC 4867, 5 AMR storage format.
 */
export function readAmr(wide: boolean, packets: AsyncIterable<Packet>): Sound {
  return { codec: wide ? 'amr-wb' : 'amr', sampleRateHz: wide ? 16000 : 8000, stretches: decode(wide, packets) };
}

async function* decode(wide: boolean, packets: AsyncIterable<Packet>): AsyncGenerator<Stretch> {
  const amr = await createAmr();
  amr.decode(
    ASCII.encode(wide ? '#!AMR-WB\n' : '#!AMR\n   ')
      .subarray(0, 9)
      .slice(0, wide ? 9 : 6),
  );
  let skip = wide ? DELAY.wide : DELAY.narrow;
  for await (const batch of batches(packets, BATCH_PACKETS, 0)) {
    const { channelData } = amr.decode(joined(batch.packets));
    const own = stretchOf(channelData);
    if (channelData.length > 0) yield cut(own, skip, own.frames);
    skip = Math.max(0, skip - own.frames);
  }
  amr.free();
}

/**
 * @param bytes a whole AMR file of one channel
 * @returns its packets and whether they are AMR-WB; a packet cut off at the end is left out
 * @throws Error when a packet is of no known mode
 *
 * Source: RFC 4867, 5.1 and 5.3.
 */
export function amrFile(bytes: Uint8Array): { readonly wide: boolean; readonly packets: () => AsyncIterable<Packet> } {
  const wide = bytes[5] === '-'.charCodeAt(0);
  return { wide, packets: () => packetsOf(bytes, wide) };
}

async function* packetsOf(bytes: Uint8Array, wide: boolean): AsyncGenerator<Packet> {
  const sizes = wide ? WIDE : NARROW;
  let timestamp = 0;
  for (let at = wide ? 9 : 6; at < bytes.length; timestamp += PACKET_SECONDS) {
    const size = sizes[((bytes[at] as number) >> 3) & 15] as number;
    if (size === 0) throw new Error('a packet is of no known mode');
    if (at + size <= bytes.length) yield { data: bytes.subarray(at, at + size), timestamp, duration: PACKET_SECONDS };
    at += size;
  }
}
