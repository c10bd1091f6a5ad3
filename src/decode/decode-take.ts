import { type Caution, type FileFormat, InputError } from '../base/index.js';
import { Decoder } from './apart/decoder.js';
import type { DecodedApart } from './apart/incoming-sound.js';
import { recognise } from './common/recognise.js';
import { decodeWav } from './decode-wav.js';
import { damageCautions, mixToMono } from './mix-to-mono.js';
import { originOf } from './origin.js';
import type { Origin, Take } from './types.js';

const MIN_SECONDS = 0.1;
/** Indexes are right to a packet or two; what lacks more is cut off. */
const MISSING_SECONDS = 0.25;
/** What telephone calls leave out begins below it. */
const NARROW_HZ = 5000;

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
 */
export async function decodeTake(bytes: Uint8Array, decoder?: Decoder): Promise<Take> {
  const { handling, container } = recognise(bytes);
  if (handling === 'here' || bytes.length === 0) return decodeWav(bytes);
  if (handling === 'sound-not-read') throw new InputError('format-not-read', { format: container });
  if (handling === 'not-a-recording') throw new InputError('no-recording', { format: container });
  shared ??= decoder === undefined ? new Decoder() : null;
  return takeOf(await (decoder ?? (shared as Decoder)).decode(bytes), container, bytes.length);
}

/**
 * Starts what decodes a recording, where it is none that is read here, so that it is ready when `decodeTake` is asked.
 *
 * @param bytes the file, or its beginning
 */
export function prepareFor(bytes: Uint8Array): void {
  if (recognise(bytes).handling !== 'apart') return;
  shared ??= new Decoder();
  shared.start();
}

function takeOf(decoded: DecodedApart, container: FileFormat, fileBytes: number): Take {
  const { source, sampleRateHz, channels, codec } = decoded;
  const seconds = source.frames / sampleRateHz;
  if (seconds < MIN_SECONDS) {
    throw new InputError('recording-too-short', { milliseconds: Math.round(seconds * 1000) });
  }
  const { cautions, ...mix } = mixToMono(source);
  const origin = originOf({ container, codec, fileBytes, sampleRateHz }, mix.samples);
  const ending = endCautions(decoded, seconds);
  return {
    ...mix,
    sampleRateHz,
    channels,
    origin,
    ...(ending.length > 0 ? { breaksOff: true } : {}),
    cautions: [
      ...ending,
      ...damageCautions(decoded.replaced),
      ...lossCautions(decoded.lostSeconds),
      ...cautions,
      ...codingCautions(origin),
    ],
  };
}

const tenths = (value: number): number => Number(value.toFixed(1));

function endCautions({ announcedSeconds, brokenOff }: DecodedApart, seconds: number): Caution[] {
  const heldSeconds = tenths(seconds);
  if (announcedSeconds !== null && seconds < announcedSeconds - MISSING_SECONDS) {
    return [{ code: 'breaks-off', facts: { announcedSeconds: tenths(announcedSeconds), heldSeconds } }];
  }
  return brokenOff ? [{ code: 'damaged-from', facts: { heldSeconds } }] : [];
}

function lossCautions(lostSeconds: readonly number[]): Caution[] {
  if (lostSeconds.length === 0) return [];
  return [
    { code: 'packets-lost', facts: { packets: lostSeconds.length, seconds: [...new Set(lostSeconds.map(tenths))] } },
  ];
}

function codingCautions({ speech, bandwidthHz }: Origin): Caution[] {
  if (speech) return [{ code: 'speech-coding', facts: {} }];
  const isNarrow = bandwidthHz > 0 && bandwidthHz < NARROW_HZ;
  return isNarrow ? [{ code: 'narrow-band', facts: { kilohertz: tenths(bandwidthHz / 1000) } }] : [];
}
