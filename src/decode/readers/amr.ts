import { decoder as createAmr } from '@audio/decode-amr';
import { batches, joined } from './batches.js';
import { cut, type Sound, type Stretch, stretchOf } from './stretch.js';
import type { Packet } from './track.js';

const ASCII = new TextEncoder();
/** 20 s of packets. */
const BATCH_PACKETS = 1000;

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
