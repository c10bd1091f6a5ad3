import type { TempoBeat } from '../../score/index.js';
/** Headings, labels and captions of a take's pages. */
export interface PageWords {
  readonly wentWell: string;
  readonly wholeTake: string;
  readonly workOn: readonly string[];
  readonly nothing: string;
  readonly worthAListen: string;
  /** what a place on the page leads to; it comes as "Bar 7, beat 2" */
  readonly hearInRoom: (place: string) => string;
  readonly measured: (value: string) => string;
  readonly toPractise: (sentence: string) => string;
  readonly seconds: (seconds: number) => string;
  readonly minutes: (minutes: number, seconds: number) => string;
  readonly fileAndLength: (file: string, length: string) => string;
  readonly documentTitle: (piece: string, who: string) => string;
  /** the headline of a take in which not all was played; `points`: whether there are any */
  readonly partly: (facts: PartlyPlayed) => string;
}

/** How much of a part was played, for a headline. */
export interface PartlyPlayed {
  /** printed bars; more than one stretch where bars are left out or the part goes back */
  readonly stretches: readonly { readonly bar: string; readonly toBar: string; readonly pass: number }[];
  readonly played: number;
  /** performed bars, more than are printed where `repeats` */
  readonly of: number;
  readonly repeats: boolean;
  readonly restarts: number;
  readonly ending: 'whole' | 'broken-off' | 'cut-off';
  readonly points: boolean;
}

/** The picture of the whole take. */
export interface GlanceWords {
  readonly heading: string;
  readonly loudness: string;
  readonly loudnessAlone: string;
  readonly levelRiding: string;
  readonly tempo: (beat: TempoBeat) => string;
  readonly tempoAlone: (beat: TempoBeat) => string;
  readonly noTempo: (reason: string) => string;
  readonly notHeard: (bars: string) => string;
  readonly bars: (first: string, last: string) => string;
  readonly tempoOver: (bars: string, range: { low: string; high: string } | null, beat: TempoBeat) => string;
  readonly decibels: (value: string) => string;
  readonly rise: (value: string) => string;
  readonly notMeasured: string;
  readonly markIn: (mark: string, bar: string, level: string) => string;
  readonly hairpinIn: (kind: 'crescendo' | 'diminuendo', bar: string, toBar: string, rise: string) => string;
  readonly loudnessOver: (bars: string, marks: readonly string[]) => string;
}

/** The tables. */
export interface TableWords {
  readonly byCriterion: string;
  readonly weights: string;
  readonly criterion: string;
  readonly toFix: string;
  readonly toWatch: string;
  readonly heard: string;
  readonly points: string;
  readonly pointsOf: (given: string, possible: string) => string;
  readonly noPoints: (possible: string) => string;
  readonly pointsFormula: (given: string, possible: string) => string;
  readonly notJudged: string;
  /** in place of a count where nothing of a criterion was played */
  readonly notPlayed: string;
  readonly everythingElse: string;
  /** said of findings for which there is no room */
  readonly more: (count: number) => string;
  readonly where: string;
  readonly about: string;
  readonly to: string;
  readonly weight: {
    readonly fix: string;
    readonly watch: string;
    readonly well: string;
  };
  readonly withPractice: (text: string, practice: string) => string;
  readonly recording: string;
  readonly notMeasured: string;
}

/** What may be missing from the measurements, and the line that says so. */
export interface GapWords {
  readonly tuning: string;
  readonly tempo: string;
  readonly noise: string;
  readonly level: (mark: string, bar: string) => string;
  readonly step: (from: string, to: string, bar: string) => string;
  readonly hairpin: (kind: 'crescendo' | 'diminuendo', bar: string, toBar: string) => string;
  readonly fermata: (bar: string) => string;
  readonly list: (items: readonly string[]) => string;
  readonly line: (what: string, reason: string) => string;
}

/** What a page says that could not review its take. */
export interface NotReviewedWords {
  readonly heading: string;
  readonly what: string;
  readonly tries: readonly string[];
}

/** Headings of that page. */
export interface NotReviewedHeadings {
  readonly tries: string;
  readonly recording: string;
}

/** The cautions at the end. */
export interface SmallPrint {
  /** for a page that a player practises from */
  readonly practice: string;
  /** for every page with results */
  readonly panel: string;
  /** the same on a sheet of several takes */
  readonly teacher: string;
  /** when some letters could not be drawn */
  /** packages with faces for them that are not there */
  readonly lettersMissing: (packages: readonly string[]) => string;
}
