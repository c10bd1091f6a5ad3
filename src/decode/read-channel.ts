import type { ChannelSource } from './common/channel-source.js';
import { A_LAW, MU_LAW } from './common/companding.js';
import { readInt16 } from './read-int16.js';
import type { WavFormat } from './wav-format.js';

/** Beyond this a float sample is damage, not a loud note: +180 dBFS. */
const ABSURD = 1e9;

type Reader = (view: DataView, at: number, stride: number, out: Float32Array) => void;

function readUnsigned8(view: DataView, at: number, stride: number, out: Float32Array): void {
  for (let i = 0, p = at; i < out.length; i++, p += stride) out[i] = (view.getUint8(p) - 128) / 128;
}

function readInt24(view: DataView, at: number, stride: number, out: Float32Array): void {
  for (let i = 0, p = at; i < out.length; i++, p += stride) {
    out[i] = ((view.getInt8(p + 2) << 16) | view.getUint16(p, true)) / 0x800000;
  }
}

function readInt32(view: DataView, at: number, stride: number, out: Float32Array): void {
  for (let i = 0, p = at; i < out.length; i++, p += stride) out[i] = view.getInt32(p, true) / 0x80000000;
}

function readFloat32(view: DataView, at: number, stride: number, out: Float32Array): void {
  for (let i = 0, p = at; i < out.length; i++, p += stride) out[i] = view.getFloat32(p, true);
}

function readFloat64(view: DataView, at: number, stride: number, out: Float32Array): void {
  for (let i = 0, p = at; i < out.length; i++, p += stride) out[i] = view.getFloat64(p, true);
}

function readCompanded(table: Float32Array): Reader {
  return (view, at, stride, out) => {
    for (let i = 0, p = at; i < out.length; i++, p += stride) out[i] = table[view.getUint8(p)] as number;
  };
}

const PCM_READERS: readonly Reader[] = [readUnsigned8, readInt16, readInt24, readInt32];

function readerFor(format: WavFormat): Reader {
  if (format.coding === 'a-law') return readCompanded(A_LAW);
  if (format.coding === 'mu-law') return readCompanded(MU_LAW);
  if (format.coding === 'float') return format.sampleBytes === 8 ? readFloat64 : readFloat32;
  return PCM_READERS[format.sampleBytes - 1] as Reader;
}

function replaceDamage(samples: Float32Array): number {
  let replaced = 0;
  for (let i = 0; i < samples.length; i++) {
    if (Math.abs(samples[i] as number) <= ABSURD) continue;
    samples[i] = 0;
    replaced++;
  }
  return replaced;
}

/**
 * @param view the whole file
 * @param dataStart byte where the audio begins
 * @param frames frames of audio; the file must hold them
 * @param format how the audio is stored
 * @returns the channels, full scale = ±1
 *
 * Source: Microsoft & IBM, Multimedia Programming Interface and Data Specifications 1.0 (1991): 8 bit and less is
 * unsigned, everything else two's complement, little-endian, left-justified in whole bytes.
 */
export function channelSource(view: DataView, dataStart: number, frames: number, format: WavFormat): ChannelSource {
  const reader = readerFor(format);
  const stride = format.channels * format.sampleBytes;
  const read = (channel: number, fromFrame: number, out: Float32Array): number => {
    reader(view, dataStart + fromFrame * stride + channel * format.sampleBytes, stride, out);
    return format.coding === 'float' ? replaceDamage(out) : 0;
  };
  return { channels: format.channels, frames, mayBeDamaged: format.coding === 'float', read };
}
