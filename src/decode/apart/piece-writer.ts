import { InputError } from '../../base/index.js';
import { LONGEST_SECONDS } from '../common/longest.js';
import type { Sound, Stretch } from '../readers/stretch.js';
import { type About, type Done, MOST_CHANNELS, PIECE_FRAMES, PIECE_HEADER_BYTES } from './messages.js';

/** Beyond this a sample is damage, not a loud note: +180 dBFS. */
const ABSURD = 1e9;
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
  let memory: PieceMemory | null = null;
  let [channels, held, frames, replaced] = [0, 0, 0, 0];
  const flush = async ({ all, each }: PieceMemory): Promise<void> => {
    const [first, ...others] = each.map((samples) => samples.subarray(0, held)) as [Float32Array, ...Float32Array[]];
    replaced += replaceDamage(first);
    for (const other of others) replaced += replaceDamage(other);
    const sent = others.every((other) => areEqual(first, other)) ? 1 : channels;
    const samples = new Float32Array(all, PIECE_HEADER_BYTES);
    // the last piece is shorter: its channels move together
    for (let c = 1; c < sent && held < PIECE_FRAMES; c++) {
      samples.copyWithin(c * held, c * PIECE_FRAMES, c * PIECE_FRAMES + held);
    }
    new Uint32Array(all, 0, 1)[0] = sent;
    const bytes = PIECE_HEADER_BYTES + held * sent * Float32Array.BYTES_PER_ELEMENT;
    [held, memory] = [0, null];
    await target.piece(new Uint8Array(all, 0, bytes));
  };
  for await (const stretch of sound.stretches) {
    if (channels === 0) {
      checkFormat(sound.sampleRateHz, stretch.channels);
      channels = stretch.channels;
      await target.about({ codec: sound.codec, sampleRateHz: sound.sampleRateHz, channels: stretch.channels });
    }
    frames += stretch.frames;
    if (frames > LONGEST_SECONDS * sound.sampleRateHz) {
      throw new InputError('recording-over-an-hour');
    }
    for (let at = 0; at < stretch.frames; ) {
      const count = Math.min(PIECE_FRAMES - held, stretch.frames - at);
      memory ??= pieceMemory(channels);
      fill(memory.each, stretch, at, held, count);
      held += count;
      at += count;
      if (held === PIECE_FRAMES) await flush(memory);
    }
  }
  if (memory !== null) await flush(memory);
  return {
    replaced,
    announcedSeconds: sound.announcedSeconds ?? null,
    lostSeconds: sound.lostSeconds?.() ?? [],
    brokenOff: sound.brokenOff?.() ?? false,
  };
}

/** What is sent as one piece, and its channels in it. It is made anew for each: a pipe may hold the one before still. */
interface PieceMemory {
  readonly all: ArrayBuffer;
  readonly each: readonly Float32Array[];
}

function pieceMemory(channels: number): PieceMemory {
  const bytes = PIECE_FRAMES * Float32Array.BYTES_PER_ELEMENT;
  const all = new ArrayBuffer(PIECE_HEADER_BYTES + channels * bytes);
  const each = Array.from(
    { length: channels },
    (_, c) => new Float32Array(all, PIECE_HEADER_BYTES + c * bytes, PIECE_FRAMES),
  );
  return { all, each };
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
