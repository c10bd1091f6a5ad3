import type { Remark, TempoBeat } from '../../score/index.js';
import type {
  ArticulationGroup,
  BreathPlace,
  Demand,
  EntryPlan,
  FermataPlan,
  HairpinStep,
  PracticeStep,
  RangeEnd,
  TempoChange,
  Trap,
} from '../../study/index.js';

/** What is said of a hairpin, with numbers already in words. */
export interface HairpinFacts extends Pick<HairpinStep, 'kind' | 'bar' | 'toBar' | 'bars' | 'seconds'> {
  readonly fromMark: string | null;
  readonly toMark: string | null;
  /** the mark at its end lies on the other side, so it comes at once */
  readonly opposite: boolean;
}

/** Tempo and length, as the head of the sheet tells them. */
export interface LengthFacts {
  readonly bars: number;
  readonly seconds: number;
  /** quarter notes a minute */
  readonly quarterBpm: number;
  readonly lowestQuarterBpm: number;
  readonly highestQuarterBpm: number;
  /** what a metronome counts */
  readonly beat: TempoBeat;
  /** false when the tempo had to be assumed */
  readonly marked: boolean;
}

/** Where a place is. */
export interface StudyPlaces {
  /** `Bar 4`, `Bars 4–6` */
  readonly bars: (bar: string, toBar: string) => string;
  /** `Bar 4`, `Bars 1, 3 and 14`, runs of neighbours as `2–5` */
  readonly barList: (bars: readonly string[]) => string;
  /** `Bar 4, beat 2½` */
  readonly note: (bar: string, beat: number) => string;
}

type StepOf<K extends PracticeStep['kind']> = Extract<PracticeStep, { kind: K }>;

/** Words for every step of practice. */
export type PracticeWords = { readonly [K in PracticeStep['kind']]: (step: StepOf<K>) => string };

/** What the plan says in sentences, on the page and in the data. */
export interface StudyPlanWords {
  /** why a note is a trap and what to play, without its bar */
  readonly trap: (trap: Trap) => string;
  readonly articulation: (groups: readonly ArticulationGroup[]) => string;
  readonly entry: (entry: EntryPlan) => string;
  readonly fermata: (fermata: FermataPlan) => string;
  readonly tempoChange: (change: TempoChange) => string;
  readonly practiceTitle: (step: PracticeStep) => string;
  readonly practice: (step: PracticeStep) => string;
  readonly demandTitle: (demand: Demand) => string;
  readonly demand: (demand: Demand) => string;
  readonly cautions: readonly string[];
  /** a remark on the part */
  readonly problem: (remark: Remark) => string;
  /** names without octaves, with their signs, a natural's too where the language has one: `B♮ and F♯` */
  readonly pitches: (pitches: Trap['pitches']) => string;
  /** name with its octave */
  readonly pitchWithOctave: (pitch: RangeEnd['pitch']) => string;
}

/** Headings, labels and captions of the page. */
export interface StudyPageWords {
  /** what the sheet is called */
  readonly kind: string;
  /** for a part without a title */
  readonly untitled: string;
  readonly documentTitle: (title: string) => string;
  readonly length: (facts: LengthFacts) => string;
  /** with a word on bar 0 where the part has one */
  readonly range: (lowest: RangeEnd, highest: RangeEnd, pickUp: boolean) => string;
  readonly demands: string;
  readonly watch: { readonly heading: string; readonly noReason: string };
  /** the whole étude with pencil marks */
  readonly etude: {
    readonly heading: string;
    readonly introduction: string;
    /** words beside the notes, as short as can be */
    readonly breath: Readonly<Record<BreathPlace['kind'], string>>;
    readonly hold: (seconds: number) => string;
    /** where the teacher wants a player to look */
    readonly watch: string;
    readonly step: Readonly<Record<'louder' | 'softer', string>>;
    /** at the end of a hairpin */
    readonly arrive: string;
    /** what stands for a line where it cannot be seen: its bars, and each mark with its place */
    readonly alternative: (bars: string, marks: readonly string[]) => string;
    readonly mark: (place: string, what: string) => string;
    readonly ring: (names: string) => string;
  };
  readonly traps: {
    readonly heading: string;
    readonly none: string;
    readonly printedOnly: string;
    readonly introduction: string;
    /** a reason after the bar it is about */
    readonly inBar: (bar: string, reason: string) => string;
    /** ringed notes by their names, bar by bar */
    readonly alternative: (bars: string, notes: readonly { readonly names: string; readonly bar: string }[]) => string;
    readonly also: string;
    readonly toSee: string;
    readonly bar: (bar: string) => string;
    readonly more: (count: number) => string;
  };
  readonly breaths: {
    readonly heading: string;
    readonly introduction: string;
    readonly none: (seconds: number) => string;
    readonly heads: Readonly<Record<'after' | 'breath' | 'before' | 'time' | 'source', string>>;
    readonly kind: Readonly<Record<BreathPlace['kind'], string>>;
    readonly seconds: (seconds: number) => string;
    readonly underATenth: string;
    readonly source: Readonly<Record<BreathPlace['takenFrom'], string>>;
    readonly hardlyAny: string;
    readonly more: (count: number) => string;
    readonly long: (bar: string, toBar: string, seconds: number) => string;
    readonly moreLong: (count: number) => string;
  };
  readonly dynamics: {
    readonly heading: string;
    readonly none: string;
    readonly introduction: string;
    readonly alternative: (
      bar: string,
      toBar: string,
      marks: readonly { readonly mark: string; readonly bar: string }[],
    ) => string;
    readonly contrasts: (
      pairs: readonly { readonly from: string; readonly to: string; readonly bars: readonly string[] }[],
    ) => string;
    readonly hairpin: (facts: HairpinFacts) => string;
    /** the same place, leading elsewhere when it is repeated */
    readonly hairpinAgain: (facts: HairpinFacts) => string;
    readonly moreHairpins: (count: number) => string;
  };
  readonly tonguing: {
    readonly heading: string;
    readonly introduction: string;
    /** goes on after the introduction where a slur ends in a dot */
    readonly dotUnderSlur: string;
    readonly head: string;
    /** what stands for a bar in notes where it cannot be seen */
    readonly alternative: (bars: string, pattern: string) => string;
    readonly more: (patterns: number) => string;
  };
  readonly entries: { readonly heading: string; readonly introduction: string; readonly head: string };
  readonly fermatas: {
    readonly one: string;
    readonly several: string;
    /** `usual`: whether the teacher leaves room for what is usual */
    readonly introduction: (usual: boolean) => string;
    readonly head: string;
  };
  readonly tempo: { readonly heading: string; readonly introduction: string; readonly head: string };
  readonly where: string;
  /** names a row that says how many are left out */
  readonly andMore: string;
  readonly morePlaces: (count: number) => string;
  readonly practice: string;
  readonly problems: { readonly heading: string; readonly more: (count: number) => string };
  readonly care: string;
  /** packages with faces for them that are not there */
  readonly lettersMissing: (packages: readonly string[]) => string;
}

/** Everything a study sheet says. */
export interface StudyWords {
  readonly places: StudyPlaces;
  readonly plan: StudyPlanWords;
  readonly page: StudyPageWords;
}
