import type { Alignment } from '../../align/index.js';
import type { Take } from '../../decode/index.js';
import type { Features } from '../../features/index.js';
import type { Part } from '../../score/index.js';
import type { NoteMeasure } from '../types.js';

/** Everything a measure may look at. */
export interface MeasureContext {
  readonly take: Take;
  readonly features: Features;
  readonly part: Part;
  readonly alignment: Alignment;
}

/** What measures that build on single notes may look at as well. */
export interface NoteContext extends MeasureContext {
  readonly notes: readonly NoteMeasure[];
}

/** How many dB a note is louder or softer than others for reasons of its own: its pitch on this instrument, its length. */
export interface OwnLoudness {
  /** dB for a note of the part; 0 when nothing is known of it */
  of(index: number): number;
}

/** What measures that compare levels may look at as well. */
export interface LevelContext extends NoteContext {
  /** how loud each note is by itself; null when there are too few notes to tell */
  readonly ownLoudness: OwnLoudness | null;
}
