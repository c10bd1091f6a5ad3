/**
 * What the room's own script is handed, as JSON. Times are whole milliseconds from the first sample, levels tenths of a
 * decibel, lengths points; `place` counts performed bars from 0, a note is known by its index in the part as performed.
 */
export interface RoomData {
  /** the same for the same takes: under it marks are kept in the browser */
  readonly id: string;
  readonly blind: boolean;
  readonly words: Readonly<Record<ScriptWord, string>>;
  readonly parts: readonly PartData[];
  readonly takes: readonly TakeHead[];
}

/** What the script says, in words of the room's language. */
export type ScriptWord =
  | 'bar'
  | 'bars'
  | 'pass'
  | 'passNumber'
  | 'hear'
  | 'stop'
  | 'barName'
  | 'severalPasses'
  | 'marksInBar'
  | 'oneMarkInBar'
  | 'notPlayed'
  | 'notPlayedIn'
  | 'noSound'
  | 'cannotPlay'
  | 'hearing'
  | 'written'
  | 'yourTurn'
  | 'hidden'
  | 'quieter'
  | 'asRecorded'
  | 'notKept'
  | 'badMark'
  | 'noJudge'
  | 'leftOut'
  | 'forgetAgain'
  | 'file';

/** A part as the script needs it. */
export interface PartData {
  readonly bars: readonly BarData[];
  /** quarters from the first performed bar, a note; grace notes stand where the note after them does */
  readonly onsets: readonly number[];
  readonly layouts: { readonly wide: LayoutData; readonly narrow: LayoutData };
  readonly written: WrittenData;
}

/** A performed bar: its printed number, its printed place from 0, pass, start and length, and what a click counts, in quarters. */
export type BarData = readonly [
  bar: string,
  barIndex: number,
  pass: number,
  startQuarters: number,
  lengthQuarters: number,
  clickQuarters: number,
];

/** Where bars and notes stand in one way of breaking lines. */
export interface LayoutData {
  readonly lines: readonly LineData[];
  /** a printed bar: its line, where it begins and where it ends */
  readonly bars: readonly (readonly [line: number, left: number, right: number])[];
  /** where the head of each note stands in the line of its bar; null when it was not engraved */
  readonly heads: readonly (number | null)[];
}

/** A line of the engraved part: its picture's box, and the strip of curves below the notes. */
export interface LineData {
  readonly width: number;
  readonly top: number;
  readonly height: number;
  readonly stripTop: number;
  readonly stripHeight: number;
}

/** The part as it asks to be played, for the model of notes and time. */
export interface WrittenData {
  /** knots between which time runs evenly: quarters and milliseconds */
  readonly clock: readonly (readonly [quarters: number, milliseconds: number])[];
  readonly notes: readonly WrittenNote[];
}

/** A note of the model; `legato` goes on into the next one without a gap. */
export type WrittenNote = readonly [
  onsetMs: number,
  lengthMs: number,
  midi: number,
  levelTenths: number,
  legato: 0 | 1,
];

/** What is known of every take at once. */
export interface TakeHead {
  readonly name: string;
  /** of the player, or the take where the player is not known */
  readonly label: string;
  /** the day in words, empty when it is not known */
  readonly day: string;
  /** ISO 8601, empty when it is not known */
  readonly date: string;
  /** the same for takes of one player; empty when nobody is named */
  readonly player: string;
  /** place among the room's parts; null when the take was not reviewed or its part is not here */
  readonly part: number | null;
  readonly sound: string | null;
  readonly pages: string | null;
  /** places met out of places measured, from 0 to 1, by criterion */
  readonly met: Readonly<Record<string, number>>;
}

/** What is known of one take, read when it is asked for. */
export interface TakeData {
  /** knots between which the part runs evenly: milliseconds and quarters, both rising */
  readonly clock: readonly (readonly [milliseconds: number, quarters: number])[];
  /** when each performed bar begins and ends; null for one that was not played */
  readonly bars: readonly (readonly [fromMs: number, toMs: number] | null)[];
  /** loudness, so many values a quarter from the first performed bar on */
  readonly levels: readonly (number | null)[];
  readonly levelsAQuarter: number;
  /** the loudest playing, and how far above and below it is shown */
  readonly levelRange: { readonly reference: number; readonly top: number; readonly bottom: number };
  /** beats a minute a performed bar */
  readonly tempos: readonly (number | null)[];
  readonly tempoRange: readonly [low: number, high: number] | null;
  readonly kWeighted: readonly (number | null)[];
  readonly findings: readonly FindingData[];
  /** pencil marks as elements of SVG, by line */
  readonly marks: {
    readonly wide: Readonly<Record<number, string>>;
    readonly narrow: Readonly<Record<number, string>>;
  };
}

/** What the script knows of a finding; its words stand on the page. */
export interface FindingData {
  /** of the element that tells it */
  readonly id: string;
  readonly kind: string;
  /** the same for the same trouble at the same place in another take */
  readonly key: string;
  readonly headline: string;
  /** on the button that plays it */
  readonly hear: string;
  readonly where: string;
  /** performed bars, null for what concerns the whole take */
  readonly places: readonly [from: number, to: number] | null;
  /** what is heard of it; null when it cannot be heard at one place */
  readonly passage: readonly [fromMs: number, toMs: number] | null;
}
