import type { BreathKind, BriefCriterion, BriefWatch, ContrastPlace } from '../brief/index.js';
import type { Articulation, MisreadingKind, Remark, TempoBeat, WrittenPitch } from '../score/index.js';

/** A letter and its alteration, without octave. */
export type PitchName = Pick<WrittenPitch, 'step' | 'alter'>;

/** The earlier note whose sign leads astray. */
export interface TrapSign {
  readonly bar: string;
  /** 0-based position of the printed bar */
  readonly barIndex: number;
  readonly beat: number;
  readonly printedId: string;
  /** what its sign asks for, semitones */
  readonly alter: number;
  /** its octave, seen from the note that is misread */
  readonly octave: 'same' | 'higher' | 'lower';
}

/** Why the key signature may be forgotten just here. */
export type LikelyReason =
  | { readonly why: 'first' }
  /** another sign stood on the same line some bars ago */
  | { readonly why: 'after-sign'; readonly bar: string; readonly alter: number }
  /** a natural stands right beside it */
  | { readonly why: 'beside-natural'; readonly neighbour: PitchName };

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
  /** what the notes are, each once, the first first */
  readonly pitches: readonly PitchName[];
  /** what a reader would play instead, in the same order */
  readonly misread: readonly PitchName[];
  /** null when it is the key signature or the printed sign itself, or when the sign is not found */
  readonly because: TrapSign | null;
  /** null unless it is the key signature */
  readonly likely: LikelyReason | null;
  /** 1: the page shows no sign here, and one nearby leads astray; 2: the key signature alone says it; 3: a sign is printed */
  readonly rank: 1 | 2 | 3;
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

/** Notes that follow each other and are played alike. */
export interface ArticulationGroup {
  readonly kind: 'slurred' | 'tongued' | Articulation;
  /** notes in it */
  readonly count: number;
  /** the first note of a slur carries an accent */
  readonly accentOnFirst: boolean;
  /** the last note of a slur carries a dot */
  readonly dotOnLast: boolean;
  /** how often it comes, one after the other */
  readonly times: number;
}

/** Bars that are tongued and slurred in the same way. */
export interface ArticulationPattern {
  readonly bars: readonly string[];
  readonly groups: readonly ArticulationGroup[];
}

/** Values that rests are named by. */
export type RestValue =
  | 'thirty-second'
  | 'sixteenth'
  | 'triplet-eighth'
  | 'eighth'
  | 'two-triplet-eighths'
  | 'dotted-eighth'
  | 'quarter'
  | 'dotted-quarter'
  | 'half'
  | 'dotted-half';

/** Entries after rests that are counted alike. */
export interface EntryPlan {
  readonly bars: readonly string[];
  /** the rest by its value, as whole bars, or in quarters to a hundredth */
  readonly rest: { readonly value: RestValue } | { readonly bars: number } | { readonly quarters: number };
  /** what to count through the rest */
  readonly count: 'bars-then-eighths' | 'eighths' | 'triplet-eighths' | 'sixteenths' | 'smallest';
  /** where to come in: on a beat, on its half in a time of quarters, on another part of it, or somewhere after it */
  readonly entry: { readonly how: 'on' | 'half' | 'part' | 'after'; readonly beat: number };
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
  /** whether the suggestion is the usual one, because the limits leave room for it */
  readonly usual: boolean;
  /** the note is short, so its hold stays modest */
  readonly short: boolean;
}

/** What becomes of the tempo at a place. */
export type TempoChange =
  /** quarter notes a minute, a whole number of beats */
  | { readonly to: number; readonly beat: TempoBeat }
  /** bends until a place, null for the end of the part */
  | { readonly bend: 'slower' | 'faster'; readonly until: { readonly bar: string; readonly beat: number } | null };

/** The tempo and how it changes. */
export interface TempoPlan {
  readonly quarterBpm: number;
  /** false when neither part nor brief names a tempo, so that one had to be assumed */
  readonly marked: boolean;
  readonly lowestQuarterBpm: number;
  readonly highestQuarterBpm: number;
  /** what a metronome counts */
  readonly beat: TempoBeat;
  readonly changes: readonly { readonly bar: string; readonly beat: number; readonly change: TempoChange }[];
}

/** One step of practice. */
export type PracticeStep =
  /** name the notes of these bars, of more of them, or of all when none is named; clap bars with rests or all */
  | { readonly kind: 'read'; readonly bars: readonly string[]; readonly more: boolean; readonly rests: boolean }
  | { readonly kind: 'slow'; readonly quarterBpm: number; readonly beat: TempoBeat }
  /** with the pattern of a bar on one note first, null when there is none */
  | {
      readonly kind: 'tongued';
      readonly quarterBpm: number;
      readonly beat: TempoBeat;
      readonly patternBar: string | null;
    }
  | { readonly kind: 'dynamics' }
  | { readonly kind: 'under-tempo' }
  /** quarter notes a minute, slow first */
  | { readonly kind: 'up-to-tempo'; readonly steps: readonly number[]; readonly beat: TempoBeat }
  | { readonly kind: 'once-through' };

/** Something a teacher asks for. */
export type Demand =
  /** of what is judged */
  | {
      readonly kind: 'points';
      readonly criteria: readonly { readonly criterion: BriefCriterion; readonly points: number }[];
      readonly total: number;
    }
  | { readonly kind: 'left-out'; readonly criteria: readonly BriefCriterion[] }
  /** decibels between neighbouring marks; other ones at some places */
  | { readonly kind: 'contrast'; readonly leastDb: number; readonly places: readonly ContrastPlace[] }
  | { readonly kind: 'hairpin'; readonly leastDb: number }
  /** times the written length */
  | { readonly kind: 'fermata'; readonly leastTimes: number; readonly mostTimes: number }
  /** from so many cents on a note is out of tune */
  | { readonly kind: 'intonation'; readonly fixCents: number };

/** A pitch of the part with its place. */
export interface RangeEnd {
  /** as written, with its octave: the middle C is in octave 4 */
  readonly pitch: WrittenPitch;
  readonly writtenMidi: number;
  readonly bar: string;
}

/** Everything a study sheet says, as codes and numbers. */
export interface StudyPlan {
  readonly title: string;
  readonly partName: string;
  readonly bars: number;
  readonly notes: number;
  /** seconds from the first note to the end, repeats included */
  readonly seconds: number;
  /** null when there is no note */
  readonly range: { readonly lowest: RangeEnd; readonly highest: RangeEnd } | null;
  readonly tempo: TempoPlan;
  readonly traps: readonly Trap[];
  readonly breaths: readonly BreathPlace[];
  readonly longPhrases: readonly LongPhrase[];
  readonly levels: readonly LevelStep[];
  readonly hairpins: readonly HairpinStep[];
  readonly articulation: readonly ArticulationPattern[];
  readonly entries: readonly EntryPlan[];
  readonly fermatas: readonly FermataPlan[];
  /** what the teacher asks for beyond the part, and what it is worth */
  readonly demands: readonly Demand[];
  /** what the teacher wants looked at */
  readonly watch: readonly BriefWatch[];
  readonly practice: readonly PracticeStep[];
  /** problems of the part that a copyist would point out */
  readonly problems: readonly Remark[];
}
