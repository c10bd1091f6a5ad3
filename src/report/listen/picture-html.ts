import { markupText, numberInMarkup, type OpenFont, toSvg } from '../../page/index.js';
import type { Picture } from './listening-content.js';

/**
 * @param picture what to draw
 * @param music the opened music face
 * @param pixelsAPoint pixels of the screen a point takes where there is room
 * @returns an `svg` element with its name; one with a playhead carries the way it goes
 *
 * Source: SVG 2; WAI-ARIA 1.2, role img.
 */
export function pictureHtml(
  { items, left, top, width, height, alternative, path }: Picture,
  music: OpenFont,
  pixelsAPoint: number,
): string {
  const box = [left, top, width, height].map(numberInMarkup).join(' ');
  const size = `width="${Math.round(width * pixelsAPoint)}" height="${Math.round(height * pixelsAPoint)}"`;
  const moving = path.length === 0 ? '' : ` data-path="${JSON.stringify(path)}"`;
  const playhead = path.length === 0 ? '' : '<line class="playhead" visibility="hidden"/>';
  const name = markupText(alternative);
  return `<svg role="img" aria-label="${name}" viewBox="${box}" ${size}${moving} overflow="visible">${toSvg(items, music)}${playhead}</svg>`;
}
