/**
 * What the length of a note within a tuplet or a beat may go with: the line leaps after it, the way of playing changes at it, it
 * is the first or the last of its group, or the line goes into another third of the part's range after it.
 */
export type UnevenCause = 'leap' | 'articulation' | 'first' | 'last' | 'register';

/** By how much notes are longer than the other notes of their groups, in shares of their written length. */
export interface LengthDifference {
  /** positive is longer */
  readonly differenceShare: number;
  /** 95 % */
  readonly intervalShare: readonly [number, number];
  /** so wide that 95 of 100 takes have all their causes within theirs */
  readonly jointIntervalShare: readonly [number, number];
}

/** One cause seen beside another: what is left of it when the other is allowed for. */
export interface CauseBeside {
  readonly cause: UnevenCause;
  /** how much the two come at the same notes, -1 to 1, within groups */
  readonly together: number;
  /** absent where the two come so much together that they cannot be told apart */
  readonly difference?: LengthDifference;
}

/** How much longer the notes with one cause are. */
export interface CauseMeasure extends LengthDifference {
  readonly cause: UnevenCause;
  /** notes with it and without it, in groups that have both */
  readonly count: number;
  readonly others: number;
  /** median length of the notes with it, as written */
  readonly noteSeconds: number;
  readonly beside: readonly CauseBeside[];
}

/** What the unevenness of tuplets and beats goes with; only causes with enough notes. */
export interface UnevennessMeasure {
  /** tuplets and beats that were looked at */
  readonly groups: number;
  readonly causes: readonly CauseMeasure[];
}
