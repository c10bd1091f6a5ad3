import type { MaybeNumber } from '../base/index.js';

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
  /** where it happens; absent when too few notes or too little rise tell */
  readonly course?: HairpinCourse;
}

/** Where within a crescendo or diminuendo the change of level happens. */
export interface HairpinCourse {
  /** share of the whole change that is there halfway, in time; 0.5 when it is even */
  readonly halfwayShare: number;
  /** where its loudest (softest) moment lies, share of its time, 1 at the end */
  readonly peakAt: number;
  /** how far the level has turned back from there by the end, dB */
  readonly turnedBackDb: number;
  /** agreement of level and time: 1 when every note goes on from the one before, 0 when there is no order */
  readonly steadiness: number;
}

/** How far one accented note, or one with sf, fp and their like, stands out. */
export interface AccentMeasure {
  /** accent, or the printed letters of a dynamic event */
  readonly mark: string;
  readonly index: number;
  readonly bar: string;
  readonly pass: number;
  /** attack over the unaccented notes around it */
  readonly overDb: number;
  /** how far those differ among themselves: distance of their quartiles */
  readonly spreadDb: number;
  /** how far the note falls from its attack to its last third; absent when it is too short to tell */
  readonly fallDb?: number;
  /** sounding share of the time to the next note, 0 to 1; absent where none follows at once, or it is slurred to it */
  readonly soundedShare?: number;
}

/** The level of all passages under one printed mark, what the notes do by themselves taken out. */
export interface MarkLevel {
  readonly mark: string;
  readonly levelDb: number;
  readonly count: number;
  /** 95 % */
  readonly intervalDb: readonly [number, number];
}

/** Two marks whose passages stand the wrong way round over the whole take. */
export interface MarkPair {
  readonly softer: string;
  readonly louder: string;
  /** by how much the softer mark is the louder one; the interval leaves no doubt that it is */
  readonly byDb: number;
}

/** The order of the marks over the take. */
export interface MarkOrderMeasure {
  /** from soft to loud as printed */
  readonly marks: readonly MarkLevel[];
  readonly reversed: readonly MarkPair[];
}
