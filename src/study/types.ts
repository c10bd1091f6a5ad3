import type { BreathKind, BriefWatch } from '../brief/index.js';
import type { MisreadingKind } from '../score/index.js';

/** A place where a pitch is easily misread. */
export interface Trap {
  readonly kind: MisreadingKind;
  readonly bar: string;
  /** 0-based position of the printed bar */
  readonly barIndex: number;
  /** beats of the notes concerned */
  readonly beats: readonly number[];
  /** the notes concerned, for an engraver */
  readonly printedIds: readonly string[];
  /** what the notes are, e.g. `F♯` */
  readonly name: string;
  /** what a reader would play instead */
  readonly misread: string;
  /** the bar and the note whose sign leads astray, null when it is the key signature */
  readonly because: { readonly barIndex: number; readonly printedId: string } | null;
  /** 1: the page shows no sign here, and one nearby leads astray; 2: the key signature alone says it; 3: a sign is printed */
  readonly rank: 1 | 2 | 3;
  /** one sentence to the player */
  readonly reason: string;
}

/** A place to breathe. */
export interface BreathPlace {
  readonly bar: string;
  readonly beat: number;
  readonly atQuarters: number;
  readonly kind: BreathKind;
  /** `mark`: asked for by the part or the brief; `rest`: a rest that leaves time */
  readonly from: 'mark' | 'rest';
  /** seconds of playing since the breath before, or since the start */
  readonly secondsBefore: number;
  /** seconds there are for the breath */
  readonly secondsAvailable: number;
  /** where these seconds come from */
  readonly takenFrom: 'rest' | 'end-of-note' | 'fermata';
}

/** A stretch between two breaths that is long for one breath. */
export interface LongPhrase {
  readonly bar: string;
  readonly toBar: string;
  readonly seconds: number;
}

/** A level that holds from a place on. */
export interface LevelStep {
  readonly mark: string;
  readonly bar: string;
  readonly beat: number;
  readonly atQuarters: number;
  /** steps on the scale ppp … fff since the mark before, positive louder; null at the first mark */
  readonly steps: number | null;
}

/** A crescendo or diminuendo. */
export interface HairpinStep {
  readonly kind: 'crescendo' | 'diminuendo';
  readonly bar: string;
  readonly beat: number;
  readonly toBar: string;
  /** 1-based count of how often its bar has been reached */
  readonly pass: number;
  readonly startQuarters: number;
  readonly endQuarters: number;
  /** length in bars, to a quarter of a bar */
  readonly bars: number;
  readonly seconds: number;
  /** level in force where it begins, null when none is marked */
  readonly fromMark: string | null;
  /** level marked where it ends, null when none is */
  readonly toMark: string | null;
}

/** Bars that are tongued and slurred in the same way. */
export interface ArticulationPattern {
  readonly bars: readonly string[];
  /** e.g. `two slurred, two tongued` */
  readonly words: string;
}

/** Entries after rests that are counted alike. */
export interface EntryPlan {
  readonly bars: readonly string[];
  readonly words: string;
}

/** A fermata with a sensible length. */
export interface FermataPlan {
  readonly bar: string;
  readonly beat: number;
  readonly writtenSeconds: number;
  readonly leastTimes: number;
  readonly mostTimes: number;
  readonly suggestedTimes: number;
  readonly suggestedSeconds: number;
  readonly words: string;
}

/** The tempo and how it changes. */
export interface TempoPlan {
  readonly quarterBpm: number;
  /** false when neither part nor brief names a tempo, so that one had to be assumed */
  readonly marked: boolean;
  readonly lowestQuarterBpm: number;
  readonly highestQuarterBpm: number;
  readonly changes: readonly { readonly bar: string; readonly beat: number; readonly words: string }[];
}

/** One step of practice. */
export interface PracticeStep {
  readonly title: string;
  readonly text: string;
}

/** A pitch of the part with its place. */
export interface RangeEnd {
  readonly name: string;
  readonly writtenMidi: number;
  readonly bar: string;
}

/** Everything a study sheet says. */
export interface StudyPlan {
  readonly title: string;
  readonly partName: string;
  readonly bars: number;
  readonly notes: number;
  /** seconds from the first note to the end, repeats included */
  readonly seconds: number;
  readonly range: { readonly lowest: RangeEnd; readonly highest: RangeEnd };
  readonly tempo: TempoPlan;
  readonly traps: readonly Trap[];
  readonly breaths: readonly BreathPlace[];
  readonly longPhrases: readonly LongPhrase[];
  readonly levels: readonly LevelStep[];
  readonly hairpins: readonly HairpinStep[];
  readonly articulation: readonly ArticulationPattern[];
  readonly entries: readonly EntryPlan[];
  readonly fermatas: readonly FermataPlan[];
  /** what the teacher wants looked at */
  readonly watch: readonly BriefWatch[];
  readonly practice: readonly PracticeStep[];
  /** problems of the part that a copyist would point out */
  readonly problems: readonly string[];
  readonly cautions: readonly string[];
}
