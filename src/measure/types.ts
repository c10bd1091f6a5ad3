import type { MaybeNumber, NotMeasured } from '../base/index.js';

/** The recording itself, before anything is said about the playing. */
export interface RecordingMeasure {
  readonly peakDbfs: number;
  /** share of samples inside flat tops, 0 to 1 */
  readonly clippedShare: number;
  readonly signalToNoiseDb: MaybeNumber;
  readonly levelRiding: boolean;
  /** the file holds less than it should: what is missing at the end is not the player's fault */
  readonly breaksOff: boolean;
  /** plain-word cautions for the reader, usually none */
  readonly cautions: readonly string[];
}

/** The tuning of the take as a whole. */
export interface TuningMeasure {
  readonly centsFromA440: number;
  readonly a4Hz: number;
}

/** Tempo of one performed bar. */
export interface BarTempo {
  readonly bar: string;
  readonly pass: number;
  readonly startQuarters: number;
  readonly quarterBpm: number;
}

/** The tempo of the take, over all and bar by bar. */
export interface TempoMeasure {
  /** the first printed tempo, null when the part prints none */
  readonly markedQuarterBpm: number | null;
  readonly playedQuarterBpm: number;
  /** performed bars whose tempo could be measured, fermatas and written tempo bends left out */
  readonly bars: readonly BarTempo[];
}

/** Numbers of one note, same order and length as the part's notes. */
export interface NoteMeasure {
  readonly index: number;
  /** deviation from equal temperament at A = 440 Hz for the pitch played */
  readonly cents: MaybeNumber;
  readonly centsFromOwnTuning: MaybeNumber;
  /** RMS level of the held part of the note, dBFS */
  readonly levelDb: MaybeNumber;
}

/** Level under one dynamic mark. */
export interface LevelMeasure {
  readonly mark: string;
  readonly index: number;
  readonly toIndex: number;
  readonly bar: string;
  readonly pass: number;
  /** median of the notes' levels */
  readonly levelDb: MaybeNumber;
}

/** Change of level between two neighbouring different marks. */
export interface ContrastMeasure {
  readonly from: string;
  readonly to: string;
  readonly index: number;
  readonly bar: string;
  readonly pass: number;
  /** second minus first */
  readonly differenceDb: MaybeNumber;
  /** the same with the instrument's own loud and soft registers taken out */
  readonly registerAdjustedDb: MaybeNumber;
  /** 95 % interval of differenceDb, absent when not measured */
  readonly intervalDb?: readonly [number, number];
}

/** One crescendo or diminuendo. */
export interface HairpinMeasure {
  readonly kind: 'crescendo' | 'diminuendo';
  readonly index: number;
  readonly toIndex: number;
  readonly bar: string;
  readonly toBar: string;
  readonly pass: number;
  /** fitted level at the last note minus at the first */
  readonly riseDb: MaybeNumber;
  /** the same with the instrument's own loud and soft registers taken out */
  readonly registerAdjustedRiseDb: MaybeNumber;
  readonly slopeDbPerBar: MaybeNumber;
  readonly slopeDbPerSecond: MaybeNumber;
  /** standard error of riseDb, absent when not measured */
  readonly errorDb?: number;
}

/** One fermata. */
export interface FermataMeasure {
  readonly index: number;
  readonly bar: string;
  readonly pass: number;
  /** what the note value lasts at the local tempo */
  readonly writtenSeconds: MaybeNumber;
  readonly heldSeconds: MaybeNumber;
  /** held ÷ written */
  readonly ratio: MaybeNumber;
}

/** How one note goes over into the next that is played right after it. */
export interface TransitionMeasure {
  readonly index: number;
  readonly toIndex: number;
  readonly betweenOnsetsSeconds: number;
  /** what the local pace asks for; absent when the pace is not known */
  readonly expectedSeconds?: number;
  readonly secondsAQuarter?: number;
  /** silence between them */
  readonly gapSeconds: number;
  /** how far the level falls between them below the softer of the two */
  readonly dipDb: number;
  /** sounding share of the time between the onsets, 0 to 1 */
  readonly soundedShare: number;
}

/** How the notes of a tuplet or a beat share their time. */
export interface GroupMeasure {
  readonly index: number;
  readonly toIndex: number;
  readonly bar: string;
  readonly pass: number;
  readonly tuplet: boolean;
  readonly seconds: number;
  /** one a note; they add up to 1 */
  readonly shares: readonly number[];
  /** the same as written */
  readonly written: readonly number[];
}

/** A note after a rest. */
export interface EntryMeasure {
  readonly index: number;
  readonly bar: string;
  readonly pass: number;
  readonly restQuarters: number;
  /** positive is late */
  readonly lateSeconds: number;
  readonly secondsAQuarter: number;
}

/** How far one accented note stands out. */
export interface AccentMeasure {
  readonly index: number;
  readonly bar: string;
  readonly pass: number;
  /** attack over the unaccented notes around it */
  readonly overDb: number;
  /** how far those differ among themselves: distance of their quartiles */
  readonly spreadDb: number;
}

/** Everything measured in one take. Numbers with units, no adjectives. */
export interface Measurements {
  readonly recording: RecordingMeasure;
  readonly tuning: TuningMeasure | NotMeasured;
  readonly tempo: TempoMeasure | NotMeasured;
  readonly notes: readonly NoteMeasure[];
  readonly levels: readonly LevelMeasure[];
  readonly contrasts: readonly ContrastMeasure[];
  readonly hairpins: readonly HairpinMeasure[];
  readonly fermatas: readonly FermataMeasure[];
  readonly transitions: readonly TransitionMeasure[];
  readonly groups: readonly GroupMeasure[];
  readonly entries: readonly EntryMeasure[];
  readonly accents: readonly AccentMeasure[];
}
