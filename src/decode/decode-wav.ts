import { type Caution, InputError } from '../base/index.js';
import { LONGEST_SECONDS } from './common/longest.js';
import { mixToMono } from './mix-to-mono.js';
import { channelSource } from './read-channel.js';
import type { Take } from './types.js';
import { findWavChunks, type WavChunks } from './wav-chunks.js';
import { readWavFormat, type WavFormat } from './wav-format.js';

const MIN_SECONDS = 0.1;

function checkIsWav(bytes: Uint8Array): void {
  if (bytes.length === 0) throw new InputError('recording-empty');
  const head = String.fromCharCode(...bytes.subarray(0, 12));
  const container = head.slice(0, 4);
  const isRiff = container === 'RIFF' || container === 'RF64' || container === 'BW64';
  if (isRiff && head.slice(8) === 'WAVE') return;
  if (isRiff && bytes.length < 12) {
    throw new InputError('wav-ends-at-once', { bytes: bytes.length });
  }
  throw new InputError('other-format', { format: 'unknown' });
}

function countFrames(chunks: WavChunks, format: WavFormat): number {
  const frames = Math.floor(chunks.data.size / (format.sampleBytes * format.channels));
  const seconds = frames / format.sampleRateHz;
  if (frames === 0) throw new InputError('wav-without-audio');
  if (seconds < MIN_SECONDS) {
    throw new InputError('wav-too-short', { milliseconds: Number((seconds * 1000).toFixed(0)) });
  }
  if (seconds > LONGEST_SECONDS) {
    throw new InputError('recording-too-long', { minutes: Math.round(seconds / 60) });
  }
  return frames;
}

function breaksOff(chunks: WavChunks): boolean {
  return !chunks.openEnded && chunks.announcedDataBytes !== null;
}

function lengthCautions(chunks: WavChunks, format: WavFormat, frames: number): Caution[] {
  if (chunks.openEnded) return [{ code: 'length-left-open', facts: {} }];
  if (!breaksOff(chunks) || chunks.announcedDataBytes === null) return [];
  const bytesPerSecond = format.sampleBytes * format.channels * format.sampleRateHz;
  const tenths = (seconds: number): number => Number(seconds.toFixed(1));
  const announcedSeconds = tenths(chunks.announcedDataBytes / bytesPerSecond);
  return [{ code: 'breaks-off', facts: { announcedSeconds, heldSeconds: tenths(frames / format.sampleRateHz) } }];
}

/**
 * Reads a WAV file: PCM of 1 to 32 bit, float of 32 and 64 bit, A-law and µ-law, plain or extensible, RIFF, RF64 and
 * BW64, 1 to 8 channels, 8 to 192 kHz. A length left open by a streaming recorder is repaired, a file that breaks off is
 * read as far as it goes; both are said in the cautions. Never allocates more than the file's own size bears out.
 *
 * @param bytes the whole file
 * @returns the recording as a mono mix, full scale = ±1, with its cautions
 * @throws InputError `empty-file`, `not-a-wav`, `wav-damaged` or `wav-unsupported`, saying what was found and is needed
 *
 * Source: Microsoft & IBM, Multimedia Programming Interface and Data Specifications 1.0 (1991); EBU Tech 3306 (RF64);
 * ITU-R BS.2088 (BW64); ITU-T G.711.
 */
export function decodeWav(bytes: Uint8Array): Take {
  checkIsWav(bytes);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const chunks = findWavChunks(view);
  const format = readWavFormat(view, chunks.format);
  const frames = countFrames(chunks, format);
  const { cautions, ...mix } = mixToMono(channelSource(view, chunks.data.start, frames, format));
  return {
    ...mix,
    sampleRateHz: format.sampleRateHz,
    channels: format.channels,
    ...(breaksOff(chunks) ? { breaksOff: true } : {}),
    cautions: [...lengthCautions(chunks, format, frames), ...cautions],
  };
}
