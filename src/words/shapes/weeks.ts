import type { MeasureId } from '../../standards/index.js';
import type { MeasureWords } from './measures.js';
import type { BarState, BesideSlurredFacts, DayTakes, Gap, GoalFacts, NoiseFacts } from './weeks-facts.js';
import type { StandingSentences, TroubleKind } from './weeks-standing.js';

/** Fixed words of the progress sheet. */
export interface WeeksLabels {
  readonly kind: string;
  readonly standings: string;
  readonly standingsNote: string;
  readonly player: string;
  readonly days: string;
  readonly standing: string;
  readonly goal: string;
  /** before the goal, on a player's own page */
  readonly goalIs: string;
  readonly bars: string;
  readonly barsNote: string;
  readonly bar: (bar: string) => string;
  readonly openRows: string;
  readonly what: string;
  readonly about: string;
  readonly had: string;
  readonly have: string;
  readonly nobody: string;
  readonly middle: string;
  readonly middleNote: string;
  readonly multiplesNote: string;
  readonly barsLegend: string;
  readonly notJudged: string;
  /** name of that comparison */
  readonly besideSlurred: string;
  readonly noBars: string;
  readonly noise: string;
  readonly measure: string;
  readonly varies: string;
  readonly changeFrom: string;
  readonly restsOn: string;
  readonly alsoFound: string;
  readonly file: string;
  readonly whatNeeded: string;
  readonly failures: string;
  readonly unplaced: string;
  readonly unplacedNote: string;
  readonly unknown: string;
  readonly outcome: string;
  /** how a take without curves came out */
  readonly outcomes: {
    readonly reviewed: string;
    readonly 'not-this-score': string;
    readonly 'too-poor': string;
    readonly failed: string;
  };
  /** how a bar stands with a player, in the figure that shows all bars */
  readonly states: {
    readonly has: string;
    readonly perhaps: string;
    readonly free: string;
  };
  /** how a bar stood on a day */
  readonly marks: {
    readonly fix: string;
    readonly watch: string;
    readonly clear: string;
    readonly 'not-judged': string;
  };
  readonly verdicts: {
    readonly better: string;
    readonly worse: string;
    readonly different: string;
  };
}

/** Sentences of the progress sheet. Those that may have nothing to tell give null, or an empty list. */
export interface WeeksSentences {
  readonly documentTitle: (title: string, kind: string) => string;
  readonly foot: (title: string, kind: string) => string;
  /** one of several sheets, with the first and the last player on it */
  readonly sheetOf: (sheet: number, of: number, first: string, last: string) => string;
  readonly etude: (title: string, part: string) => string;
  readonly list: (names: readonly string[]) => string;
  /** a measure's name inside a sentence */
  readonly inSentence: (name: string) => string;
  /** a change beyond noise: first the music, then the numbers */
  readonly change: (what: string, now: string, day: string, before: string) => string;
  /** the line under the title; days in order */
  readonly facts: (players: number, takes: number, days: readonly string[]) => string;
  /** bars that somebody had to fix and nobody has any more */
  readonly mastered: (bars: readonly string[]) => string | null;
  /** who has it on the latest day, and for whom it is only worth a listen or not judged */
  readonly hasIt: (have: readonly string[], open: readonly string[]) => string;
  /** which days, and how many takes */
  readonly days: (days: readonly DayTakes[]) => string;
  /** measures that stayed as they were, as inside a sentence */
  readonly stable: (names: readonly string[]) => string | null;
  /** measures that moved in between and are back where they began */
  readonly toAndFro: (names: readonly string[]) => string | null;
  /** Mondays of weeks without a take, and of all weeks with one, in order */
  readonly missingWeeks: (missing: readonly string[], all: readonly string[]) => string | null;
  /** a measure without any number, and why */
  readonly notJudged: (name: string, reason: string) => string;
  /** why takes do not count, with their days; weeks without a take are told elsewhere */
  readonly notCounted: (gaps: readonly Gap[]) => readonly string[];
  /** the same bars slurred and tongued; null where nothing is sure */
  readonly besideSlurred: (facts: BesideSlurredFacts) => string | null;
  /** how a bar stands now */
  readonly status: (facts: BarState) => string;
  /** how a change is told from chance. Source: Bland & Altman 1986; Weir 2005 */
  readonly noise: (facts: NoiseFacts) => readonly string[];
  /** days with several takes that a number rests on, further takes on them, and the working values */
  readonly restsOn: (days: number, takes: number, measuring: number, playing: number) => string;
  /** how versions of the étude's file are dealt with, with the first day of each */
  readonly versions: (change: 'none' | 'compared' | 'apart', firstDays: readonly string[]) => string | null;
  /** the file that counts, the others, and whether they name another player or day */
  readonly repeated: (counts: string, passedOver: readonly string[], differ: boolean) => string;
  /** folders in which numbers stand for players who can be followed */
  readonly numbersFollowed: (folders: readonly string[]) => string;
  /** folders in which numbers may stand for anybody */
  readonly numbersApart: (folders: readonly string[]) => string;
  /** versions of the programs that wrote the results */
  readonly toolVersions: (versions: readonly string[]) => string | null;
  /** the words for a figure */
  readonly measureInWords: (name: string, unit: string, said: readonly string[], verdict: string | null) => string;
  readonly dayInWords: (day: string, value: string) => string;
  readonly weekInWords: (week: string, value: string, players: number) => string;
  readonly barInWords: (bar: string, states: readonly string[]) => string;
  readonly stateInWords: (state: string, who: readonly string[]) => string;
  readonly storyInWords: (bar: string, what: string, days: readonly string[], status: string) => string;
}

/** A change to be told. */
export interface ToldChange {
  readonly measure: MeasureId;
  readonly verdict: 'better' | 'worse' | 'different';
  readonly fromDay: string;
  readonly from: number;
  readonly to: number;
}

/** Everything the progress sheet says beside the names of findings, criteria and days. */
export interface WeeksWords extends WeeksSentences {
  readonly labels: WeeksLabels;
  readonly standing: StandingSentences;
  /** a kind of finding in these bars, as within a sentence; no bars where it is about the whole */
  readonly topic: (kind: TroubleKind, bars: readonly string[]) => string;
  /** what the next lesson is for, one sentence */
  readonly goal: (goal: GoalFacts) => string;
  /** a measure's name and what its number counts */
  readonly measure: (measure: MeasureId) => Pick<MeasureWords, 'name' | 'unit'>;
  /** its name inside a sentence */
  readonly measureInSentence: (measure: MeasureId) => string;
  /** its number alone */
  readonly figure: (measure: MeasureId, value: number) => string;
  /** one sentence: first the music, then the numbers */
  readonly told: (change: ToldChange) => string;
}
