import type { PaperSize, TakeResult } from '../report/index.js';

/** Name and version of the program, as the result documents carry them. */
export interface Tool {
  readonly name: string;
  readonly version: string;
}

/** What one run of the review is asked to do. Paths are as the user gave them. */
export interface ReviewRequest {
  readonly tool: Tool;
  readonly scorePath: string;
  /** the teacher's brief, undefined without one */
  readonly briefPath?: string | undefined;
  /** audio files and folders */
  readonly inputs: readonly string[];
  readonly outFolder: string;
  /** no PDF at all; JSON and CSV are written */
  readonly jsonOnly: boolean;
  /** how many takes are worked on at the same time, 1 or more */
  readonly jobs: number;
  readonly paper: PaperSize;
}

/** A take that could not be reviewed, as the section documents list it. */
export interface TakeFailure {
  /** path below the folder that was given, or the file name; never a path of the machine */
  readonly file: string;
  readonly code: string;
  /** one line in plain words */
  readonly message: string;
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

/** How one take ended. */
export type TakeEnd =
  | { readonly name: string; readonly result: TakeResult; readonly report: string }
  | { readonly name: string; readonly failure: TakeFailure };

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
}
