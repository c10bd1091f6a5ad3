import { deflateSync } from 'node:zlib';

const HEADER_BYTES = 44;
const ENTRY_BYTES = 20;
const TRUE_TYPE = 0x00010000;

/** `head` holds a sum over the whole font there. Source: OpenType 1.9, head. */
const ADJUSTMENT_AT = 8;
const WHOLE_SUM = 0xb1b0afba;

/**
 * @param tables of a TrueType face by their tags
 * @returns the face as a WOFF file
 *
 * Source: WOFF File Format 1.0 (W3C Recommendation, 2012); OpenType 1.9, table directory and checksums.
 */
export function writeWoff(tables: ReadonlyMap<string, Buffer>): Buffer {
  const entries = [...tables]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([tag, data]) => ({ tag, data: adjustable(tag, data) }));
  const whole = adjust(entries);
  const header = Buffer.alloc(HEADER_BYTES);
  const directory = Buffer.alloc(ENTRY_BYTES * entries.length);
  const bodies: Buffer[] = [];
  let at = header.length + directory.length;
  for (const [i, { tag, data }] of entries.entries()) {
    const packed = deflateSync(data, { level: 9 });
    const body = packed.length < data.length ? packed : data;
    directory.write(tag, ENTRY_BYTES * i, 'latin1');
    const fields = [at, body.length, data.length, sumOf(data)];
    for (const [place, value] of fields.entries()) directory.writeUInt32BE(value, ENTRY_BYTES * i + 4 + 4 * place);
    bodies.push(body, Buffer.alloc(-body.length & 3));
    at += body.length + (-body.length & 3);
  }
  header.write('wOFF', 0, 'latin1');
  header.writeUInt32BE(TRUE_TYPE, 4);
  header.writeUInt32BE(at, 8);
  header.writeUInt16BE(entries.length, 12);
  header.writeUInt32BE(whole, 16);
  header.writeUInt16BE(1, 20);
  return Buffer.concat([header, directory, ...bodies]);
}

interface Entry {
  readonly tag: string;
  readonly data: Buffer;
}

function adjustable(tag: string, data: Buffer): Buffer {
  if (tag !== 'head') return data;
  const head = Buffer.from(data);
  head.writeUInt32BE(0, ADJUSTMENT_AT);
  return head;
}

/** Puts the sum over the unpacked font into `head`; gives the size of that font. */
function adjust(entries: readonly Entry[]): number {
  const directory = Buffer.alloc(12 + 16 * entries.length);
  const power = 2 ** Math.floor(Math.log2(entries.length));
  directory.writeUInt32BE(TRUE_TYPE, 0);
  directory.writeUInt16BE(entries.length, 4);
  directory.writeUInt16BE(16 * power, 6);
  directory.writeUInt16BE(Math.log2(power), 8);
  directory.writeUInt16BE(16 * (entries.length - power), 10);
  let at = directory.length;
  let sum = 0;
  for (const [i, { tag, data }] of entries.entries()) {
    directory.write(tag, 12 + 16 * i, 'latin1');
    const fields = [sumOf(data), at, data.length];
    for (const [place, value] of fields.entries()) directory.writeUInt32BE(value, 12 + 16 * i + 4 + 4 * place);
    at += data.length + (-data.length & 3);
    sum = (sum + sumOf(data)) >>> 0;
  }
  const head = entries.find(({ tag }) => tag === 'head');
  head?.data.writeUInt32BE((WHOLE_SUM - sum - sumOf(directory)) >>> 0, ADJUSTMENT_AT);
  return at;
}

/** Sum of a table's 32 bit numbers, missing bytes at its end read as 0. */
function sumOf(data: Buffer): number {
  let sum = 0;
  for (let at = 0; at < data.length; at += 4) {
    const left = data.length - at;
    sum = (sum + (left >= 4 ? data.readUInt32BE(at) : data.readUIntBE(at, left) * 2 ** (8 * (4 - left)))) >>> 0;
  }
  return sum;
}
