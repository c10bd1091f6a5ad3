import type { Item, OwnFace, PathItem, TextItem } from '../drawing.js';
import { INKS } from '../inks.js';
import type { OpenFont } from './faces/open-font.js';
import { markupText } from './markup-text.js';
import { numberInMarkup } from './number-in-markup.js';
import { pathData } from './path-data.js';

/**
 * Draws items as SVG. Text stays text, in the class of its face; signs of the music face become outlines, so that they look
 * the same wherever the page is opened.
 *
 * @param items what to draw, lengths in points
 * @param music the opened music face
 * @returns elements of SVG, one after the other, without the `svg` around them
 *
 * Source: SVG 2; all attributes are presentation attributes, which no policy on styles forbids.
 */
export function toSvg(items: readonly Item[], music: OpenFont): string {
  return items
    .map((item) => (item.kind === 'path' ? pathElement(item) : item.face === 'music' ? signs(item, music) : text(item)))
    .join('');
}

/** Classes of the text faces; the style sheet of the page says what they are. */
export const FACE_CLASSES: Readonly<Record<Exclude<OwnFace, 'music'>, string>> = {
  regular: 'f-r',
  semibold: 'f-s',
  italic: 'f-i',
};

function pathElement({ path, stroke, width, dash, cap, fill }: PathItem): string {
  const paint = [
    fill === undefined ? 'fill="none"' : `fill="${INKS[fill]}"`,
    ...(stroke === undefined ? [] : [`stroke="${INKS[stroke]}"`, `stroke-width="${numberInMarkup(width ?? 0.5)}"`]),
    ...(stroke === undefined || cap !== undefined ? [] : ['stroke-linecap="round" stroke-linejoin="round"']),
    ...(dash === undefined ? [] : [`stroke-dasharray="${dash.map(numberInMarkup).join(' ')}"`]),
  ];
  return `<path d="${pathData(path)}" ${paint.join(' ')}/>`;
}

function text({ x, baseline, text: words, face, size, ink }: TextItem): string {
  const place = `x="${numberInMarkup(x)}" y="${numberInMarkup(baseline)}" font-size="${numberInMarkup(size)}"`;
  // the browser has faces of its own for letters that the page's faces lack
  const faceClass = FACE_CLASSES[face.startsWith('lent') ? 'regular' : (face as Exclude<OwnFace, 'music'>)];
  return `<text class="${faceClass}" ${place} fill="${INKS[ink]}">${markupText(words.trimEnd())}</text>`;
}

function signs({ x, baseline, text: words, size, ink }: TextItem, music: OpenFont): string {
  const scale = size / music.unitsPerEm;
  let left = x;
  return music
    .layout(words)
    .glyphs.map((glyph) => {
      const place = `translate(${numberInMarkup(left)} ${numberInMarkup(baseline)}) scale(${scaleInMarkup(scale)} ${scaleInMarkup(-scale)})`;
      left += glyph.advanceWidth * scale;
      const outline = glyph.path.toSVG();
      return outline === '' ? '' : `<path d="${outline}" transform="${place}" fill="${INKS[ink]}"/>`;
    })
    .join('');
}

function scaleInMarkup(value: number): string {
  return String(Number(value.toFixed(5)));
}
