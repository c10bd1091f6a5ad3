import { batches, joined } from './batches.js';
import { concealing } from './concealed.js';
import { decodeNatively } from './native.js';
import { cut, type Sound, type Stretch } from './stretch.js';
import type { Packet, Track } from './track.js';

/** Samples of each channel in a packet. Source: ISO/IEC 14496-3, the usual frame length. */
const PACKET_FRAMES = 1024;
const BATCH_PACKETS = 1024;
/** A packet overlaps the one before it. */
const WARMING = 2;
/** Source: ISO/IEC 14496-3, samplingFrequencyIndex. */
const RATES = [96000, 88200, 64000, 48000, 44100, 32000, 24000, 22050, 16000, 12000, 11025, 8000, 7350];
const ADTS_HEADER_BYTES = 7;
const LONGEST_ADTS_BYTES = 8191;

/** How the core of the sound is coded. What a codec adds above half the rate (SBR) or beside one channel (PS) is left out. */
interface Core {
  readonly rateIndex: number;
  readonly channels: number;
}

/**
 * @param description an AudioSpecificConfig
 * @returns its core, null when it is none that is read (low complexity, up to 7 channels, packets of 1024)
 *
 * Source: ISO/IEC 14496-3, 1.6.2.1 AudioSpecificConfig.
 */
function readCore(description: Uint8Array): Core | null {
  const [first = 0, second = 0, third = 0] = description;
  const kind = first >> 3;
  const rateIndex = ((first & 7) << 1) | (second >> 7);
  const channels = (second >> 3) & 15;
  if (rateIndex >= RATES.length || channels === 0 || channels > 7) return null;
  if (kind === 2) return (second & 4) === 0 ? { rateIndex, channels } : null;
  // 5 and 29 lay SBR and PS around a core whose own kind follows behind the wider rate.
  const coreKind = (third >> 2) & 31;
  return (kind === 5 || kind === 29) && coreKind === 2 ? { rateIndex, channels } : null;
}

/** One packet as an ADTS frame. Source: ISO/IEC 13818-7, 6.2. */
function withHeader({ data }: Packet, { rateIndex, channels }: Core): { data: Uint8Array } {
  const size = data.length + ADTS_HEADER_BYTES;
  if (size > LONGEST_ADTS_BYTES) throw new Error('a packet is too long');
  const framed = new Uint8Array(size);
  framed.set([
    0xff,
    0xf1,
    (1 << 6) | (rateIndex << 2) | (channels >> 2),
    ((channels & 3) << 6) | (size >> 11),
    (size >> 3) & 0xff,
    ((size & 7) << 5) | 0x1f,
    0xfc,
  ]);
  framed.set(data, ADTS_HEADER_BYTES);
  return { data: framed };
}

/**
 * Decodes AAC packet by packet, wrapped as ADTS, which the engine decodes to the very sample. What the container marks as
 * there for the decoder only is left out; where it marks nothing, the first packet is left out, which no encoder can fill.
 * A few damaged packets become silence.
 *
 * @param track AAC; without a description its packets are ADTS already
 * @returns the sound; null when it is a kind of AAC that is not read
 *
 * Source: ISO/IEC 14496-3; ISO/IEC 14496-12 for what an edit list leaves out.
 */
export function readAac(track: Track): Sound | null {
  const core = track.description === null ? null : readCore(track.description);
  if (track.description !== null && core === null) return null;
  const sampleRateHz = core === null ? track.sampleRateHz : (RATES[core.rateIndex] as number);
  const lost: number[] = [];
  return { codec: 'aac', sampleRateHz, stretches: decode(track, core, sampleRateHz, lost), lostSeconds: () => lost };
}

/** Writes to `lost` where silence stands for damaged packets, in seconds. */
async function* decode(track: Track, core: Core | null, sampleRateHz: number, lost: number[]): AsyncGenerator<Stretch> {
  let [skip, given] = [-1, 0];
  const coding = {
    frames: PACKET_FRAMES,
    channels: core?.channels ?? track.channels,
    warming: WARMING,
    decode: (packets: readonly Packet[]) =>
      decodeNatively(joined(core === null ? packets : packets.map((packet) => withHeader(packet, core))), sampleRateHz),
  };
  const decoded = concealing(coding, () => lost.push(given / sampleRateHz));
  for await (const { packets } of batches(track.packets(), BATCH_PACKETS, 0)) {
    const begin = packets[0]?.timestamp ?? 0;
    if (skip < 0) skip = begin < 0 ? Math.round(-begin * sampleRateHz) : PACKET_FRAMES;
    let left = packets.length * PACKET_FRAMES - padding(packets, sampleRateHz);
    for await (const stretch of decoded(packets)) {
      const own = cut(stretch, skip, left);
      skip = Math.max(0, skip - stretch.frames);
      left -= stretch.frames;
      given += own.frames;
      yield own;
    }
  }
}

/** What the last packet holds beyond the end, where the container says so by its length. */
function padding(packets: readonly Packet[], sampleRateHz: number): number {
  const last = packets[packets.length - 1];
  if (last === undefined || last.duration <= 0) return 0;
  const held = Math.round(last.duration * sampleRateHz);
  return held > 0 && held < PACKET_FRAMES ? PACKET_FRAMES - held : 0;
}
