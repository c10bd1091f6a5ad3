import { type PcmFormat, sampleBytesOf } from './pcm.js';

/** Sound that stands uncompressed in a file. */
export interface PcmFound {
  readonly format: PcmFormat;
  /** whole, or as far as the file goes */
  readonly data: Uint8Array;
}

const CHUNK_HEADER_BYTES = 8;

/** Source: Apple, AIFF-C and QuickTime sound codings; `NONE` is big-endian of the size given. */
function codecOf(compression: string, bits: number): string {
  const wholeBits = Math.ceil(bits / 8) * 8;
  const known: Readonly<Record<string, string>> = {
    NONE: `pcm-s${wholeBits}be`,
    twos: `pcm-s${wholeBits}be`,
    sowt: `pcm-s${wholeBits}`,
    'raw ': 'pcm-u8',
    in24: 'pcm-s24be',
    in32: 'pcm-s32be',
    fl32: 'pcm-f32be',
    FL32: 'pcm-f32be',
    fl64: 'pcm-f64be',
    FL64: 'pcm-f64be',
    ulaw: 'ulaw',
    ULAW: 'ulaw',
    alaw: 'alaw',
    ALAW: 'alaw',
  };
  return (known[compression] ?? compression).replace('s8be', 's8');
}

/** An 80 bit number of IEEE 754: sign and exponent in 16 bits, then 64 bits whose first stands before the point. */
function extended(view: DataView, at: number): number {
  const exponent = (view.getUint16(at) & 0x7fff) - 16383;
  return (view.getUint32(at + 2) * 2 ** 32 + view.getUint32(at + 6)) * 2 ** (exponent - 63);
}

/** Where the sound lies in a file, and how it is stored. */
interface Placed {
  readonly format: PcmFormat;
  readonly start: number;
  /** as the file says, whether it goes so far or not */
  readonly announcedBytes: number;
}

/**
 * @param bytes a whole AIFF or AIFF-C file
 * @returns its sound; null when it holds none
 *
 * Source: Apple, Audio Interchange File Format 1.3 (FORM, COMM, SSND), AIFF-C draft of 1991.
 */
export function findAiffSound(bytes: Uint8Array): PcmFound | null {
  const placed = place(bytes);
  if (placed === null) return null;
  const { format, start, announcedBytes } = placed;
  return { format, data: bytes.subarray(start, start + announcedBytes) };
}

/**
 * @param head the first bytes of an AIFF or AIFF-C file
 * @param fileBytes how large the file is
 * @returns how many seconds of sound it holds; 0 where its first bytes do not tell
 *
 * Source: as `findAiffSound`.
 */
export function aiffSeconds(head: Uint8Array, fileBytes: number): number {
  const placed = place(head);
  if (placed === null) return 0;
  const { format, start, announcedBytes } = placed;
  const { codec, channels, sampleRateHz } = format;
  const bytesASecond = (sampleBytesOf(codec) ?? 0) * channels * sampleRateHz;
  return bytesASecond > 0 ? Math.max(0, Math.min(announcedBytes, fileBytes - start)) / bytesASecond : 0;
}

function place(bytes: Uint8Array): Placed | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const tag = (at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4));
  let format: PcmFormat | null = null;
  let data: Omit<Placed, 'format'> | null = null;
  for (let at = 12; at + CHUNK_HEADER_BYTES <= bytes.length; ) {
    const start = at + CHUNK_HEADER_BYTES;
    const size = view.getUint32(at + 4);
    const end = Math.min(start + size, bytes.length);
    if (tag(at) === 'COMM' && end - start >= 18) {
      const compression = end - start >= 22 ? tag(start + 18) : 'NONE';
      const codec = codecOf(compression, view.getUint16(start + 6));
      format = { codec, channels: view.getUint16(start), sampleRateHz: Math.round(extended(view, start + 8)) };
    }
    if (tag(at) === 'SSND' && end - start >= 8) {
      const offset = 8 + view.getUint32(start);
      data = { start: start + offset, announcedBytes: Math.max(0, size - offset) };
    }
    at = start + size + (size & 1);
  }
  return format === null || data === null ? null : { format, ...data };
}
