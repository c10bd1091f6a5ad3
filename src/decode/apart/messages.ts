import type { Fault } from '../../base/index.js';

/**
 * What goes over the pipes between this process and the one that decodes. Numbers are in the machine's own byte order, as
 * both run on it.
 *
 * There: three 64 bit floats (bytes of the file, seconds it may take, megabytes it may need), then the file.
 * Back: messages, each behind two 32 bit numbers (kind, length in bytes).
 */
export const REQUEST_BYTES = 24;

/**
 * @param bytes length of the file
 * @param seconds after which the process is to end itself
 * @param megabytes beyond which it is to end itself
 * @returns what goes before the file
 */
export function requestHead(bytes: number, seconds: number, megabytes: number): Uint8Array {
  return new Uint8Array(Float64Array.of(bytes, seconds, megabytes).buffer);
}

/** Frames in each piece of sound but the last. */
export const PIECE_FRAMES = 2 ** 16;
export const MOST_CHANNELS = 8;
/** How many channels a piece holds stands before them. */
export const PIECE_HEADER_BYTES = Uint32Array.BYTES_PER_ELEMENT;

/** `about` comes first, `piece` as often as needed, `done` or `refused` last. */
const KINDS = ['about', 'piece', 'done', 'refused'] as const;

export type Kind = (typeof KINDS)[number];

/** What is known of sound before it is decoded. */
export interface About {
  readonly codec: string;
  readonly sampleRateHz: number;
  readonly channels: number;
}

/** What is known afterwards. */
export interface Done {
  /** samples that were no numbers, or absurdly large, and were set to 0 */
  readonly replaced: number;
  /** seconds the file says it holds; null where it does not */
  readonly announcedSeconds: number | null;
  /** where silence stands for a damaged packet, in seconds */
  readonly lostSeconds: readonly number[];
  /** the file went on in a way that could not be followed */
  readonly brokenOff: boolean;
}

/** Why there is no sound. */
export interface Refused {
  /** null when the file could not be followed */
  readonly fault: Fault | null;
}

/** A message and its bytes. */
export interface Message {
  readonly kind: Kind;
  readonly payload: Uint8Array<ArrayBuffer>;
}

const HEADER_BYTES = 8;
const LONGEST_BYTES = PIECE_HEADER_BYTES + PIECE_FRAMES * MOST_CHANNELS * Float32Array.BYTES_PER_ELEMENT;

/**
 * @param kind what it is
 * @param payload its bytes
 * @returns both, to be written one after the other
 */
export function framed(kind: Kind, payload: Uint8Array): [header: Uint8Array, payload: Uint8Array] {
  return [new Uint8Array(Uint32Array.of(KINDS.indexOf(kind), payload.length).buffer), payload];
}

/**
 * Puts messages together again from whatever a pipe gives.
 *
 * @param onMessage told each message once it is whole; its bytes begin an array of their own
 * @returns takes the next bytes
 * @throws Error when they are no messages
 */
export function messageReader(onMessage: (message: Message) => void): (chunk: Uint8Array) => void {
  const header = new Uint8Array(HEADER_BYTES);
  let headerHeld = 0;
  let kind: Kind | undefined;
  let payload = new Uint8Array(0);
  let held = 0;
  return (chunk) => {
    for (let at = 0; at < chunk.length || (kind !== undefined && held === payload.length); ) {
      if (kind === undefined) {
        const part = chunk.subarray(at, at + HEADER_BYTES - headerHeld);
        header.set(part, headerHeld);
        headerHeld += part.length;
        at += part.length;
        if (headerHeld < HEADER_BYTES) return;
        const [place = 0, length = 0] = new Uint32Array(header.slice().buffer);
        kind = KINDS[place];
        if (kind === undefined || length > LONGEST_BYTES) throw new Error('these are no messages');
        payload = new Uint8Array(length);
        [headerHeld, held] = [0, 0];
      }
      const part = chunk.subarray(at, at + payload.length - held);
      payload.set(part, held);
      held += part.length;
      at += part.length;
      if (held < payload.length) return;
      const message = { kind, payload };
      kind = undefined;
      onMessage(message);
    }
  };
}
