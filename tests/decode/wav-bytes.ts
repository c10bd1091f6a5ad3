/**
 * WAV files built byte by byte for the tests, after the layouts printed in Microsoft & IBM, Multimedia Programming
 * Interface and Data Specifications 1.0 (1991), and EBU Tech 3306. Shares no code with the reader.
 */

export const ascii = (text: string): number[] => [...text].map((character) => character.charCodeAt(0));
export const u16 = (value: number): number[] => [value & 0xff, (value >>> 8) & 0xff];
export const u32 = (value: number): number[] => [...u16(value & 0xffff), ...u16(Math.floor(value / 65536) & 0xffff)];

export interface FormatFields {
  tag?: number;
  channels?: number;
  rate?: number;
  bits?: number;
  blockAlign?: number;
  extra?: number[];
}

/** Chunk: four characters, size, content, and a zero byte when the size is odd. */
export function chunk(id: string, content: number[], announcedSize = content.length): number[] {
  return [...ascii(id), ...u32(announcedSize), ...content, ...(content.length % 2 === 1 ? [0] : [])];
}

export function formatChunk(fields: FormatFields = {}): number[] {
  const { tag = 1, channels = 1, rate = 8000, bits = 16, extra = [] } = fields;
  const blockAlign = fields.blockAlign ?? (channels * Math.ceil(bits / 8)) & 0xffff;
  return chunk('fmt ', [
    ...u16(tag),
    ...u16(channels),
    ...u32(rate),
    ...u32(rate * blockAlign),
    ...u16(blockAlign),
    ...u16(bits),
    ...extra,
  ]);
}

/** The 24 bytes after the plain format fields: cbSize 22, valid bits, speaker mask, GUID of the sub-format. */
export function extensible(subFormat: number, validBits: number): number[] {
  const guidTail = [0x00, 0x00, 0x00, 0x00, 0x10, 0x00, 0x80, 0x00, 0x00, 0xaa, 0x00, 0x38, 0x9b, 0x71];
  return [...u16(22), ...u16(validBits), ...u32(0), ...u16(subFormat), ...guidTail];
}

export function riff(chunks: number[][], container = 'RIFF', announcedSize?: number): Uint8Array {
  const body = [...ascii('WAVE'), ...chunks.flat()];
  return Uint8Array.from([...ascii(container), ...u32(announcedSize ?? body.length), ...body]);
}

/** `count` 16 bit samples that rise by 1 from `first`. */
export function ramp16(count: number, first = 0): number[] {
  return Array.from({ length: count }, (_, i) => u16((first + i) & 0xffff)).flat();
}
