import { InputError } from '../base/index.js';
import { LONGEST_SECONDS } from './common/longest.js';
import { recognise } from './common/recognise.js';
import { aiffSeconds } from './readers/aiff.js';
import { leastAmrSeconds } from './readers/amr-file.js';
import { findWavChunks } from './wav-chunks.js';
import { readWavFormat } from './wav-format.js';

/**
 * Refuses a WAV, AIFF or AMR file that is too long by its first bytes and its size, before the whole of it is read. What
 * cannot be told by them is left to the reading.
 *
 * @param head the first bytes of the file
 * @param fileBytes how large the file is
 * @throws InputError `recording-too-long`
 *
 * Source: as `findWavChunks`, `findAiffSound` and `amrFile`.
 */
export function refuseOverAnHour(head: Uint8Array, fileBytes: number): void {
  const seconds = secondsOf(head, fileBytes);
  if (seconds > LONGEST_SECONDS) throw new InputError('recording-too-long', { minutes: Math.round(seconds / 60) });
}

function secondsOf(head: Uint8Array, fileBytes: number): number {
  const { container } = recognise(head);
  if (container === 'aiff') return aiffSeconds(head, fileBytes);
  if (container === 'amr') return leastAmrSeconds(head, fileBytes);
  return container === 'wav' ? wavSeconds(head, fileBytes) : 0;
}

function wavSeconds(head: Uint8Array, fileBytes: number): number {
  try {
    const view = new DataView(head.buffer, head.byteOffset, head.byteLength);
    const { format, data, announcedDataBytes, openEnded } = findWavChunks(view);
    const { sampleBytes, channels, sampleRateHz } = readWavFormat(view, format);
    const announced = openEnded ? Number.POSITIVE_INFINITY : (announcedDataBytes ?? data.size);
    return Math.min(announced, fileBytes - data.start) / (sampleBytes * channels * sampleRateHz);
  } catch (error) {
    if (error instanceof InputError) return 0;
    throw error;
  }
}
