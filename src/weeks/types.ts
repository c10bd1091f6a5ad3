import type { Failure, Language, MaybeNumber, NotMeasured } from '../base/index.js';
import type { Criterion } from '../judge/index.js';
import type { ResultFinding, TakeResult, TonguedPlace } from '../result/index.js';
import type { MeasureId } from '../standards/index.js';

/** A result document as it was found. */
export interface FoundResult {
  /** path below the folder given, never a path of the machine */
  readonly file: string;
  readonly result: TakeResult;
  /** what tells the folder `review` wrote to from others of the same name; goes into no document */
  readonly place?: string;
}

/** A finding that is no praise, as far as weeks need it. */
export interface Trouble extends Pick<ResultFinding, 'criterion' | 'bar' | 'weight'> {
  readonly kind: Exclude<ResultFinding['kind'], 'went-well'>;
}

/** What a take tells of tongue and air. */
export interface Tonguing {
  /** slurred throughout, for practice */
  readonly slurred: boolean;
  /** where the part asks for the tongue alone, or why nothing is known of it */
  readonly places: NotMeasured | readonly Pick<TonguedPlace, 'index' | 'toIndex' | 'sagDb' | 'dipDb'>[];
  /** of each note, dBFS; NaN where it has none */
  readonly levels: Float32Array;
  /** notes that the part slurs from the note before */
  readonly slurredInto: readonly number[];
}

/** What is followed of one take. */
export interface KeptTake {
  readonly take: Pick<TakeResult['take'], 'file' | 'sha256' | 'player' | 'date'> & { readonly blind: boolean };
  readonly score: Pick<TakeResult['score'], 'file' | 'sha256' | 'title' | 'part' | 'bars' | 'notes'>;
  readonly toolVersion: string;
  readonly language: Language;
  readonly outcome: TakeResult['outcome'];
  /** one number a measure, or the reason why there is none; null when the take was not reviewed */
  readonly figures: Readonly<Record<MeasureId, MaybeNumber>> | null;
  /** null when the take was not reviewed */
  readonly tonguing: Tonguing | null;
  /** bars in the order in which they are first played */
  readonly bars: readonly string[];
  /** how many notes were looked for */
  readonly notes: number;
  /** bars of which no note was played */
  readonly barsNotPlayed: readonly string[];
  /** in the order of the take's page; each weighs what it weighs by itself */
  readonly troubles: readonly Trouble[];
  /** criteria that could be judged */
  readonly judged: readonly Criterion[];
}

/** What is kept of a result document. */
export interface KeptResult extends Omit<FoundResult, 'result'> {
  readonly result: KeptTake;
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
export interface PlacedResult extends KeptResult {
  readonly player: string;
  /** ISO 8601 day */
  readonly date: string;
}
