import type { PartNote } from '../../score/index.js';
import type { Boundaries } from '../grid/find-boundaries.js';
import type { SegmentEvidence } from '../grid/segment-evidence.js';

/** One stretch of the recording given to a note of the part, or to no note of it. */
export interface DecodedSegment {
  /** note index, or null for a note that is not in the part */
  readonly index: number | null;
  readonly fromFrame: number;
  /** frame at which the next segment begins */
  readonly toFrame: number;
  /** true for a note that was only found when its gap was looked at again */
  readonly lookedAtAgain?: boolean;
  /** true for a short sound of another pitch that leads into the note behind it */
  readonly leadsIn?: boolean;
}

/** Everything the search asks for. */
export interface DecodeInput {
  readonly notes: readonly PartNote[];
  /** whether written grace notes follow each note: then extra sounds are expected */
  readonly graceAfter: readonly boolean[];
  /** rough onset of each note in seconds, NaN where unknown */
  readonly roughOnsets: readonly number[];
  readonly startSeconds: number;
  readonly endSeconds: number;
  /** seconds a quarter at each note of `notes` */
  readonly pace: Float64Array;
  readonly boundaries: Boundaries;
  readonly evidence: SegmentEvidence;
  readonly hopSeconds: number;
  readonly offsetSemitones: number;
  /** when given, every note is found; the first and last stand at these boundaries where they are numbers */
  readonly everyNote?: { readonly first: number | null; readonly last: number | null; readonly noneAdded: boolean };
}
