import type { Typesetter } from '../page/index.js';
import { type Engrave, type Excerpt, engraveExcerpt } from './engrave-excerpt.js';
import type { EngravedPart } from './engrave-part.js';

/** Excerpts kept; the players of a section stumble over the same bars. */
const MOST_REMEMBERED = 100;

const remembered = new WeakMap<EngravedPart, Map<string, Excerpt | null>>();

/**
 * Engraves bars of a part, each excerpt once for as long as the part is at hand.
 *
 * @param part the part laid out
 * @param typesetter widths and coverage of the faces
 * @returns what engraves bars in a width
 */
export function rememberExcerpts(part: EngravedPart, typesetter: Typesetter): Engrave {
  const known = remembered.get(part) ?? new Map<string, Excerpt | null>();
  remembered.set(part, known);
  return (from, to, width) => {
    const key = `${from} ${to} ${width}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const excerpt = engraveExcerpt(part, typesetter, from, to, width);
    if (known.size >= MOST_REMEMBERED) known.clear();
    known.set(key, excerpt);
    return excerpt;
  };
}
