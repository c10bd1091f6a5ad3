import { markupText, type OpenFont } from '../../page/index.js';

/** Turns text into markup in which accidental signs are drawn from the music face. */
export type Markup = (text: string) => string;

/** Size and height of a sign in a line, as shares of the text's size. */
const FITS: Readonly<Record<string, readonly [scale: number, rise: number]>> = {
  '♭': [1.2, 0.22],
  '𝄫': [1.2, 0.22],
  '♯': [1.1, 0.35],
  '♮': [1.1, 0.35],
  '𝄪': [1.1, 0.35],
};
const BEFORE = 0.05;
const UNITS = 1000;

/**
 * @param music the opened music face
 * @returns what turns text into markup: escaped, each accidental sign drawn and, for readers and copies, still there as text
 */
export function markupWith(music: OpenFont): Markup {
  const signs = new Map(Object.entries(FITS).map(([sign, fit]) => [sign, signMarkup(music, sign, fit)] as const));
  return (text) => markupText(text.normalize('NFC')).replace(/[♭♯♮𝄫𝄪]/gu, (sign) => signs.get(sign) ?? sign);
}

function signMarkup(music: OpenFont, sign: string, [scale, rise]: readonly [number, number]): string {
  const glyph = music.glyphForCodePoint(sign.codePointAt(0) as number);
  const unit = (scale * UNITS) / music.unitsPerEm;
  const width = Math.round(glyph.advanceWidth * unit + 2 * BEFORE * UNITS);
  const place = `translate(${BEFORE * UNITS} ${-rise * UNITS}) scale(${unit} ${-unit})`;
  const drawn = `<path d="${glyph.path.toSVG()}" transform="${place}" fill="currentColor"/>`;
  const box = `viewBox="0 ${-UNITS} ${width} ${UNITS}" width="${width / UNITS}em" height="1em" overflow="visible"`;
  return `<svg class="sign" ${box} aria-hidden="true">${drawn}</svg><span class="unseen">${sign}</span>`;
}
