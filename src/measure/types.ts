import type { Caution, MaybeNumber, NotMeasured } from '../base/index.js';
import type {
  AccentMeasure,
  ContrastMeasure,
  HairpinMeasure,
  LevelMeasure,
  MarkOrderMeasure,
} from './dynamics-types.js';

import type { PlaceInScore } from './place-in-score.js';
import type {
  AttackMeasure,
  BreathNoiseMeasure,
  CrackMeasure,
  HeldNoteMeasure,
  NoteShapeMeasure,
  ReleaseMeasure,
  RisingLineMeasure,
  SlurredAirMeasure,
  StartMeasure,
  SteadinessMeasure,
  ToneColourMeasure,
  TonguedAirPlace,
} from './sound-types.js';
import type { UnevennessMeasure } from './uneven-types.js';

export type * from './dynamics-types.js';
export type { PlaceInScore } from './place-in-score.js';
export type * from './sound-types.js';
export type * from './uneven-types.js';

/** The recording itself, before anything is said about the playing. */
export interface RecordingMeasure {
  readonly peakDbfs: number;
  /** share of samples inside flat tops, 0 to 1 */
  readonly clippedShare: number;
  readonly signalToNoiseDb: MaybeNumber;
  /** time in which sound dies away by 60 dB */
  readonly reverberationSeconds: MaybeNumber;
  /** how late a wall sends the sound back; present where it plainly does */
  readonly echoSeconds?: number;
  readonly levelRiding: boolean;
  /** the file holds less than it should: what is missing at the end is not the player's fault */
  readonly breaksOff: boolean;
  /** by how much the coding of the file may have moved an onset; 0 where it moves none */
  readonly onsetSpreadSeconds: number;
  /** it stops while a tone still sounds at its full level */
  readonly endsInSound: boolean;
  /** what a reader is to know before the numbers, of the file and of the sound; usually nothing */
  readonly cautions: readonly Caution[];
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
  /** `cents` as another ear hears it, or why it cannot; present only where it was asked */
  readonly secondEarCents?: MaybeNumber;
  /** RMS level of the held part of the note, dBFS */
  readonly levelDb: MaybeNumber;
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

/** How a note is to be held, by its marks: under a dot that ends a slur, with dots, tenuto, tongued without any mark … */
export type WayOfPlaying =
  | 'staccatissimo'
  | 'staccato'
  | 'slur-end-short'
  | 'detached-legato'
  | 'tongued'
  | 'tenuto'
  | 'slurred';

/** How much of their time the notes of one way of playing sound. */
export interface ArticulationMeasure {
  readonly way: WayOfPlaying;
  readonly count: number;
  /** median sounding share of the time to the next onset, 0 to 1 */
  readonly soundedShare: number;
  /** first and third quartile */
  readonly middleHalf: readonly [number, number];
  /** how far these notes differ among themselves, as a robust standard deviation; absent where they are too few to tell */
  readonly spread?: { readonly share: number /** 95 % */; readonly interval: readonly [number, number] };
}

/** A sound that is not in the part, at the pitch of a note that ended just before. */
export interface EchoMeasure {
  /** when the sound begins */
  readonly onsetSeconds: number;
  /** by how many dB it is below that note, the loudest of them when there are several */
  readonly softerDb: number;
}

/** What is where a note that was not heard should stand. */
export interface EmptyPlaceMeasure {
  readonly index: number;
  /** from the end of the note before to the onset of the note after */
  readonly silentSeconds: number;
  /** what the note would last at the local pace */
  readonly writtenSeconds: number;
  /** share of the time between its neighbours that is missing: the music closed up over it */
  readonly closedUpShare: number;
  /** how far the level has fallen by the second half of that silence */
  readonly fallDb: number;
}

/** What is in a rest: nothing, the note before it held or ringing on, or a sound of its own. */
export type RestState = 'silent' | 'rung-over' | 'played-into';

/** One written rest of a beat or more; its place is that of the sound in it, or of its beginning. */
export interface RestMeasure {
  /** note before it */
  readonly index: number;
  /** note after it */
  readonly toIndex: number;
  readonly bar: string;
  readonly pass: number;
  readonly beat: number;
  readonly quarters: number;
  /** what it lasted */
  readonly seconds: number;
  readonly state: RestState;
  /** when the sound of its own begins, and its pitch in the recording; present exactly when the rest is played into */
  readonly onsetSeconds?: number;
  readonly midi?: number;
}

/** One breath asked for. */
export interface BreathMeasure {
  /** note after which it is taken */
  readonly index: number;
  readonly bar: string;
  readonly pass: number;
  readonly beat: number;
  /** silence before the next note */
  readonly gapSeconds: MaybeNumber;
  /** how late the next note comes; negative is early */
  readonly lateSeconds: MaybeNumber;
}

/** Where the pitch of some notes leans, from the player's own tuning. */
export interface PitchTendency {
  readonly cents: number;
  readonly count: number;
  /** 95 % */
  readonly intervalCents: readonly [number, number];
}

/** Thirds of the range of the part. */
export type RegisterName = 'low' | 'middle' | 'high';

/** How pitch goes with loudness, each written pitch compared with itself. */
export type LoudPitchMeasure =
  | NotMeasured
  | {
      readonly centsPerDb: number;
      /** standard error */
      readonly errorCentsPerDb: number;
      /** from the softest to the loudest of these notes */
      readonly reachDb: number;
      readonly count: number;
    };

/** Where the pitch leans by note name, by register and with loudness. */
export interface IntonationMeasure {
  readonly noteNames: readonly (PitchTendency & { readonly name: string })[];
  readonly registers: readonly (PitchTendency & {
    readonly register: RegisterName;
    /** written */
    readonly fromMidi: number;
    readonly toMidi: number;
  })[];
  readonly withLoudness: LoudPitchMeasure;
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
  readonly unevenness: UnevennessMeasure | NotMeasured;
  readonly entries: readonly EntryMeasure[];
  readonly accents: readonly AccentMeasure[];
  readonly articulations: readonly ArticulationMeasure[];
  readonly breaths: readonly BreathMeasure[];
  readonly emptyPlaces: readonly EmptyPlaceMeasure[];
  readonly rests: readonly RestMeasure[];
  /** where in the part each added note stands, in the order of the alignment */
  readonly addedPlaces: readonly PlaceInScore[];
  readonly echoes: readonly EchoMeasure[];
  readonly intonation: IntonationMeasure;
  readonly markOrder: MarkOrderMeasure;
  readonly heldNotes: readonly HeldNoteMeasure[];
  readonly steadiness: SteadinessMeasure | NotMeasured;
  readonly cracks: readonly CrackMeasure[];
  readonly starts: readonly StartMeasure[];
  readonly slurredAir: SlurredAirMeasure | NotMeasured;
  readonly tonguedAir: readonly TonguedAirPlace[] | NotMeasured;
  readonly attacks: readonly AttackMeasure[];
  readonly releases: readonly ReleaseMeasure[] | NotMeasured;
  readonly risingLines: readonly RisingLineMeasure[] | NotMeasured;
  readonly noteShapes: readonly NoteShapeMeasure[] | NotMeasured;
  readonly breathNoise: BreathNoiseMeasure | NotMeasured;
  /** present only where it was asked for */
  readonly toneColour?: ToneColourMeasure | NotMeasured;
}
