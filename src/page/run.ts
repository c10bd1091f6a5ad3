import type { Face } from './drawing.js';

/** A stretch of a line in one face. */
export interface Run {
  readonly text: string;
  readonly face: Face;
  readonly width: number;
  /** how the signs stand in the line */
  readonly fit: Fit;
}

/** How signs of the music face are made to stand in a line of text, as shares of the text's size. */
export interface Fit {
  readonly scale: number;
  readonly rise: number;
  /** white before the sign */
  readonly before: number;
}
