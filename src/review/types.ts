import type { Brief } from '../brief/index.js';
import type { EngravedPart } from '../engrave/index.js';
import type { Part } from '../score/index.js';

/** Name and version of the program, as the result documents carry them. */
export interface Tool {
  readonly name: string;
  readonly version: string;
}

/** Who played, when and on what, as far as it is known. */
export interface Who {
  readonly player: string | null;
  /** ISO 8601 day */
  readonly date: string | null;
  readonly instrument: string | null;
}

/** An étude that takes are reviewed against: its part, the score it stands in, the teacher's brief. It can be sent to a worker. */
export interface Etude {
  /** as the teacher wants it, when there is a brief */
  readonly part: Part;
  /** null without one */
  readonly brief: Brief | null;
  readonly score: { readonly file: string; readonly sha256: string };
  /** the part for engraving; null or left out where pages have no excerpts */
  readonly musicXml?: string | null;
}

/** Gives an étude laid out for its excerpts; null when it cannot be engraved. */
export type Engraving = (etude: Etude) => Promise<EngravedPart | null>;
