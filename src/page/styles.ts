import type { TextStyle } from './set-text.js';

/** The few ways text is set on all pages. Sizes in points. */
export const STYLES = {
  title: { face: 'regular', size: 23, leading: 28, ink: 'text' },
  subtitle: { face: 'regular', size: 11, leading: 16, ink: 'text' },
  section: { face: 'semibold', size: 12.5, leading: 17, ink: 'accent' },
  headline: { face: 'semibold', size: 11, leading: 15, ink: 'text' },
  body: { face: 'regular', size: 10, leading: 13.8, ink: 'text' },
  practice: { face: 'italic', size: 10, leading: 13.8, ink: 'text' },
  soft: { face: 'regular', size: 9, leading: 12.2, ink: 'soft' },
  margin: { face: 'regular', size: 9, leading: 12.2, ink: 'accent' },
  numeral: { face: 'regular', size: 25, leading: 25, ink: 'accent' },
  cell: { face: 'regular', size: 9, leading: 11.8, ink: 'text' },
  cellStrong: { face: 'semibold', size: 9, leading: 11.8, ink: 'text' },
  head: { face: 'semibold', size: 8, leading: 10.5, ink: 'soft' },
  axis: { face: 'regular', size: 7, leading: 9, ink: 'soft' },
  caption: { face: 'italic', size: 7.6, leading: 9.6, ink: 'soft' },
  small: { face: 'regular', size: 8, leading: 10.8, ink: 'soft' },
  foot: { face: 'regular', size: 7.5, leading: 10, ink: 'soft' },
} as const satisfies Record<string, TextStyle>;

/** Width of the margin column in which bars and labels stand, and the white beside it, points. */
export const MARGIN_COLUMN = 88;
/** Points between that column and the text. */
export const MARGIN_GAP = 14;
