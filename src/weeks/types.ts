import type { Failure } from '../base/index.js';
import type { TakeResult } from '../result/index.js';

/** A result document as it was found. */
export interface FoundResult {
  /** path below the folder given, never a path of the machine */
  readonly file: string;
  readonly result: TakeResult;
  /** what tells the folder `review` wrote to from others of the same name; goes into no document */
  readonly place?: string;
}

/** A take that could not be read when it was reviewed, so that there is no document of it. */
export interface LostTake {
  readonly file: string;
  /** of the score it was to be reviewed against, hexadecimal */
  readonly scoreSha256: string;
  readonly player: string | null;
  readonly date: string | null;
  /** why it could not be read */
  readonly fault: Failure;
  /** as of a result */
  readonly place?: string;
}

/** A result with player and day. */
export interface PlacedResult extends FoundResult {
  readonly player: string;
  /** ISO 8601 day */
  readonly date: string;
}
