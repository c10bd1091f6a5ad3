import { A_LAW, MU_LAW } from '../common/companding.js';
import type { Sound, Stretch } from './stretch.js';
import type { Packet } from './track.js';

/** Uncompressed samples, channel after channel, frame after frame. */
export interface PcmFormat {
  /** `pcm-s16`, `pcm-s24be`, `pcm-f32`, `pcm-u8`, `ulaw`, `alaw` and their like; `be` is big-endian */
  readonly codec: string;
  readonly sampleRateHz: number;
  readonly channels: number;
}

interface Coding {
  readonly bytes: number;
  readonly get: (view: DataView, at: number) => number;
}

/** Two's complement, or offset by half for 8 bit without a sign; full scale = ±1. */
function codingOf(codec: string): Coding | null {
  if (codec === 'ulaw') return { bytes: 1, get: (view, at) => MU_LAW[view.getUint8(at)] as number };
  if (codec === 'alaw') return { bytes: 1, get: (view, at) => A_LAW[view.getUint8(at)] as number };
  const parts = /^pcm-([usf])(8|16|24|32|64)(be)?$/.exec(codec);
  if (parts === null) return null;
  const [, kind, bits] = parts;
  const little = parts[3] === undefined;
  const codings: Readonly<Record<string, Coding['get']>> = {
    u8: (view, at) => (view.getUint8(at) - 128) / 128,
    s8: (view, at) => view.getInt8(at) / 128,
    s16: (view, at) => view.getInt16(at, little) / 0x8000,
    s24: (view, at) => {
      const [high, low] = little
        ? [view.getInt8(at + 2), view.getUint16(at, true)]
        : [view.getInt8(at), view.getUint16(at + 1)];
      return (high * 0x10000 + low) / 0x800000;
    },
    s32: (view, at) => view.getInt32(at, little) / 0x80000000,
    f32: (view, at) => view.getFloat32(at, little),
    f64: (view, at) => view.getFloat64(at, little),
  };
  const get = codings[`${kind}${bits}`];
  return get === undefined ? null : { bytes: Number(bits) / 8, get };
}

/**
 * @param codec as in `PcmFormat`
 * @returns bytes of one sample; null when this coding has no name here
 */
export function sampleBytesOf(codec: string): number | null {
  return codingOf(codec)?.bytes ?? null;
}

/**
 * @param format how the samples are stored
 * @param packets whole frames in each; what is left over at the end of one is left out
 * @returns the sound; null when this coding has no name here
 *
 * Source: Apple, Audio Interchange File Format 1.3 and QuickTime File Format (sound sample descriptions).
 */
export function readPcm(format: PcmFormat, packets: () => AsyncIterable<Pick<Packet, 'data'>>): Sound | null {
  const coding = codingOf(format.codec);
  if (coding === null) return null;
  return { codec: 'pcm', sampleRateHz: format.sampleRateHz, stretches: decode(coding, format.channels, packets()) };
}

async function* decode(
  { bytes, get }: Coding,
  channels: number,
  packets: AsyncIterable<Pick<Packet, 'data'>>,
): AsyncGenerator<Stretch> {
  for await (const { data } of packets) {
    const view = new DataView(data.buffer, data.byteOffset, data.byteLength);
    yield {
      channels,
      frames: Math.floor(data.length / (bytes * channels)),
      read: (channel, fromFrame, out) => {
        const start = (fromFrame * channels + channel) * bytes;
        for (let i = 0; i < out.length; i++) out[i] = get(view, start + i * bytes * channels);
      },
    };
  }
}
