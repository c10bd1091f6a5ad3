/** The few words that stand beside pencil marks. */
export interface MarkWords {
  readonly sounded: (name: string) => string;
  readonly octave: (name: string, higher: boolean) => string;
  readonly leftOut: string;
  readonly tooHigh: string;
  readonly tooLow: string;
  readonly late: string;
  readonly early: string;
  readonly waits: string;
  readonly played: string;
  readonly written: string;
  readonly held: string;
  readonly gap: string;
  readonly again: string;
  readonly skipped: string;
  readonly ahead: string;
  readonly behind: string;
  readonly playedTempo: (tempo: string) => string;
  readonly brackets: readonly string[];
}

/** Printed numbers of the first and the last bar of a stretch. */
export interface BarRange {
  readonly first: string;
  readonly last: string;
}

/** Says what stands for an excerpt where it cannot be seen: the bars, what the marks mean, and what was found there. */
export type ExcerptWords = (bars: readonly BarRange[], caption: string, finding: string) => string;
