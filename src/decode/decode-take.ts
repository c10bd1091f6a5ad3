import { InputError } from '../base/index.js';
import { Decoder } from './apart/decoder.js';
import type { DecodedApart } from './apart/incoming-sound.js';
import { decodeWav } from './decode-wav.js';
import { damageCautions, mixToMono } from './mix-to-mono.js';
import { originOf } from './origin.js';
import { recognise } from './recognise.js';
import type { Take } from './types.js';

const MIN_SECONDS = 0.1;
/** Indexes are right to a packet or two; what lacks more is cut off. */
const MISSING_SECONDS = 0.25;

/** One for all takes of this thread, made with the first that needs it. */
let shared: Decoder | null = null;

/**
 * Decodes a recording of any kind that is read, told by what it holds, never by its name. WAV is read here and now;
 * everything else in a process of its own, which lives on for the next take and costs nothing until then.
 *
 * @param bytes the whole file
 * @param decoder what reads everything else; one for all takes when it is left out
 * @returns the recording as a mono mix, full scale = ±1, with its cautions
 * @throws InputError `empty-file`, `not-a-recording`, `recording-too-short`, what `decodeWav` and `Decoder` throw
 *
 * Source: definition.
 */
export async function decodeTake(bytes: Uint8Array, decoder?: Decoder): Promise<Take> {
  const { handling, name, container } = recognise(bytes);
  if (handling === 'here' || bytes.length === 0) return decodeWav(bytes);
  if (handling === 'sound-not-read') {
    throw new InputError('sound-not-read', `this is ${name}, which is not read; save the take as WAV or M4A`);
  }
  if (handling === 'not-a-recording') {
    throw new InputError('not-a-recording', `this is ${name}; a recording is needed, as it was made or saved as WAV`);
  }
  shared ??= decoder === undefined ? new Decoder() : null;
  return takeOf(await (decoder ?? (shared as Decoder)).decode(bytes), container, bytes.length);
}

function takeOf(decoded: DecodedApart, container: string, fileBytes: number): Take {
  const { source, sampleRateHz, channels, codec } = decoded;
  const seconds = source.frames / sampleRateHz;
  if (seconds < MIN_SECONDS) {
    const held = `${(seconds * 1000).toFixed(0)} ms of sound`;
    throw new InputError('recording-too-short', `the recording holds only ${held}; record or copy the take again`);
  }
  const { cautions, ...mix } = mixToMono(source);
  const ending = endCautions(decoded, seconds);
  return {
    ...mix,
    sampleRateHz,
    channels,
    origin: originOf({ container, codec, fileBytes, sampleRateHz }, mix.samples),
    ...(ending.length > 0 ? { breaksOff: true } : {}),
    cautions: [...ending, ...damageCautions(decoded.replaced), ...cautions],
  };
}

function endCautions({ announcedSeconds, brokenOff }: DecodedApart, seconds: number): string[] {
  if (announcedSeconds !== null && seconds < announcedSeconds - MISSING_SECONDS) {
    return [`the file breaks off: it should hold ${announcedSeconds.toFixed(1)} s and holds ${seconds.toFixed(1)} s`];
  }
  if (!brokenOff) return [];
  return [`the file is damaged or cut off after ${seconds.toFixed(1)} s; only what stands before it was heard`];
}
