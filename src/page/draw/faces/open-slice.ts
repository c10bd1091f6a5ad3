import { createRequire } from 'node:module';
import type { OpenFont, OpenGlyph } from './open-font.js';
import { type OutlineStep, simpleGlyph } from './simple-glyph.js';
import { fileOfSlice } from './slices.js';
import { type ReadGlyph, type Variation, varyGlyph } from './vary-glyph.js';

const require = createRequire(import.meta.url);

/** What an opened WOFF2 file of variable weight holds beside what all faces have. */
interface VariableFont extends OpenFont {
  variationCoords: readonly number[];
  readonly _variationProcessor: Variation;
  readonly _tables: Record<string, unknown>;
  readonly _transformedGlyphs: readonly ReadGlyph[];
  _transformGlyfTable(): void;
  _getBaseGlyph(id: number, characters?: readonly number[]): OutlinedGlyph | undefined;
  getGlyph(id: number, codePoints?: readonly number[]): OutlinedGlyph;
  createSubset(): Subset;
}

interface OutlinedGlyph extends OpenGlyph {
  readonly path: OpenGlyph['path'] & { readonly commands: readonly OutlineStep[] };
  _getMetrics(): { readonly leftBearing: number };
}

/** Glyphs on their way into a document. */
interface Subset {
  readonly glyf: Uint8Array[];
  readonly loca: { readonly offsets: number[] };
  readonly hmtx: { readonly metrics: object[] };
  offset: number;
  _addGlyph(id: number): number;
}

/** `loca` in 32 bit offsets. Source: OpenType 1.9, head, indexToLocFormat. */
const LONG_OFFSETS = 1;

/**
 * @param slice of a face of variable weight, e.g. `noto-serif-sc/115`
 * @param weight e.g. 400
 * @returns the opened font at this weight, under a name that no other slice or weight has
 *
 * Source: OpenType 1.9, fvar, for the axis `wght`. Differs: the font library neither varies the glyphs of a WOFF2 file nor
 * writes them into documents, so both is done here; a glyph is written with the parts it is composed of.
 */
export function openSlice(slice: string, weight: number): OpenFont {
  const font: VariableFont = require('fontkit').openSync(fileOfSlice(slice));
  font.variationCoords = [weight];
  font._tables.loca = { version: LONG_OFFSETS };
  Object.defineProperty(font, 'postscriptName', { value: `${slice.replace('/', '-')}-${weight}` });
  varyGlyphs(font);
  writeGlyphs(font);
  tellApart(font);
  return font;
}

/** Glyphs are read as the file has them, and varied when they are asked for. */
function varyGlyphs(font: VariableFont): void {
  const variation = (Object.create(font) as VariableFont)._variationProcessor;
  let isReading = false;
  Object.defineProperty(font, '_variationProcessor', { get: () => (isReading ? null : variation) });
  const readGlyphs = font._transformGlyfTable.bind(font);
  font._transformGlyfTable = () => {
    isReading = true;
    readGlyphs();
    isReading = false;
  };
  const baseGlyph = font._getBaseGlyph.bind(font);
  const varied = new Set<number>();
  font._getBaseGlyph = (id, characters) => {
    const glyph = baseGlyph(id, characters);
    if (!varied.has(id)) varyGlyph(font._transformedGlyphs[id] as ReadGlyph, id, variation);
    varied.add(id);
    return glyph;
  };
}

function writeGlyphs(font: VariableFont): void {
  const createSubset = font.createSubset.bind(font);
  font.createSubset = () => {
    const subset = createSubset();
    subset._addGlyph = (id) => {
      const glyph = font.getGlyph(id % GLYPHS);
      const outline = simpleGlyph(glyph.path.commands);
      subset.glyf.push(outline);
      subset.loca.offsets.push(subset.offset);
      subset.hmtx.metrics.push({ advance: glyph.advanceWidth, bearing: glyph._getMetrics().leftBearing });
      subset.offset += outline.length;
      return subset.glyf.length - 1;
    };
    return subset;
  };
}

/** More glyphs than a face can have. Source: OpenType 1.9, maxp, numGlyphs. */
const GLYPHS = 0x10000;

/**
 * Letters may share an outline, as the Arabic ones that differ only by their dots, and a document keeps one letter for each
 * number of a glyph. So a glyph that stands for other letters gets a number of its own.
 */
function tellApart(font: VariableFont): void {
  const glyphOf = font.getGlyph.bind(font);
  font.getGlyph = (id, codePoints = []) => {
    // the font remembers what a glyph stood for at first
    font._glyphs = {};
    return glyphOf(id, codePoints);
  };
  const numbers = new Map<string, number>();
  const meanings = new Map<number, number>();
  const numberOf = ({ id, codePoints }: OpenGlyph): number => {
    const key = [id, ...codePoints].join(' ');
    const known = numbers.get(key);
    if (known !== undefined) return known;
    const meaning = meanings.get(id) ?? 0;
    meanings.set(id, meaning + 1);
    numbers.set(key, id + GLYPHS * meaning);
    return id + GLYPHS * meaning;
  };
  const setWord = font.layout.bind(font);
  font.layout = (text, features) => {
    const run = setWord(text, features);
    const glyphs = run.glyphs.map((glyph): OpenGlyph => {
      const { advanceWidth, codePoints, path } = glyph;
      return { id: numberOf(glyph), advanceWidth, codePoints, path };
    });
    return { advanceWidth: run.advanceWidth, positions: run.positions, glyphs };
  };
}
