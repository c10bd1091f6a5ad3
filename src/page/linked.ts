import type { DrawingElement, Link, PageMarks } from './drawing.js';

/**
 * @param marks what is drawn
 * @param link where it leads; undefined where it leads nowhere
 * @param box left, top, right, bottom of what can be pressed, points
 * @returns what is drawn, as a link where it is one
 *
 * Source: ISO 32000-1, 14.8.4.4.2 (Link); ISO 14289-1, 7.18.5 (a link tells in words where it leads).
 */
export function linked(
  marks: PageMarks,
  link: Link | undefined,
  box: NonNullable<DrawingElement['box']>,
): DrawingElement | PageMarks {
  return link === undefined ? marks : { tag: 'Link', ...link, box, children: [marks] };
}
