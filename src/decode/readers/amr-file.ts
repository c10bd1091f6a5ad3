import type { Packet } from './track.js';

const PACKET_SECONDS = 0.02;
/** Bytes of a packet by its mode, its own first byte counted. Source: RFC 4867, 5.3 and table 1; 3GPP TS 26.101, 26.201. */
const NARROW = [13, 14, 16, 18, 20, 21, 27, 32, 6, 0, 0, 0, 0, 0, 0, 1];
const WIDE = [18, 24, 33, 37, 41, 47, 51, 59, 61, 6, 0, 0, 0, 0, 1, 1];
/** Bytes of the mark at the beginning. */
const MARK = { narrow: 6, wide: 9 };

/** A file of speech packets. */
export interface AmrFile {
  /** AMR-WB (16 kHz) instead of AMR (8 kHz) */
  readonly wide: boolean;
  /** as many packets as stand in it, up to one of no known mode */
  readonly seconds: number;
  readonly packets: () => AsyncIterable<Packet>;
}

/**
 * @param bytes a whole AMR file of one channel
 * @returns what stands in it; a packet cut off at the end is left out
 * @throws Error, while packets are read, when one is of no known mode
 *
 * Source: RFC 4867, 5.1 and 5.3.
 */
export function amrFile(bytes: Uint8Array): AmrFile {
  const wide = isWide(bytes);
  return { wide, seconds: secondsOf(bytes, wide), packets: () => packetsOf(bytes, wide) };
}

/**
 * @param head the first bytes of an AMR file
 * @param fileBytes how large the file is
 * @returns seconds it lasts at least, as if every packet were of the mode that takes most bytes
 *
 * Source: as `amrFile`.
 */
export function leastAmrSeconds(head: Uint8Array, fileBytes: number): number {
  const wide = isWide(head);
  const largest = Math.max(...(wide ? WIDE : NARROW));
  return (PACKET_SECONDS * Math.max(0, fileBytes - (wide ? MARK.wide : MARK.narrow))) / largest;
}

function isWide(bytes: Uint8Array): boolean {
  return bytes[5] === '-'.charCodeAt(0);
}

function packetBytes(bytes: Uint8Array, at: number, wide: boolean): number {
  return (wide ? WIDE : NARROW)[((bytes[at] as number) >> 3) & 15] as number;
}

function secondsOf(bytes: Uint8Array, wide: boolean): number {
  let packets = 0;
  for (let at = wide ? MARK.wide : MARK.narrow; at < bytes.length; packets += 1) {
    const size = packetBytes(bytes, at, wide);
    if (size === 0) break;
    at += size;
  }
  return packets * PACKET_SECONDS;
}

async function* packetsOf(bytes: Uint8Array, wide: boolean): AsyncGenerator<Packet> {
  let timestamp = 0;
  for (let at = wide ? MARK.wide : MARK.narrow; at < bytes.length; timestamp += PACKET_SECONDS) {
    const size = packetBytes(bytes, at, wide);
    if (size === 0) throw new Error('a packet is of no known mode');
    if (at + size <= bytes.length) yield { data: bytes.subarray(at, at + size), timestamp, duration: PACKET_SECONDS };
    at += size;
  }
}
