/** What became of a note: played as written, at another pitch, not at all, or too unclear to tell. */
export type NoteStatus = 'as-written' | 'other-pitch' | 'left-out' | 'unclear';

/** What became of one note of the part. Fields about sound are present exactly when something was played for it. */
export interface AlignedNote {
  readonly index: number;
  readonly status: NoteStatus;
  /** sounding MIDI number that was played, in the part's own octave and transposition (see Alignment.offsetSemitones) */
  readonly playedMidi?: number;
  readonly onsetSeconds?: number;
  readonly offsetSeconds?: number;
  /** 0 to 1 */
  readonly confidence: number;
}

/** A note that was played and is not in the part. */
export interface AddedNote {
  readonly onsetSeconds: number;
  readonly offsetSeconds: number;
  readonly midi: number;
  /** last part note before it, -1 before the first */
  readonly afterIndex: number;
  /** true for one that leads into the note behind it like a grace note */
  readonly leadsIn?: boolean;
}

/** A place where the player stopped and began again, at the same note or earlier. */
export interface Restart {
  /** last note reached before the player stopped */
  readonly stoppedAtIndex: number;
  /** note from which playing resumed */
  readonly resumedAtIndex: number;
  /** when playing resumed */
  readonly onsetSeconds: number;
}

/** Notes that were jumped over. */
export interface Skip {
  /** first and last note passed over */
  readonly fromIndex: number;
  readonly toIndex: number;
  /** when playing went on after it */
  readonly onsetSeconds: number;
}

/** Where every note of the part is in the recording. */
export interface Alignment {
  /** `other`: something is played but it is not this part; `nothing`: no playing could be heard */
  readonly fit: 'this-part' | 'other' | 'nothing';
  /** 0 to 1, share of the part's notes found as written */
  readonly share: number;
  readonly notes: readonly AlignedNote[];
  readonly added: readonly AddedNote[];
  readonly restarts: readonly Restart[];
  readonly skips: readonly Skip[];
  /** whole semitones by which the whole take sounds above the part (0 normally, e.g. 12 or the transposition) */
  readonly offsetSemitones: number;
  /** the player's own tuning: median deviation from A = 440 Hz equal temperament, cents */
  readonly tuningCents: number;
}
