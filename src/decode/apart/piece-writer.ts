import { InputError } from '../../base/index.js';
import type { Sound, Stretch } from '../readers/stretch.js';
import { type About, type Done, MOST_CHANNELS, PIECE_FRAMES, PIECE_HEADER_BYTES } from './messages.js';

/** Beyond this a sample is damage, not a loud note: +180 dBFS. */
const ABSURD = 1e9;
const LONGEST_SECONDS = 3600;
const LOWEST_HERTZ = 8000;
const HIGHEST_HERTZ = 192_000;

/** Where sound goes. */
export interface PieceTarget {
  readonly about: (about: About) => Promise<void>;
  /** number of channels, then these one behind the other, equally many frames in each; one alone when all are the same */
  readonly piece: (bytes: Uint8Array) => Promise<void>;
}

/** Sets what cannot be a sample to 0 and returns how often. */
function replaceDamage(samples: Float32Array): number {
  let replaced = 0;
  for (let i = 0; i < samples.length; i++) {
    if (Math.abs(samples[i] as number) <= ABSURD) continue;
    samples[i] = 0;
    replaced++;
  }
  return replaced;
}

function areEqual(one: Float32Array, other: Float32Array): boolean {
  for (let i = 0; i < one.length; i++) if (one[i] !== other[i]) return false;
  return true;
}

/**
 * Passes sound on in pieces of equal length, whatever stretches a decoder gives.
 *
 * @param sound not decoded yet
 * @param target told of the sound, then its pieces
 * @returns what is known afterwards
 * @throws InputError `recording-too-long` beyond an hour, `sound-not-read` for rates and channels that are not read
 */
export async function writePieces(sound: Sound, target: PieceTarget): Promise<Done> {
  let memory: Float32Array[] = [];
  let [held, frames, replaced] = [0, 0, 0];
  const flush = async (): Promise<void> => {
    const pieces = memory.map((samples) => samples.subarray(0, held));
    for (const samples of pieces) replaced += replaceDamage(samples);
    const [first, ...others] = pieces as [Float32Array, ...Float32Array[]];
    const sent = others.every((other) => areEqual(first, other)) ? [first] : pieces;
    const joined = new ArrayBuffer(PIECE_HEADER_BYTES + held * sent.length * Float32Array.BYTES_PER_ELEMENT);
    new Uint32Array(joined, 0, 1)[0] = sent.length;
    for (const [c, samples] of sent.entries()) new Float32Array(joined, PIECE_HEADER_BYTES).set(samples, c * held);
    held = 0;
    await target.piece(new Uint8Array(joined));
  };
  for await (const stretch of sound.stretches) {
    if (memory.length === 0) {
      checkFormat(sound.sampleRateHz, stretch.channels);
      memory = Array.from({ length: stretch.channels }, () => new Float32Array(PIECE_FRAMES));
      await target.about({ codec: sound.codec, sampleRateHz: sound.sampleRateHz, channels: stretch.channels });
    }
    frames += stretch.frames;
    if (frames > LONGEST_SECONDS * sound.sampleRateHz) {
      throw new InputError('recording-over-an-hour');
    }
    for (let at = 0; at < stretch.frames; ) {
      const count = Math.min(PIECE_FRAMES - held, stretch.frames - at);
      fill(memory, stretch, at, held, count);
      held += count;
      at += count;
      if (held === PIECE_FRAMES) await flush();
    }
  }
  if (held > 0) await flush();
  return {
    replaced,
    announcedSeconds: sound.announcedSeconds ?? null,
    lostSeconds: sound.lostSeconds?.() ?? [],
    brokenOff: sound.brokenOff?.() ?? false,
  };
}

/** A stretch may have fewer channels than the first had: then its first one stands for those that are missing. */
function fill(memory: readonly Float32Array[], stretch: Stretch, from: number, to: number, count: number): void {
  for (const [c, samples] of memory.entries()) {
    stretch.read(c < stretch.channels ? c : 0, from, samples.subarray(to, to + count));
  }
}

function checkFormat(hertz: number, channels: number): void {
  const isRead = hertz >= LOWEST_HERTZ && hertz <= HIGHEST_HERTZ && channels >= 1 && channels <= MOST_CHANNELS;
  if (isRead) return;
  const read = { most: MOST_CHANNELS, lowestHertz: LOWEST_HERTZ, highestHertz: HIGHEST_HERTZ };
  throw new InputError('sound-not-usual', { channels, hertz, ...read });
}
