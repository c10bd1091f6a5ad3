import type { MisreadingKind } from './misreadings.js';
import type { Remark } from './remark-table.js';

/** A misreading possible at a note and the pitch it would give. */
export interface Misreading {
  readonly kind: MisreadingKind;
  readonly writtenMidi: number;
  readonly soundingMidi: number;
}

/** Letter name of a pitch. */
export type NoteLetter = 'C' | 'D' | 'E' | 'F' | 'G' | 'A' | 'B';

/** A pitch as written: letter, alteration in semitones, octave (C4 = middle C). */
export interface WrittenPitch {
  readonly step: NoteLetter;
  readonly alter: number;
  readonly octave: number;
}

/** Marks on a note that say how it is begun, held and ended. */
export type Articulation = 'staccato' | 'staccatissimo' | 'tenuto' | 'accent' | 'strong-accent' | 'detached-legato';

/** Membership of a note in a tuplet bracket (or an unbracketed run of equal time-modification). */
export interface TupletPlace {
  /** same number for all notes of one group in one pass */
  readonly group: number;
  readonly actualNotes: number;
  readonly normalNotes: number;
  /** 0-based place in the group */
  readonly place: number;
}

/** One sounding note of the part in performed order: repeats unfolded, tied notes merged. */
export interface PartNote {
  readonly index: number;
  /** measure number as printed */
  readonly bar: string;
  /** 0-based position of the printed bar in the part */
  readonly barIndex: number;
  /** 1-based count of how often this bar has been reached */
  readonly pass: number;
  /** 1-based, in units of the time signature's denominator, fractional */
  readonly beat: number;
  /** score time of the onset in quarter notes on the performed timeline, first performed bar starts at 0 */
  readonly onsetQuarters: number;
  /** sounding length in quarters, ties merged; 0 for a grace note */
  readonly durationQuarters: number;
  readonly written: WrittenPitch;
  /** MIDI number as printed */
  readonly writtenMidi: number;
  /** MIDI number that should sound */
  readonly soundingMidi: number;
  readonly grace: boolean;
  /** accidental printed at this note, MusicXML name (`sharp`, `natural`, …), null when none; where the file prints no signs, the one the rule asks for */
  readonly printedAccidental: string | null;
  readonly misreadings: readonly Misreading[];
  readonly articulations: readonly Articulation[];
  /** this note is under a slur that began at an earlier note: it is not tongued */
  readonly slurredFromPrevious: boolean;
  /** this note is under a slur that goes on to the next note */
  readonly slurredToNext: boolean;
  readonly fermata: boolean;
  /** mark for a breath or caesura right after this note */
  readonly breathAfter: 'breath' | 'caesura' | null;
  readonly tuplet: TupletPlace | null;
  /** MusicXML name of an ornament that makes notes of its own (`trill-mark`, `turn`, …) or null */
  readonly ornament: string | null;
  /** quarters of rest between the end of the previous sounding note and this onset, 0 when none */
  readonly restBeforeQuarters: number;
  /** present and true when a rest or barline with a fermata stands between the previous note and this one */
  readonly heldRestBefore?: boolean;
  /** MusicXML xml:id given to the printed note, for engraving; unique among printed notes */
  readonly printedId: string;
}

/** One bar as performed. */
export interface PerformedBar {
  readonly bar: string;
  readonly barIndex: number;
  readonly pass: number;
  readonly startQuarters: number;
  readonly lengthQuarters: number;
  readonly beats: number;
  readonly beatType: number;
}

/** A dynamic mark that sets a level (ppp … fff, mp, mf), in performed order. */
export interface DynamicMark {
  readonly mark: string;
  readonly bar: string;
  readonly pass: number;
  readonly atQuarters: number;
  /** first note under the mark */
  readonly index: number;
  /** last note that is played at the mark's level: before the next mark and before a hairpin begins */
  readonly toIndex: number;
}

/** A crescendo or diminuendo, wedge or words, in performed order. */
export interface Hairpin {
  readonly kind: 'crescendo' | 'diminuendo';
  readonly from: 'wedge' | 'words';
  readonly bar: string;
  readonly toBar: string;
  readonly pass: number;
  readonly startQuarters: number;
  readonly endQuarters: number;
  /** first and last note under it */
  readonly index: number;
  readonly toIndex: number;
}

/** A tempo in force from a place on. */
export interface TempoMark {
  readonly atQuarters: number;
  readonly quarterBpm: number;
  /** true when the tempo is printed (metronome mark or sound tempo), false when assumed */
  readonly printed: boolean;
  /** quarters of the note that the metronome mark at the beginning counts; missing where there is none */
  readonly unitQuarters?: number;
}

/** A stretch in which the written tempo bends: rit., rall., accel., until the next tempo word or mark. */
export interface TempoBend {
  readonly kind: 'slower' | 'faster';
  readonly startQuarters: number;
  readonly endQuarters: number;
}

/** The part as performed. */
export interface Part {
  readonly title: string;
  readonly partName: string;
  /** semitones added to written pitch to get sounding pitch, at the start */
  readonly transposeSemitones: number;
  /** bars as printed */
  readonly printedBars: number;
  readonly bars: readonly PerformedBar[];
  readonly notes: readonly PartNote[];
  readonly dynamics: readonly DynamicMark[];
  /** sf, sfz, fp, rf …: events on one note, not levels */
  readonly dynamicEvents: readonly { readonly mark: string; readonly index: number }[];
  readonly hairpins: readonly Hairpin[];
  /** never empty: the first entry stands at 0 */
  readonly tempos: readonly TempoMark[];
  readonly tempoBends: readonly TempoBend[];
  /** problems a copyist would point out */
  readonly remarks: readonly Remark[];
}
