import type { MisreadingKind } from '../score/index.js';

/** An instrument the synthesiser knows. */
export type VoiceName = 'clarinet' | 'flute' | 'brass';

/** A note of the part: its index, or the first note at this bar and beat (first pass). */
export type NoteAddress = number | { readonly bar: string; readonly beat: number };

/** One thing a player does that the part does not ask for. */
export type Fault =
  /** plays the pitch this misreading gives; the note must allow it */
  | { readonly kind: 'misread'; readonly at: NoteAddress; readonly misreading: MisreadingKind }
  | { readonly kind: 'wrong-note'; readonly at: NoteAddress; readonly semitones: number }
  /** the note's time passes in silence */
  | { readonly kind: 'missed-note'; readonly at: NoteAddress }
  /** a note slips in before the next one and takes its time from the end of this one */
  | { readonly kind: 'added-note'; readonly after: NoteAddress; readonly semitones: number }
  /** the note's pitch is off */
  | { readonly kind: 'out-of-tune'; readonly at: NoteAddress; readonly cents: number }
  /** every note of this written pitch is off */
  | { readonly kind: 'pitch-tendency'; readonly writtenMidi: number; readonly cents: number }
  /** `at` is the first note; the notes from there share their time like this (sum 1), as many notes as shares */
  | { readonly kind: 'uneven-group'; readonly at: NoteAddress; readonly shares: readonly number[] }
  /** these notes are longer by such a share of their length, and the others of their beat make room */
  | { readonly kind: 'leans'; readonly at: readonly NoteAddress[]; readonly share: number }
  /** late by so much, caught up again within a quarter; negative is early */
  | { readonly kind: 'late-entry'; readonly at: NoteAddress; readonly seconds: number }
  /** everything from this note on comes so much later */
  | { readonly kind: 'hesitation'; readonly before: NoteAddress; readonly seconds: number }
  /** a gap for breath taken from the end of this note; `delaySeconds` moves everything after it */
  | { readonly kind: 'breath'; readonly after: NoteAddress; readonly seconds: number; readonly delaySeconds: number }
  /** a note under a slur is tongued after all */
  | { readonly kind: 'broken-slur'; readonly at: NoteAddress }
  /** staccato notes (or this one) sound this share of the time to the next note */
  | { readonly kind: 'staccato'; readonly at?: NoteAddress; readonly share: number }
  /** this note sounds this share of the time to the next note, whatever its sign */
  | { readonly kind: 'length'; readonly at: NoteAddress; readonly share: number }
  /** the fermata is held so many times its written value */
  | { readonly kind: 'fermata'; readonly at: NoteAddress; readonly ratio: number }
  /** hairpins (or the one with this 0-based number) rise or fall only this share; negative goes the other way */
  | { readonly kind: 'hairpin'; readonly number?: number; readonly share: number }
  /** stops after one note and goes on from an earlier one after a pause */
  | {
      readonly kind: 'restart';
      readonly after: NoteAddress;
      readonly resumeAt: NoteAddress;
      readonly pauseSeconds: number;
    }
  /** the air shakes: pitch and level of the note stray irregularly, so far as a root mean square */
  | { readonly kind: 'shake'; readonly at: NoteAddress; readonly cents: number; readonly db: number }
  /** the air gives way: in the last `seconds` of the note pitch and level fall by so much */
  | {
      readonly kind: 'sag';
      readonly at: NoteAddress;
      readonly cents: number;
      readonly db: number;
      readonly seconds: number;
    }
  /** the line thins out: from its first note to its last the level falls by so much */
  | { readonly kind: 'thin'; readonly from: NoteAddress; readonly to: NoteAddress; readonly db: number }
  /** the note is let go within so many seconds, and its pitch falls by so much meanwhile; negative rises */
  | { readonly kind: 'release'; readonly at: NoteAddress; readonly seconds: number; readonly cents: number }
  /** the air pulses: the level dips by so much as a slurred note begins */
  | { readonly kind: 'pulse'; readonly at: NoteAddress; readonly db: number }
  /** the tongue costs the air: notes begun with it are softer by so much */
  | { readonly kind: 'soft-tongue'; readonly db: number }
  /** the note is hit: its attack is louder by so much, and fades */
  | { readonly kind: 'hit'; readonly at: NoteAddress; readonly db: number }
  /** nothing but air is heard for so long before the tone comes */
  | { readonly kind: 'speaks-late'; readonly at: NoteAddress; readonly seconds: number }
  /** the note begins at another pitch, e.g. a partial, for so long */
  | { readonly kind: 'crack'; readonly at: NoteAddress; readonly semitones: number; readonly seconds: number }
  /** leaves out these notes and their time; up to the last note of the part, the player breaks off */
  | { readonly kind: 'skip'; readonly from: NoteAddress; readonly to: NoteAddress };

/** How a take is to be played and recorded. What is left out is played well. */
export interface TakePlan {
  /** any whole number; the same plan gives the same samples */
  readonly seed: number;
  readonly voice: VoiceName;
  /** default 44100 */
  readonly sampleRateHz?: number;
  /** 1 is the marked tempo, 1.1 a tenth faster */
  readonly tempoFactor?: number;
  /** tempo at the end over tempo at the beginning, default 1 */
  readonly tempoDrift?: number;
  /** the player's own tuning from A = 440 Hz */
  readonly tuningCents?: number;
  /** semitones the whole take sounds above the part */
  readonly transposeSemitones?: number;
  /** 1 plays the full contrast of the marks, 0 none, default 1 */
  readonly contrast?: number;
  /** how much louder an accented note is, default 3.5 */
  readonly accentDb?: number;
  /** default 0.008 */
  readonly timingScatterSeconds?: number;
  /** default 5 */
  readonly tuningScatterCents?: number;
  /** default 0.5 */
  readonly levelScatterDb?: number;
  /** on notes that last; default none */
  readonly vibrato?: { readonly rateHz: number; readonly depthCents: number };
  /** noise of the breath under the tone, over the tone's level; default as the voice has it */
  readonly breathDb?: number;
  /** reverberation time of the room, 0 for none, default 0.5 */
  readonly roomSeconds?: number;
  /** mezzo-forte over background noise, default 48 */
  readonly signalToNoiseDb?: number;
  /** before the first note, default 0.8 */
  readonly leadInSeconds?: number;
  /** after the last note, default 0.9 */
  readonly tailSeconds?: number;
  /** moves everything; mezzo-forte is at −24 dBFS without it */
  readonly gainDb?: number;
  readonly faults?: readonly Fault[];
}

/** One note as it was really played. */
export interface PlayedNote {
  /** the part's note, null for an added one */
  readonly index: number | null;
  /** last part note begun before it, −1 before the first */
  readonly afterIndex: number;
  /** the passage was broken off and played again later */
  readonly abandoned: boolean;
  /** where the sound begins, from the first sample */
  readonly onsetSeconds: number;
  /** where it has fallen to half its amplitude, or where the next slurred note begins */
  readonly offsetSeconds: number;
  /** sounding */
  readonly playedMidi: number;
  /** from equal temperament at A = 440 Hz for the pitch played */
  readonly cents: number;
  /** RMS at the beginning and end of its held part, dBFS, without room and noise */
  readonly startDb: number;
  readonly endDb: number;
  /** what the dynamic marks alone ask for at its beginning, dB over mezzo-forte */
  readonly dynamicDb: number;
  /** begun with the tongue, not slurred from the note before */
  readonly tongued: boolean;
  /** runs into the next note without a gap */
  readonly legato: boolean;
  /** extra level of the attack, fading within a tenth of a second */
  readonly attackDb: number;
  /** what is wrong with its sound; present where a fault asks for it */
  readonly sound?: readonly SoundFault[];
}

/** A fault of the sound of one note. */
export type SoundFault = Extract<
  Fault,
  { kind: 'shake' | 'sag' | 'release' | 'pulse' | 'hit' | 'speaks-late' | 'crack' }
>;

/** A take as samples, with what was really played. */
export interface PerformedTake {
  /** mono, full scale = ±1 */
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  /** in time order */
  readonly truth: readonly PlayedNote[];
}
