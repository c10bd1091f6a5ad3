import type { KeySignature } from '../pitch/key.js';
import type { BarRemark } from '../remark-table.js';
import type { Articulation, WrittenPitch } from '../types.js';

/**
 * The part as printed. Positions are quarter notes from the start of the bar; `order` counts elements in document order, so
 * that things at one position can be told apart.
 */

/** `time-modification`: actual notes in the time of normal notes. */
export interface TimeModification {
  readonly actualNotes: number;
  readonly normalNotes: number;
  /** written length of the normal note in quarters, null when the file does not name it */
  readonly normalQuarters: number | null;
}

/** Start or stop of something that is numbered so that several can be open at once. */
export interface SpanEnd {
  readonly type: 'start' | 'stop';
  readonly number: string;
}

/** Start or stop of a tuplet bracket, with its own ratio when given. */
export interface TupletEnd extends SpanEnd {
  readonly actualNotes: number | null;
  readonly normalNotes: number | null;
}

/** Place of a printed note in its tuplet group. */
export interface PrintedTuplet {
  readonly printedGroup: number;
  readonly actualNotes: number;
  readonly normalNotes: number;
  readonly place: number;
}

/** Signs written at a note; those of a whole chord are joined. */
export interface NoteSigns {
  readonly slurs: readonly SpanEnd[];
  readonly tuplets: readonly TupletEnd[];
  readonly articulations: readonly Articulation[];
  readonly fermata: boolean;
  readonly breathAfter: 'breath' | 'caesura' | null;
  readonly ornament: string | null;
  /** dynamics written at the note instead of in a direction */
  readonly dynamics: readonly string[];
}

/** One `note` element: a note, a rest, or something that takes time but is not to be played (cue, unpitched, hidden). */
export interface PrintedNote extends NoteSigns {
  readonly id: string;
  readonly order: number;
  readonly at: number;
  readonly duration: number;
  readonly voice: string;
  readonly staff: string;
  readonly inChord: boolean;
  /** null: a rest or not to be played */
  readonly pitch: WrittenPitch | null;
  readonly grace: boolean;
  readonly tieStart: boolean;
  readonly tieStop: boolean;
  readonly accidental: string | null;
  /** written length without dots in quarters, null when the file does not give it */
  readonly typeQuarters: number | null;
  readonly modification: TimeModification | null;
  /** the primary beam goes on to the next note */
  readonly beamGoesOn: boolean;
}

/** Something written between the notes that changes how they are played. */
export type MarkContent =
  | { readonly kind: 'dynamic'; readonly name: string }
  | { readonly kind: 'wedge'; readonly type: 'crescendo' | 'diminuendo' | 'stop'; readonly number: string }
  | { readonly kind: 'words'; readonly text: string }
  | { readonly kind: 'dashes'; readonly type: 'start' | 'stop'; readonly number: string }
  | { readonly kind: 'metronome'; readonly quarterBpm: number; readonly unitQuarters: number }
  | { readonly kind: 'modulation'; readonly factor: number }
  | { readonly kind: 'sound-tempo'; readonly quarterBpm: number; readonly hidden: boolean };

/** A mark with its place. */
export type PrintedMark = MarkContent & {
  readonly at: number;
  readonly order: number;
  readonly staff: string | null;
  readonly voice: string | null;
  /** the file moves the mark by an offset, so its place may miss the note by a little */
  readonly moved: boolean;
};

/** Key or transposition from a place on; `staff` null means all staves. */
export interface KeyChange {
  readonly at: number;
  readonly staff: string | null;
  readonly key: KeySignature;
}

/** Transposition from a place on; `staff` null means all staves. */
export interface TransposeChange {
  readonly at: number;
  readonly staff: string | null;
  readonly semitones: number;
}

/** Signs that send the player to another bar. Names tell several segni and codas apart. */
export interface RouteSigns {
  readonly forwardRepeat: boolean;
  /** 0: none; otherwise how often the passage is played */
  readonly backwardRepeatTimes: number;
  readonly endingStart: readonly number[] | null;
  readonly endingStop: boolean;
  readonly segno: string | null;
  readonly coda: string | null;
  readonly toCoda: string | null;
  readonly daCapo: boolean;
  readonly dalSegno: string | null;
  readonly fine: boolean;
  readonly alFine: boolean;
  readonly alCoda: boolean;
  readonly withRepeats: boolean;
}

/** One bar as printed. */
export interface PrintedBar extends RouteSigns {
  readonly index: number;
  readonly number: string;
  readonly lengthQuarters: number;
  /** what the time signature asks for, null in unmeasured music */
  readonly nominalQuarters: number | null;
  readonly beats: number;
  readonly beatType: number;
  /** quarters that are missing before the bar's first position, so that it ends on the last beat */
  readonly missingQuarters: number;
  readonly implicit: boolean;
  readonly notes: readonly PrintedNote[];
  readonly marks: readonly PrintedMark[];
  readonly keyChanges: readonly KeyChange[];
  readonly transposeChanges: readonly TransposeChange[];
  readonly fermataAtEnd: boolean;
  /** what could not be read as it is meant */
  readonly remarks: readonly BarRemark[];
}

/** Positions nearer than this are the same, in quarters. */
export const SAME_PLACE = 1e-6;
