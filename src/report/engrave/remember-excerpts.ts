import type { Typesetter } from '../layout/drawing.js';
import { type Engrave, type Excerpt, engraveExcerpt } from './engrave-excerpt.js';
import type { Engraver } from './open-engraver.js';

/** Excerpts kept; the players of a section stumble over the same bars. */
const MOST_REMEMBERED = 100;

const remembered = new WeakMap<Engraver, Map<string, Excerpt | null>>();

/**
 * Engraves bars of a document, each excerpt once for as long as the document stays open.
 *
 * @param engraver the opened document
 * @param typesetter widths and coverage of the faces
 * @returns what engraves bars in a width
 *
 * Source: definition.
 */
export function rememberExcerpts(engraver: Engraver, typesetter: Typesetter): Engrave {
  const known = remembered.get(engraver) ?? new Map<string, Excerpt | null>();
  remembered.set(engraver, known);
  return (from, to, width) => {
    const key = `${from} ${to} ${width}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const excerpt = engraveExcerpt(engraver, typesetter, from, to, width);
    if (known.size >= MOST_REMEMBERED) known.clear();
    known.set(key, excerpt);
    return excerpt;
  };
}
