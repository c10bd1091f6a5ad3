import { OpusDecoder } from 'opus-decoder';
import { batches } from './batches.js';
import { cut, type Sound, type Stretch, stretchOf } from './stretch.js';
import type { Track } from './track.js';

const RATE_HZ = 48000;
/** 20 s of the usual packets. */
const BATCH_PACKETS = 1000;

/** What stands in an OpusHead. */
interface Head {
  readonly channels: number;
  readonly preSkip: number;
  readonly streams: number;
  readonly coupled: number;
  readonly mapping: number[];
}

/**
 * @param description an OpusHead; null when the container has none
 * @param channels what the container says
 * @returns how the packets are to be read
 *
 * Source: RFC 7845, 5.1 identification header. Its numbers are little-endian.
 */
function readOpusHead(description: Uint8Array | null, channels: number): Head {
  const plain = (count: number, preSkip: number): Head => {
    return { channels: count, preSkip, streams: 1, coupled: count - 1, mapping: count === 1 ? [0] : [0, 1] };
  };
  if (description === null || description.length < 19) return plain(Math.min(channels, 2), 0);
  const [count, preSkip] = [description[9] ?? 0, (description[10] ?? 0) | ((description[11] ?? 0) << 8)];
  if (description[18] === 0 && (count === 1 || count === 2)) return plain(count, preSkip);
  const mapping = [...description.subarray(21, 21 + count)];
  const [streams = 0, coupled = 0] = description.subarray(19, 21);
  const isWhole = count >= 1 && count <= 8 && mapping.length === count && streams >= 1 && coupled <= streams;
  if (!isWhole || mapping.some((place) => place !== 255 && place >= streams + coupled))
    throw new Error('the description is damaged');
  return { channels: count, preSkip, streams, coupled, mapping };
}

/**
 * Decodes Opus. What the header says the decoder needs to settle is left out, and what the container says lies beyond the
 * end.
 *
 * @param track Opus
 * @returns the sound, at 48 kHz as Opus always is
 *
 * Source: RFC 6716; RFC 7845, 4.2 pre-skip.
 */
export function readOpus(track: Track): Sound {
  return { codec: 'opus', sampleRateHz: RATE_HZ, stretches: decode(track) };
}

async function* decode(track: Track): AsyncGenerator<Stretch> {
  const head = readOpusHead(track.description, track.channels);
  const decoder = new OpusDecoder({
    channels: head.channels,
    streamCount: head.streams,
    coupledStreamCount: head.coupled,
    channelMappingTable: head.mapping,
  });
  await decoder.ready;
  let skip = head.preSkip;
  for await (const { packets } of batches(track.packets(), BATCH_PACKETS, 0)) {
    const { channelData, errors } = decoder.decodeFrames(packets.map(({ data }) => data));
    if (errors.length > 0) throw new Error('packets are damaged');
    const own = stretchOf(channelData);
    const last = packets[packets.length - 1] as (typeof packets)[number];
    yield cut(own, skip, own.frames - beyondEnd(last.duration, frames(last.data)));
    skip = Math.max(0, skip - own.frames);
  }
  decoder.free();
}

/** Frames of the last packet that lie beyond the end, as the container says by its length. */
function beyondEnd(seconds: number, held: number): number {
  const wanted = Math.round(seconds * RATE_HZ);
  // A little less is rounding of the clock of the container, or what is skipped in the first packet.
  return wanted > 0 && wanted < held - RATE_HZ / 1000 ? held - wanted : 0;
}

/** Frames in a packet. Source: RFC 6716, 3.1 and 3.2, table 2. */
function frames(packet: Uint8Array): number {
  const [toc = 0, count = 0] = packet;
  const config = toc >> 3;
  const one = config < 12 ? [480, 960, 1920, 2880] : config < 16 ? [480, 960] : [120, 240, 480, 960];
  const length = one[config < 12 ? config & 3 : config < 16 ? config & 1 : config & 3] as number;
  return length * ([1, 2, 2, count & 63][toc & 3] as number);
}
