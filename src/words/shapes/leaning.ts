import type { Facts, SayingFacts } from '../../judge/index.js';

/** What notes of tuplets and beats that lean have in common. */
export type LeaningFacts = SayingFacts['groups-lean'];

/** How it is told that the notes of tuplets and beats lean somewhere. */
export interface LeaningWords {
  /** in a criterion's line, with its interval */
  readonly line: (facts: LeaningFacts) => string;
  /** a sentence behind that about one group, with the space before it; empty where it shows none of it */
  readonly sentence: (cause: Facts['uneven-group']['cause']) => string;
}
