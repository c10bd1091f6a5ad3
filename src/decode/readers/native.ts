import { InputError } from '../../base/index.js';
import type { Stretch } from './stretch.js';

type Engine = typeof import('node-web-audio-api');

let engine: Promise<Engine> | null = null;

/** Loaded by the first file that needs it; the system's sound library must be there, although nothing is played. */
async function load(): Promise<Engine> {
  try {
    engine ??= import('node-web-audio-api');
    return await engine;
  } catch (error) {
    throw new InputError(String(error).includes('libasound') ? 'sound-library-missing' : 'sound-engine-missing');
  }
}

/**
 * Decodes whole bytes of a format the engine knows: FLAC, MP3, AAC in ADTS, Vorbis, ALAC in MP4. May bring the process
 * down on damaged bytes, so it is called in a process of its own only.
 *
 * @param bytes a whole file
 * @param sampleRateHz the file's own rate: at any other the engine resamples, badly
 * @returns what they hold. Its samples are copied out when they are asked for; a view of the engine's memory would not
 * outlive the engine's own object.
 * @throws InputError `sound-library-missing`; Error when the bytes cannot be decoded
 *
 * Source: W3C, Web Audio API 1.1, decodeAudioData.
 */
export async function decodeNatively(bytes: Uint8Array, sampleRateHz: number): Promise<Stretch> {
  const { OfflineAudioContext } = await load();
  const context = new OfflineAudioContext(1, 1, sampleRateHz);
  const own = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
  const decoded = await context.decodeAudioData(own);
  return {
    channels: decoded.numberOfChannels,
    frames: decoded.length,
    read: (channel, fromFrame, out) => decoded.copyFromChannel(out as Float32Array<ArrayBuffer>, channel, fromFrame),
  };
}
