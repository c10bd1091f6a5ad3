import { markupText, numberInMarkup, type OpenFont, toSvg } from '../../page/index.js';
import type { Part } from '../../score/index.js';
import type { Words } from '../../words/index.js';
import type { LayoutData } from './room-data.js';
import type { RoomLayout } from './room-layout.js';

/** A part in both ways of breaking lines. */
export interface LaidOut {
  readonly layouts: Readonly<Record<'wide' | 'narrow', RoomLayout>>;
  readonly data: Readonly<Record<'wide' | 'narrow', LayoutData>>;
}

/**
 * @param number of the part in the room
 * @param part the part
 * @param laidOut its lines
 * @param words in the language of the room
 * @param music the opened music face
 * @returns the engraved part, once in long lines and once in short ones; the style sheet shows what fits
 *
 * Source: SVG 2; WAI-ARIA 1.2, role img.
 */
export function partHtml(number: number, part: Part, laidOut: LaidOut, words: Words, music: OpenFont): string {
  const ways = (['wide', 'narrow'] as const).map((way) => {
    const lines = laidOut.layouts[way].lines.map((line, i) => {
      const { top, width, height } = laidOut.data[way].lines[i] as LayoutData['lines'][number];
      const box = [0, top, width, height].map(numberInMarkup).join(' ');
      const name = words.room.lineName(numberOf(part, line.from), numberOf(part, line.to));
      return `<div class="line"><svg role="img" aria-label="${markupText(name)}" viewBox="${box}" width="${width}" height="${numberInMarkup(height)}">${toSvg(line.excerpt.items, music)}</svg></div>\n`;
    });
    return `<div class="${way}">\n${lines.join('')}</div>\n`;
  });
  return `<div class="part" id="part-${number}">\n${ways.join('')}</div>\n`;
}

const numberOf = (part: Part, barIndex: number): string =>
  part.bars.find((bar) => bar.barIndex === barIndex)?.bar ?? `${barIndex + 1}`;
