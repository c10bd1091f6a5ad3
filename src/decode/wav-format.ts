import { InputError } from '../base/index.js';
import type { Span } from './wav-chunks.js';

export type SampleCoding = 'pcm' | 'float' | 'a-law' | 'mu-law';

/** How the audio of a WAV file is stored. */
export interface WavFormat {
  readonly coding: SampleCoding;
  /** bytes one sample of one channel takes */
  readonly sampleBytes: number;
  readonly channels: number;
  readonly sampleRateHz: number;
}

const MIN_RATE_HZ = 8000;
const MAX_RATE_HZ = 192000;
const MAX_CHANNELS = 8;
const EXTENSIBLE = 0xfffe;

/** Source: RFC 2361, WAVE codec registries. */
const CODINGS: ReadonlyMap<number, SampleCoding> = new Map([
  [0x0001, 'pcm'],
  [0x0003, 'float'],
  [0x0006, 'a-law'],
  [0x0007, 'mu-law'],
]);

/** Codings named to the user when they are refused. Source: RFC 2361, WAVE codec registries. */
const REFUSED: ReadonlyMap<number, string> = new Map([
  [0x0002, 'Microsoft ADPCM'],
  [0x0011, 'IMA ADPCM'],
  [0x0031, 'GSM 6.10'],
  [0x0040, 'G.721 ADPCM'],
  [0x0050, 'MPEG audio'],
  [0x0055, 'MP3'],
  [0x00ff, 'AAC'],
  [0x0160, 'Windows Media Audio'],
  [0x0161, 'Windows Media Audio'],
]);

/** The last 14 bytes of the sub-format's GUID; its first two are the format tag. Source: Microsoft, WAVEFORMATEXTENSIBLE. */
const GUID_TAIL = [0x00, 0x00, 0x00, 0x00, 0x10, 0x00, 0x80, 0x00, 0x00, 0xaa, 0x00, 0x38, 0x9b, 0x71];

function formatTag(view: DataView, chunk: Span): number {
  const tag = view.getUint16(chunk.start, true);
  if (tag !== EXTENSIBLE) return tag;
  if (chunk.size < 40) throw new InputError('wav-extension-cut');
  const isWaveGuid = GUID_TAIL.every((byte, i) => view.getUint8(chunk.start + 26 + i) === byte);
  if (!isWaveGuid) throw new InputError('wav-unknown-kind');
  return view.getUint16(chunk.start + 24, true);
}

function checkRateAndChannels(sampleRateHz: number, channels: number): void {
  if (sampleRateHz === 0) throw new InputError('wav-rate-zero');
  if (sampleRateHz < MIN_RATE_HZ || sampleRateHz > MAX_RATE_HZ) {
    throw new InputError('wav-rate-unread', {
      hertz: sampleRateHz,
      lowestHertz: MIN_RATE_HZ,
      highestHertz: MAX_RATE_HZ,
    });
  }
  if (channels === 0) throw new InputError('wav-no-channels');
  if (channels > MAX_CHANNELS) throw new InputError('wav-many-channels', { channels, most: MAX_CHANNELS });
}

function checkDepth(coding: SampleCoding, bits: number): void {
  const wholeBytes =
    coding === 'pcm' ? bits >= 1 && bits <= 32 : coding === 'float' ? bits === 32 || bits === 64 : bits === 8;
  if (wholeBytes) return;
  if (bits === 0) throw new InputError('wav-no-bits');
  throw new InputError('wav-odd-depth', { bits, coding });
}

/**
 * @param view the whole file
 * @param chunk its `fmt ` chunk
 * @returns how the audio is stored, checked: 1 to 8 channels, 8 to 192 kHz
 * @throws InputError `wav-damaged` when fields contradict each other, `wav-unsupported` for codings that are not read
 *
 * Source: Microsoft & IBM, Multimedia Programming Interface and Data Specifications 1.0 (1991), WAVE format chunk;
 * Microsoft, WAVEFORMATEXTENSIBLE.
 */
export function readWavFormat(view: DataView, chunk: Span): WavFormat {
  if (chunk.size < 16) throw new InputError('wav-format-cut');
  const tag = formatTag(view, chunk);
  const coding = CODINGS.get(tag);
  if (coding === undefined) {
    throw new InputError('wav-compressed', { coding: REFUSED.get(tag) ?? '', formatTag: tag });
  }
  const channels = view.getUint16(chunk.start + 2, true);
  const sampleRateHz = view.getUint32(chunk.start + 4, true);
  checkRateAndChannels(sampleRateHz, channels);
  const bits = view.getUint16(chunk.start + 14, true);
  checkDepth(coding, bits);
  const sampleBytes = Math.ceil(bits / 8);
  const blockAlign = view.getUint16(chunk.start + 12, true);
  if (blockAlign !== sampleBytes * channels) {
    const neededBytes = sampleBytes * channels;
    throw new InputError('wav-frames-differ', { channels, bits, frameBytes: blockAlign, neededBytes });
  }
  return { coding, sampleBytes, channels, sampleRateHz };
}
