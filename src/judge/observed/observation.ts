import type { MisreadingKind, TempoBeat } from '../../score/index.js';
import type { Expected } from '../expected.js';
import type { Criterion, FindingKind, Unit, Weight } from '../finding-kinds.js';
import type { Leaning } from './leaning.js';

/** What the words of each kind of finding need to know. A new kind is missing here until it has its facts. */
export interface Facts {
  accidental: {
    readonly written: string;
    readonly played: string;
    readonly letter: string;
    readonly misreading: MisreadingKind;
  };
  'wrong-note': { readonly written: string; readonly played: string; readonly octave: 'higher' | 'lower' | null };
  'missed-note': { readonly written: string; readonly sure: boolean };
  'added-note': { readonly played: string; readonly after: string | null };
  'skipped-bars': { readonly toBar: string; readonly atEnd: boolean; readonly fileEnds: boolean };
  /** whole: the part had been played to its end */
  restart: { readonly stoppedAtBar: string; readonly whole?: boolean };
  /** byRegister: the change is there, but it is the instrument's own; `db` is what the player adds to it */
  'weak-contrast': {
    readonly from: string;
    readonly to: string;
    readonly db: number;
    readonly least: number;
    readonly byRegister: boolean;
    /** the teacher asks for so much */
    readonly asked?: boolean;
  };
  'reversed-contrast': { readonly from: string; readonly to: string; readonly db: number };
  /** byRegister: as in a weak contrast */
  'weak-hairpin': {
    readonly kind: 'crescendo' | 'diminuendo';
    readonly db: number;
    readonly least: number;
    readonly byRegister: boolean;
    readonly asked?: boolean;
    /** large enough, but over too soon, or turned back before its end */
    readonly course?: 'early' | 'turned-back';
  };
  'reversed-hairpin': { readonly kind: 'crescendo' | 'diminuendo'; readonly db: number };
  /** asked: the teacher sets the limit */
  'fermata-long': { readonly ratio: number; readonly most: number; readonly asked?: boolean };
  'fermata-short': { readonly ratio: number; readonly least: number; readonly asked?: boolean };
  'late-entry': { readonly milliseconds: number; readonly restQuarters: number };
  'early-entry': { readonly milliseconds: number; readonly restQuarters: number };
  'uneven-group': {
    readonly notes: number;
    readonly tuplet: boolean;
    readonly which: number;
    readonly share: number;
    readonly written: number;
    /** what this take's unevenness goes with, where this note shows it, too */
    readonly cause?: Leaning;
  };
  hesitation: { readonly seconds: number };
  /** throughout: from the first bar to the last, too evenly for any bars to stand out */
  rushing: { readonly percent: number; readonly throughout?: boolean };
  dragging: { readonly percent: number; readonly throughout?: boolean };
  'slur-broken': { readonly milliseconds: number };
  'staccato-long': { readonly percent: number; readonly usual: number | null; readonly all: boolean };
  /** falls: an fp or its like that stays loud; `db` is then how far it falls */
  'accent-weak': { readonly db: number; readonly falls?: boolean };
  'breath-unmarked': { readonly seconds: number; readonly inSlur: boolean };
  'breath-late': { readonly seconds: number };
  /** a breath asked for by the brief was not heard */
  'breath-missed': { readonly seconds: number };
  /** a full breath asked for by the brief was only a quick one */
  'breath-short': { readonly seconds: number };
  'tuning-off': { readonly cents: number };
  /** secondCents: where another ear hears it, from the player's own tuning; there when that takes the certainty away */
  'note-out-of-tune': {
    readonly written: string;
    readonly cents: number;
    readonly times: number;
    readonly secondCents?: number;
  };
  'off-tempo': { readonly played: number; readonly marked: number; readonly beat?: TempoBeat };
  /** how far the pitch strays, and how far it usually does in this take, cents */
  'unsteady-note': { readonly cents: number; readonly usual: number };
  /** how far pitch and level fall at the end of a note before a breath */
  'air-gives-way': { readonly cents: number; readonly db: number };
  /** how long another pitch sounds before the note does, and whether it lies above it */
  'cracked-start': { readonly milliseconds: number; readonly above: boolean };
  /** how far the attack is over the level the note comes to, and how far it usually is in this take */
  'hit-start': { readonly db: number; readonly usual: number };
  /** how long air is heard before the note is, and how long it usually is in this take */
  'speaks-late': { readonly milliseconds: number; readonly usual: number };
  'went-well': { readonly about: Praise };
}

/** What a player can be praised for, with the measured ground. */
export type Praise =
  | { readonly what: 'accidentals'; readonly count: number }
  | { readonly what: 'notes'; readonly right: number; readonly of: number }
  | { readonly what: 'contrast'; readonly from: string; readonly to: string; readonly db: number }
  | { readonly what: 'hairpin'; readonly kind: 'crescendo' | 'diminuendo'; readonly db: number }
  | { readonly what: 'fermatas'; readonly count: number }
  | {
      readonly what: 'steady-tempo';
      readonly quarterBpm: number;
      readonly beat: TempoBeat;
      readonly percent: number;
    }
  | { readonly what: 'intonation'; readonly share: number; readonly cents: number };

/** A value that was measured, with its unit and what was expected in its place. */
export interface MeasuredValue {
  readonly value: number;
  readonly unit: Unit;
  readonly expected?: Expected;
}

/** What was found at one place of the part. */
export interface FoundThere<K extends FindingKind> {
  readonly kind: K;
  readonly criterion: Criterion;
  readonly weight: Weight;
  readonly bar: string;
  readonly toBar?: string;
  readonly pass: number;
  readonly beat?: number;
  /** part note concerned */
  readonly index?: number;
  /** last part note concerned when it is more than one */
  readonly toIndex?: number;
  /** seconds from the first sample */
  readonly onset?: number;
  readonly measured?: MeasuredValue;
  readonly facts: Facts[K];
}

interface ObservationOf<K extends FindingKind> extends FoundThere<K> {
  /** how much it matters, for the order; about 1 for a plain fault, more for a larger one */
  readonly size: number;
}

/** Something one judge noticed, before it is put in order with what the others noticed. */
export type Observation = { [K in FindingKind]: ObservationOf<K> }[FindingKind];
