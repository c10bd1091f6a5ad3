/** The outlines of a TrueType face: the tables `glyf` and `loca`. */
export interface Outlines {
  readonly glyf: Buffer;
  readonly loca: Buffer;
}

/** Flags of a part of a composite glyph. Source: OpenType 1.9, glyf, composite glyph description. */
const WORDS = 0x0001;
const SCALE = 0x0008;
const MORE = 0x0020;
const TWO_SCALES = 0x0040;
const TWO_BY_TWO = 0x0080;

/**
 * Empties the outlines nobody needs. Every glyph keeps its number, so that all other tables of the face stay true.
 *
 * @param outlines of the whole face
 * @param longOffsets whether `loca` holds 32 bit offsets (`indexToLocFormat` of `head`)
 * @param wanted numbers of the glyphs to keep; those they are composed of are kept as well
 * @returns the outlines with `loca` in 32 bit offsets
 *
 * Source: OpenType 1.9, glyf and loca.
 */
export function keepGlyphs({ glyf, loca }: Outlines, longOffsets: boolean, wanted: Iterable<number>): Outlines {
  const offset = (glyph: number): number =>
    longOffsets ? loca.readUInt32BE(4 * glyph) : 2 * loca.readUInt16BE(2 * glyph);
  const outlineOf = (glyph: number): Buffer => glyf.subarray(offset(glyph), offset(glyph + 1));
  const kept = new Set<number>();
  const waiting = [0, ...wanted];
  for (let glyph = waiting.pop(); glyph !== undefined; glyph = waiting.pop()) {
    if (kept.has(glyph)) continue;
    kept.add(glyph);
    waiting.push(...partsOf(outlineOf(glyph)));
  }
  const count = loca.length / (longOffsets ? 4 : 2) - 1;
  const newLoca = Buffer.alloc(4 * (count + 1));
  const outlines: Buffer[] = [];
  let end = 0;
  for (let glyph = 0; glyph < count; glyph++) {
    if (kept.has(glyph)) {
      const outline = padded(outlineOf(glyph));
      outlines.push(outline);
      end += outline.length;
    }
    newLoca.writeUInt32BE(end, 4 * (glyph + 1));
  }
  return { glyf: Buffer.concat(outlines), loca: newLoca };
}

function padded(outline: Buffer): Buffer {
  return Buffer.concat([outline, Buffer.alloc((4 - (outline.length % 4)) % 4)]);
}

/** Numbers of the glyphs a composite one is made of; none for a simple one. */
function partsOf(outline: Buffer): number[] {
  const parts: number[] = [];
  if (outline.length === 0 || outline.readInt16BE(0) >= 0) return parts;
  let at = 10;
  for (let flags = MORE; (flags & MORE) !== 0; ) {
    flags = outline.readUInt16BE(at);
    parts.push(outline.readUInt16BE(at + 2));
    at += 4 + (flags & WORDS ? 4 : 2) + (flags & SCALE ? 2 : flags & TWO_SCALES ? 4 : flags & TWO_BY_TWO ? 8 : 0);
  }
  return parts;
}
