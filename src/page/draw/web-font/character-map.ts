const HEADER_BYTES = 12;
const SUBTABLE_HEADER_BYTES = 16;
const GROUP_BYTES = 12;

/**
 * @param glyphs number of the glyph by code point
 * @returns the table `cmap`: one subtable of format 12, a group a character
 *
 * Source: OpenType 1.9, cmap, format 12 (platform 3, encoding 10).
 */
export function characterMap(glyphs: ReadonlyMap<number, number>): Buffer {
  const groups = [...glyphs].sort(([a], [b]) => a - b);
  const length = SUBTABLE_HEADER_BYTES + GROUP_BYTES * groups.length;
  const table = Buffer.alloc(HEADER_BYTES + length);
  table.writeUInt16BE(1, 2);
  table.writeUInt16BE(3, 4);
  table.writeUInt16BE(10, 6);
  table.writeUInt32BE(HEADER_BYTES, 8);
  table.writeUInt16BE(12, 12);
  table.writeUInt32BE(length, 16);
  table.writeUInt32BE(groups.length, 24);
  for (const [i, [codePoint, glyph]] of groups.entries()) {
    const at = HEADER_BYTES + SUBTABLE_HEADER_BYTES + GROUP_BYTES * i;
    table.writeUInt32BE(codePoint, at);
    table.writeUInt32BE(codePoint, at + 4);
    table.writeUInt32BE(glyph, at + 8);
  }
  return table;
}
