import type { OpenFont } from '../faces/open-font.js';
import { characterMap } from './character-map.js';
import { keepGlyphs } from './keep-glyphs.js';
import { writeWoff } from './write-woff.js';

/** Tables that hold for any choice of glyphs, as every glyph keeps its number. `GPOS` and `GDEF` kern. */
const KEPT = ['GDEF', 'GPOS', 'OS/2', 'gasp', 'hhea', 'hmtx', 'maxp', 'post', 'prep'];
/** A table `name` without names: version 0, no record, the texts begin (and end) after these six bytes. */
const NO_NAMES = Buffer.from([0, 0, 0, 0, 0, 6]);
const LONG_OFFSETS_AT = 50;

/**
 * A face for a page on a screen, with the letters that the page needs.
 *
 * @param font an opened TrueType face
 * @param letters every letter of the page; those the face does not hold are passed over
 * @returns a WOFF file
 *
 * Source: WOFF File Format 1.0 (W3C Recommendation, 2012); OpenType 1.9.
 */
export function webFont(font: OpenFont, letters: Iterable<string>): Buffer {
  const { buffer } = font.stream;
  const tableOf = (tag: string): Buffer => {
    const place = font.directory.tables[tag];
    return place === undefined ? Buffer.alloc(0) : buffer.subarray(place.offset, place.offset + place.length);
  };
  const glyphs = new Map<number, number>();
  for (const letter of letters) {
    const codePoint = letter.codePointAt(0) as number;
    if (font.hasGlyphForCodePoint(codePoint)) glyphs.set(codePoint, font.glyphForCodePoint(codePoint).id);
  }
  const head = Buffer.from(tableOf('head'));
  const longOffsets = head.readInt16BE(LONG_OFFSETS_AT) === 1;
  head.writeInt16BE(1, LONG_OFFSETS_AT);
  const outlines = keepGlyphs({ glyf: tableOf('glyf'), loca: tableOf('loca') }, longOffsets, glyphs.values());
  const tables = new Map(KEPT.map((tag) => [tag, tableOf(tag)] as const).filter(([, data]) => data.length > 0));
  tables
    .set('head', head)
    .set('glyf', outlines.glyf)
    .set('loca', outlines.loca)
    .set('cmap', characterMap(glyphs))
    .set('name', NO_NAMES);
  return writeWoff(tables);
}
