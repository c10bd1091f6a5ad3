import type { MaybeNumber, NotMeasured } from '../base/index.js';

/** How one long note is held, and where it has come to at its end. */
export interface HeldNoteMeasure {
  readonly index: number;
  readonly bar: string;
  readonly pass: number;
  /** what was looked at, without the beginning and the end of the note */
  readonly seconds: number;
  /** how far the pitch strays from its own slow course, as a robust standard deviation; regular vibrato is taken out */
  readonly wobbleCents: number;
  /** the same of the level; a room that rings makes it out of movements of the pitch */
  readonly wobbleDb: MaybeNumber;
  /** present where the pitch moves as regularly as vibrato */
  readonly vibrato?: { readonly rateHz: number; readonly depthCents: number };
  /** the end of the note over its middle; negative is lower */
  readonly endCents: number;
  /** the same of the level; negative is softer */
  readonly endDb: number;
  /** whether a breath, a rest or the end of the part follows */
  readonly beforeBreath: boolean;
}

/** How far the level usually dips from one slurred note to the next. */
export interface AirDip {
  readonly dipDb: number;
  /** 95 % */
  readonly intervalDb: readonly [number, number];
  /** of these pairs of notes */
  readonly count: number;
}

/** The air under slurs; steps and leaps apart where there are enough of both. */
export interface SlurredAirMeasure extends AirDip {
  readonly steps?: AirDip;
  readonly leaps?: AirDip;
}

/** What happens to the tone between two notes of which the second is begun with the tongue. */
export interface TonguedAirPlace {
  readonly index: number;
  readonly toIndex: number;
  readonly bar: string;
  readonly pass: number;
  /** level of what lies between the two below that of their middles, a pause counted with its length */
  readonly sagDb: number;
  /** how far the level falls between them below the softer of the two */
  readonly dipDb: number;
}

/** Another pitch at the beginning of a note: how far away, upwards positive, and for how long. */
export interface CrackSound {
  readonly semitones: number;
  readonly seconds: number;
}

/** One note that speaks at another pitch before it comes to its own. */
export interface CrackMeasure extends CrackSound {
  readonly index: number;
  readonly bar: string;
  readonly pass: number;
}

/** How one note begins out of silence. */
export interface StartMeasure {
  readonly index: number;
  readonly bar: string;
  readonly pass: number;
  /** from the first sound until the note is at its pitch */
  readonly pitchSeconds: number;
  /** from the first sound until it is near its level */
  readonly levelSeconds: number;
  /** present where another pitch sounds before it */
  readonly crack?: CrackSound;
}

/** Signs whose notes have a shape of their own. */
export type ShapedBy = 'staccatissimo' | 'staccato' | 'detached-legato' | 'tenuto' | 'accent' | 'none';

/** A median with its 95 % interval. */
export interface MiddleOf {
  readonly middle: number;
  readonly interval: readonly [number, number];
}

/** How the tongued notes under one sign are shaped, as medians. */
export interface NoteShapeMeasure {
  readonly sign: ShapedBy;
  readonly count: number;
  /** from 15 to 3 dB below the loudest moment of its beginning */
  readonly riseSeconds: MiddleOf;
  /** how long the note sounds */
  readonly lengthSeconds: MiddleOf;
  /** how far the level falls from its first third to its last; negative rises */
  readonly decayDb: MiddleOf;
}

/** How one note before a silence is let go. */
export interface ReleaseMeasure {
  readonly index: number;
  readonly bar: string;
  readonly pass: number;
  /** from 3 to 20 dB below what it was at, tone and room together */
  readonly fallSeconds: number;
  /** where its pitch has gone meanwhile; absent where it could not be heard */
  readonly pitchCents?: number;
}

/** How one rising line goes to its top. */
export interface RisingLineMeasure {
  readonly index: number;
  readonly toIndex: number;
  readonly bar: string;
  readonly toBar: string;
  readonly pass: number;
  readonly semitones: number;
  /** all of it under slurs */
  readonly slurred: boolean;
  /** its last two notes over its first two, what notes do by themselves taken out; negative thins out */
  readonly changeDb: number;
}

/** How hard one tongued note without accent is begun. */
export interface AttackMeasure {
  readonly index: number;
  readonly bar: string;
  readonly pass: number;
  /** loudest moment of its beginning over the level it comes to */
  readonly overDb: number;
}

/** How steadily a player usually holds a long note. */
export interface SteadinessMeasure {
  /** median of the long notes without vibrato */
  readonly wobbleCents: number;
  /** 95 % */
  readonly intervalCents: readonly [number, number];
  /** of these notes */
  readonly count: number;
  /** long notes that move as regularly as vibrato */
  readonly vibratoCount: number;
}

/** How much of one long note is noise. */
export interface NoiseOfNote {
  readonly index: number;
  readonly bar: string;
  readonly pass: number;
  /** harmonics over noise, below 4 kHz */
  readonly harmonicsToNoiseDb: number;
  /** level of the noise, dBFS */
  readonly noiseDb: number;
}

/** How much of a player's long notes is noise: the breath in the tone. */
export interface BreathNoiseMeasure {
  /** median of the long notes without vibrato */
  readonly harmonicsToNoiseDb: number;
  /** 95 % */
  readonly intervalDb: readonly [number, number];
  readonly count: number;
  readonly notes: readonly NoiseOfNote[];
}

/** The harmonics of one long note. */
export interface ColourOfNote {
  readonly index: number;
  readonly bar: string;
  readonly pass: number;
  readonly levelDb: number;
  /** mean number of the harmonics, weighted by their amplitudes: 1 is a sine, more is brighter */
  readonly centroidHarmonics: number;
  /** energy of the odd harmonics over that of the even ones */
  readonly oddOverEvenDb: number;
  /** shares of the first harmonic, of the second to fourth, and of all above */
  readonly tristimulus: readonly [number, number, number];
}

/** How bright long notes are, and how that goes with loudness. */
export interface ToneColourMeasure {
  readonly notes: readonly ColourOfNote[];
  readonly withLoudness:
    | NotMeasured
    | {
        /** pitch allowed for */
        readonly harmonicsPerDb: number;
        /** standard error */
        readonly errorHarmonicsPerDb: number;
        /** from the softest to the loudest of these notes, pitch allowed for */
        readonly reachDb: number;
        readonly count: number;
      };
}
