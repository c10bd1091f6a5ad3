import type { TempoBeat } from '../../score/index.js';

/** How the takes of a section came out. */
export interface SectionFacts {
  readonly parts: readonly string[];
  readonly takes: number;
  readonly players: number;
  readonly reviewed: number;
  /** takes that were heard but not reviewed */
  readonly others: number;
  readonly unread: number;
}

/** Performed bars of a take in which not all was played. */
export interface PartlyPlayed {
  readonly played: number;
  readonly of: number;
  readonly ending: 'whole' | 'broken-off' | 'cut-off';
}

/** Everything the section sheet says beside the names of findings, criteria, days and numbers. */
export interface SectionWords {
  readonly severalScores: string;
  readonly documentTitle: (title: string) => string;
  readonly foot: (title: string) => string;
  /** the line under the title */
  readonly facts: (facts: SectionFacts) => string;
  /** one of several sheets, with the first and the last that is listed on it */
  readonly sheetOf: (sheet: number, of: number, first: string, last: string) => string;
  /** takes of different players that are one recording */
  readonly same: (takes: readonly string[]) => string;
  readonly rehearse: string;
  readonly nothingShared: string;
  readonly where: string;
  readonly what: string;
  readonly about: string;
  readonly players: string;
  readonly toFixFor: string;
  readonly who: string;
  readonly wholeTake: string;
  /** a place of one score among several */
  readonly placeIn: (place: string, score: string) => string;
  readonly playersOf: (players: number, all: number) => string;
  readonly andMore: (names: readonly string[], more: number) => string;
  /** under the table of takes: so many older ones are not shown */
  readonly older: (takes: number) => string;
  /** a take in which not all was played */
  readonly partly: (who: string, played: PartlyPlayed) => string;
  readonly notPlayed: string;
  readonly needs: string;
  /** what the table's cells mean, given what the metronome counts in the parts, each once; quarters where nothing is said */
  readonly needsNotes: (beats: readonly TempoBeat[]) => readonly string[];
  readonly take: string;
  readonly day: string;
  readonly asWritten: string;
  readonly beats: string;
  readonly cents: string;
  readonly notesOf: (right: number, all: number) => string;
  readonly findings: (fix: number, watch: number) => string;
  readonly nothingFound: string;
  readonly notJudged: string;
  /** a take of one score among several */
  readonly takeOf: (who: string, score: string) => string;
  readonly nameOfTake: (player: string, take: string) => string;
  readonly outcome: {
    readonly reviewed: (who: string) => string;
    readonly 'not-this-score': (who: string) => string;
    readonly 'too-poor': (who: string) => string;
  };
  readonly whichBars: string;
  readonly whichBarsOf: (score: string) => string;
  readonly whichBarsNote: string;
  readonly sums: (most: number) => string;
  readonly barFindings: (bar: string, fix: number, watch: number) => string;
  readonly noFindings: string;
  readonly rowInWords: (who: string, bars: string) => string;
  readonly mapInWords: (first: string, last: string, rows: readonly string[]) => string;
  readonly failures: string;
  readonly file: string;
  readonly whatNeeded: string;
}
