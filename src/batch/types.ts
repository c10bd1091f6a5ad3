import type { Failure, Language } from '../base/index.js';
import type { SectionRow } from '../result/index.js';
import type { DocumentWishes, Tool, Who } from '../review/index.js';
import type { DateOrder } from './plan/read-dates.js';

/** What one run of the review is asked to do. Paths are as the user gave them. */
export interface ReviewRequest extends DocumentWishes {
  readonly tool: Tool;
  /** the part; exactly one of this and `scoresFolder` is given */
  readonly scorePath?: string | undefined;
  /** a folder of parts, each take being reviewed against its own */
  readonly scoresFolder?: string | undefined;
  /** the teacher's brief, undefined without one; goes with `scorePath` only */
  readonly briefPath?: string | undefined;
  /** audio files and folders */
  readonly inputs: readonly string[];
  readonly outFolder: string;
  /** how many takes are worked on at the same time, 1 or more */
  readonly jobs: number;
  /** of the pages and of what the results tell; English when it is left out */
  readonly language?: Language;
  /** CSV that says who played what and when */
  readonly rosterPath?: string | undefined;
  /** in which order the roster writes days; learnt from its column when it is left out */
  readonly dates?: DateOrder | undefined;
  /** how file names are made, e.g. `{date}_{player}` */
  readonly namePattern?: string | undefined;
  /** numbers instead of names everywhere */
  readonly blind?: boolean;
  /** review only the takes of one share of several */
  readonly shard?: Shard | undefined;
  /** review again what is already there */
  readonly again?: boolean;
  readonly limits?: FixedLimits;
}

/** One share of the takes: number `share` of `of`, both from 1. */
export interface Shard {
  readonly share: number;
  readonly of: number;
}

/** Bounds on one take that the user has set; what is left out is set in proportion to the take's length. */
export interface FixedLimits {
  readonly seconds?: number | undefined;
  readonly megabytes?: number | undefined;
}

/** A take that could not be reviewed, as the section documents list it. */
export interface TakeFailure {
  /** path below the folder that was given, or the file name; never a path of the machine */
  readonly file: string;
  /** kind of failure, stable across versions, for scripts */
  readonly code: string;
  readonly fault: Failure;
}

/** One take as found, before anything is read. */
export interface FoundTake {
  /** absolute path */
  readonly path: string;
  /** path below the folder that was given, with `/` between folders; the file name when the file itself was given */
  readonly file: string;
}

/** A found take with the name its results are written under. */
export interface NamedTake extends FoundTake {
  readonly name: string;
}

/** A take with all that is known of it before it is read. */
export interface PlannedTake extends NamedTake {
  /** the file name that results show; a number under `blind`, and `file` then shows it too */
  readonly shownAs: string;
  readonly who: Who;
  /** what the roster says in further columns, by head; never under `blind` */
  readonly roster?: Readonly<Record<string, string>>;
  /** whether player and names are numbers */
  readonly blind?: boolean;
  /** places, in the list of études, of those that may be played: one when it is known */
  readonly etudes: readonly number[];
}

/** Whose takes they are, before they are listened to. */
export interface Recognition {
  readonly takes: number;
  /** files whose player nobody says */
  readonly unrecognised: readonly string[];
}

/** How one take ended. */
export type TakeEnd =
  | {
      readonly name: string;
      /** what the section needs of the result */
      readonly row: SectionRow;
      /** path of the report, or of the document without one, below the folder for results */
      readonly report: string;
      /** whether the result of an earlier run still stands */
      readonly kept: boolean;
    }
  | {
      readonly name: string;
      readonly failure: TakeFailure;
      readonly who: Who;
      readonly roster?: PlannedTake['roster'];
    };

/** Told after each take, in the order in which they end. */
export interface ReviewProgress {
  readonly done: number;
  readonly total: number;
  readonly end: TakeEnd;
}

/** The whole run. */
export interface ReviewSummary {
  /** in code point order of the names */
  readonly ends: readonly TakeEnd[];
  /** takes that failed, in the same order, and last the section's files if they could not be written */
  readonly failures: readonly TakeFailure[];
  /** takes that were not come to because the run was stopped; the section's files are not written then */
  readonly notReached: number;
  readonly remarks: ReviewRemarks;
}

/** What the user should know beside the results. */
export interface ReviewRemarks {
  /** paths, below the folder for results, of files that are of no take of this run: left as they are, not counted in the section */
  readonly leftAlone: readonly string[];
  /** lines of the roster that name no take that was given */
  readonly rosterLinesUnused: readonly number[];
  /** files of scores whose bars could not be engraved: pages show none of them */
  readonly notEngraved?: readonly string[];
  /** takes of different players that are the same recording, byte by byte: a list of names each */
  readonly same?: readonly (readonly string[])[];
}
