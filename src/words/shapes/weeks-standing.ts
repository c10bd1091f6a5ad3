import type { FindingKind } from '../../judge/index.js';

/** A kind of finding that is no praise. */
export type TroubleKind = Exclude<FindingKind, 'went-well'>;

/** How a teacher speaks of a kind of finding in passing. */
export interface TroubleWords {
  /** what it is, as within a sentence: in one place, and in several */
  readonly topic: readonly [one: string, several: string];
  /** what is to be reached there, going on after the place */
  readonly aim: string;
}

/** How a player stands, in a teacher's words. What is listed is made by `topicIn` or is a measure's name. */
export interface StandingSentences {
  /** what is spoken of, in these bars; no bars where it is about the whole */
  readonly topicIn: (topic: string, bars: readonly string[]) => string;
  /** the only day so far, and what is to work on */
  readonly firstDay: (topics: readonly string[]) => string;
  readonly mended: (topics: readonly string[]) => string;
  /** measures that improved where no place tells the same */
  readonly better: (names: readonly string[]) => string;
  /** only worth a listen now */
  readonly nearlyThere: (topics: readonly string[]) => string;
  readonly stillOpen: (topics: readonly string[]) => string;
  /** had been mended */
  readonly cameBack: (topics: readonly string[]) => string;
  readonly cameNew: (topics: readonly string[]) => string;
  /** measures that slipped back where no place tells the same */
  readonly slippedBack: (names: readonly string[]) => string;
  readonly notHeard: (topics: readonly string[]) => string;
  readonly nothingOpen: string;
  readonly noTake: string;
  readonly goalInBars: (bars: readonly string[], aim: string) => string;
  /** about the playing as a whole */
  readonly goalThroughout: (aim: string) => string;
  readonly goalHearAgain: (bars: readonly string[]) => string;
  readonly goalListen: (topic: string) => string;
  readonly goalKeep: string;
}
