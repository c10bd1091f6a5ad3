import type { Ink } from './drawing.js';

/**
 * Colours of the inks: near black, one blue-black accent, greys. Their luminances differ, so all stay apart in black and
 * white; text inks have at least 4.5:1 contrast with white paper.
 *
 * Source: WCAG 2.2, success criterion 1.4.3, for the contrast.
 */
export const INKS: Record<Ink, string> = {
  text: '#1b1b1d',
  soft: '#5a5f66',
  accent: '#1d4166',
  rule: '#c3c9cf',
  tint: '#dfe6ec',
};
