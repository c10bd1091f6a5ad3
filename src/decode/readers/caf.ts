import type { Packet, Track } from './track.js';

/** What a CAF file says about itself. */
interface CafParts {
  format: DataView | null;
  cookie: Uint8Array | null;
  table: DataView | null;
  data: Uint8Array | null;
}

const CHUNK_HEADER_BYTES = 12;
const EDIT_COUNT_BYTES = 4;
const TABLE_HEADER_BYTES = 24;
const FLOAT = 1;
const LITTLE = 2;

function chunksOf(bytes: Uint8Array): CafParts {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const parts: CafParts = { format: null, cookie: null, table: null, data: null };
  for (let at = 8; at + CHUNK_HEADER_BYTES <= bytes.length; ) {
    const tag = String.fromCharCode(...bytes.subarray(at, at + 4));
    const start = at + CHUNK_HEADER_BYTES;
    const size = Number(view.getBigInt64(at + 4));
    // The last chunk may leave its size open.
    const end = size < 0 ? bytes.length : Math.min(start + size, bytes.length);
    const part = (): DataView => new DataView(bytes.buffer, bytes.byteOffset + start, end - start);
    if (tag === 'desc' && end - start >= 32) parts.format = part();
    if (tag === 'kuki') parts.cookie = bytes.subarray(start, end);
    if (tag === 'pakt' && end - start >= TABLE_HEADER_BYTES) parts.table = part();
    if (tag === 'data') parts.data = bytes.subarray(Math.min(start + EDIT_COUNT_BYTES, end), end);
    if (size < 0) break;
    at = start + size;
  }
  return parts;
}

function codecOf(format: DataView): string {
  const id = String.fromCharCode(...[8, 9, 10, 11].map((at) => format.getUint8(at))).trim();
  if (id !== 'lpcm') return id;
  const flags = format.getUint32(12);
  const bits = Math.ceil(format.getUint32(28) / 8) * 8;
  return `pcm-${flags & FLOAT ? 'f' : 's'}${bits}${flags & LITTLE || bits === 8 ? '' : 'be'}`;
}

/** Sizes of packets: numbers of 7 bits a byte, the highest bit set where more follow. */
function* sizesIn(table: DataView): Generator<number> {
  let value = 0;
  for (let at = TABLE_HEADER_BYTES; at < table.byteLength; at++) {
    const byte = table.getUint8(at);
    value = value * 128 + (byte & 127);
    if (byte >= 128) continue;
    yield value;
    value = 0;
  }
}

async function* packetsOf({ format, table, data }: CafParts): AsyncGenerator<Packet> {
  if (format === null || data === null) return;
  const rate = format.getFloat64(0);
  const frames = format.getUint32(20);
  // What the decoder needs to settle stands before the beginning.
  let timestamp = table === null ? 0 : -table.getInt32(16) / rate;
  if (table === null) {
    yield { data, timestamp, duration: 0 };
    return;
  }
  let at = 0;
  for (const size of sizesIn(table)) {
    if (at + size > data.length) return;
    yield { data: data.subarray(at, at + size), timestamp, duration: frames / rate };
    timestamp += frames / rate;
    at += size;
  }
}

/** The AudioSpecificConfig inside an elementary stream descriptor. Source: ISO/IEC 14496-1, tag 5. */
function specificConfig(cookie: Uint8Array): Uint8Array {
  const at = cookie.indexOf(5, 20);
  let start = at + 1;
  while (((cookie[start] ?? 0) & 128) !== 0) start++;
  return cookie.subarray(start + 1, start + 1 + (cookie[start] ?? 0));
}

/**
 * @param bytes a whole CAF file
 * @returns its sound, still coded; null when it holds none. Uncompressed sound is one packet.
 *
 * Source: Apple, Core Audio Format Specification 1.0 (desc, kuki, pakt, data).
 */
export function openCaf(bytes: Uint8Array): Track | null {
  const parts = chunksOf(bytes);
  if (parts.format === null || parts.data === null) return null;
  const codec = codecOf(parts.format);
  const description = parts.cookie !== null && codec === 'aac' ? specificConfig(parts.cookie) : parts.cookie;
  return {
    codec,
    sampleRateHz: parts.format.getFloat64(0),
    channels: parts.format.getUint32(24),
    description,
    announcedSeconds: null,
    packets: () => packetsOf(parts),
    brokenOff: () => false,
  };
}
