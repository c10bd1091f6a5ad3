import { joined } from './batches.js';

/** How ALAC sound is coded. */
export interface AlacFormat {
  /** its description, 24 bytes */
  readonly cookie: Uint8Array;
  /** samples of each channel in a packet */
  readonly packetFrames: number;
  readonly bits: number;
  readonly channels: number;
  readonly sampleRateHz: number;
}

type Part = Uint8Array | number[];

const u16 = (value: number): number[] => [(value >> 8) & 0xff, value & 0xff];
const u32 = (value: number): number[] => [...u16(value >>> 16), ...u16(value & 0xffff)];
const zeros = (count: number): number[] => new Array<number>(count).fill(0);
const ascii = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));

function box(type: string, ...parts: readonly Part[]): Uint8Array {
  const size = parts.reduce((sum, part) => sum + part.length, 8);
  return joined([{ data: Uint8Array.from([...u32(size), ...ascii(type)]) }, ...parts.map(toBytes)]);
}

const toBytes = (part: Part): { data: Uint8Array } => ({ data: Uint8Array.from(part) });

/** The identity, as films turn their pictures. */
const MATRIX = [0x10000, 0, 0, 0, 0x10000, 0, 0, 0, 0x40000000].flatMap(u32);

function sampleTable(format: AlacFormat, sizes: readonly number[], dataAt: number): Uint8Array {
  const { channels, bits, sampleRateHz, packetFrames } = format;
  const entry = [zeros(6), u16(1), zeros(8), u16(channels), u16(bits), zeros(4), u16(sampleRateHz & 0xffff), u16(0)];
  const coding = box('alac', ...entry, box('alac', zeros(4), format.cookie));
  return box(
    'stbl',
    box('stsd', zeros(4), u32(1), coding),
    box('stts', zeros(4), u32(1), u32(sizes.length), u32(packetFrames)),
    box('stsc', zeros(4), u32(1), u32(1), u32(sizes.length), u32(1)),
    box('stsz', zeros(4), u32(0), u32(sizes.length), sizes.flatMap(u32)),
    box('stco', zeros(4), u32(1), u32(dataAt)),
  );
}

function index(format: AlacFormat, sizes: readonly number[], dataAt: number): Uint8Array {
  const rate = u32(format.sampleRateHz);
  const length = u32(sizes.length * format.packetFrames);
  const media = box(
    'minf',
    box('smhd', zeros(8)),
    box('dinf', box('dref', zeros(4), u32(1), box('url ', u32(1)))),
    sampleTable(format, sizes, dataAt),
  );
  const sound = box(
    'mdia',
    box('mdhd', zeros(12), rate, length, u16(0x55c4), u16(0)),
    box('hdlr', zeros(8), ascii('soun'), zeros(13)),
    media,
  );
  const track = box(
    'tkhd',
    u32(7),
    zeros(8),
    u32(1),
    zeros(4),
    length,
    zeros(8),
    u16(0),
    u16(0),
    u16(0x100),
    u16(0),
    MATRIX,
    zeros(8),
  );
  const film = box('mvhd', zeros(12), rate, length, u32(0x10000), u16(0x100), zeros(10), MATRIX, zeros(24), u32(2));
  return box('moov', film, box('trak', track, sound));
}

/**
 * @param format how the sound is coded
 * @param packets the packets
 * @returns the smallest MP4 file that holds them, its index first
 *
 * Source: ISO/IEC 14496-12 (boxes), 8.2 to 8.7; the sample entry as Apple describes it for ALAC.
 */
export function alacMp4(format: AlacFormat, packets: readonly { readonly data: Uint8Array }[]): Uint8Array {
  const type = box('ftyp', ascii('M4A '), zeros(4), ascii('isomM4A '));
  const sizes = packets.map(({ data }) => data.length);
  const dataAt = type.length + index(format, sizes, 0).length + 8;
  return joined([
    { data: type },
    { data: index(format, sizes, dataAt) },
    { data: Uint8Array.from([...u32(sizes.reduce((sum, size) => sum + size, 8)), ...ascii('mdat')]) },
    ...packets,
  ]);
}
