import type { PaperSize } from '../../page/index.js';

/** What the user wants of each take. */
export interface DocumentWishes {
  /** nothing but what other programs read */
  readonly jsonOnly: boolean;
  /** the listening room as well, in which takes can be heard bar by bar */
  readonly listen?: boolean;
  readonly paper: PaperSize;
}

/**
 * @param request whatever says among other things what is wanted
 * @returns the wishes alone, every one of them said, so that they can be sent to a worker
 */
export function wishesIn({ jsonOnly, listen = false, paper }: DocumentWishes): Required<DocumentWishes> {
  return { jsonOnly, listen, paper };
}
