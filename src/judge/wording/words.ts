import type { Facts, JudgedKind } from '../observation.js';

/** The two things said about a finding. */
export interface Words {
  /** one or two plain sentences */
  readonly text: string;
  /** one plain sentence on how to practise it, empty for praise */
  readonly practice: string;
}

/** Words for every kind of finding; the compiler keeps it complete. */
export type FindingWords = { readonly [K in JudgedKind]: (facts: Facts[K]) => Words };

/** The changes from one dynamic mark to the next, all together; sizes in dB in the direction that is written. */
export interface ContrastsHeard {
  readonly of: number;
  /** those that are as large as asked for */
  readonly plain: number;
  /** those that surely go the other way */
  readonly reversed: number;
  readonly usualDb: number;
  readonly smallestDb: number;
  readonly leastDb: number;
}

/** What is said of a criterion in one line. */
export interface SummaryWords {
  /** the brief leaves the criterion out, and why */
  readonly leftOut: Readonly<Record<'all-slurred' | 'under-tempo' | 'by-brief', string>>;
  /** why it was not measured, in the same language */
  readonly notMeasured: (reason: string) => string;
  readonly notes: (right: number, of: number, unclear: number) => string;
  readonly groupsEven: (even: number, of: number) => string;
  readonly entriesInTime: (inTime: number, of: number) => string;
  readonly noRhythm: string;
  /** both in quarter notes a minute */
  readonly tempo: (played: number, marked: number | null) => string;
  readonly levelRiding: string;
  readonly noChange: string;
  readonly contrasts: (heard: ContrastsHeard) => string;
  /** hairpins that change plainly, of those measured */
  readonly hairpins: (plain: number, of: number) => string;
  readonly wrongOrder: (softer: string, louder: string) => string;
  readonly slursJoined: (joined: number, of: number) => string;
  /** percent of their time */
  readonly dotted: (percent: number) => string;
  readonly tenuto: (percent: number) => string;
  readonly noArticulation: string;
  readonly noBreathMarked: string;
  readonly noBreathHeard: string;
  readonly breathsHeard: (heard: number, of: number) => string;
  /** full breaths that were only quick ones; goes on after a comma */
  readonly shortBreaths: (count: number) => string;
  /** marked breaths where not all was played; goes on after a semicolon */
  readonly breathsBeyond: (count: number) => string;
  readonly tuning: (a4Hz: number, cents: number) => string;
  readonly register: (register: 'low' | 'high', cents: number) => string;
  readonly loudNotes: (cents: number) => string;
  readonly playedThrough: string;
  readonly stops: (restarts: number, skips: number) => string;
}

/** Everything the judges say, in one language. */
export interface JudgeWords {
  readonly findings: FindingWords;
  readonly summaries: SummaryWords;
  /** a sentence that names other bars in which the same shows, with a space before it; nothing when there are none */
  readonly alsoIn: (bars: readonly string[]) => string;
  /** the same for bars in which it may show */
  readonly perhapsIn: (bars: readonly string[]) => string;
}
