import type { Alignment } from '../align/index.js';
import type { Take } from '../decode/index.js';
import type { Features } from '../features/index.js';
import type { Part } from '../score/index.js';
import type { NoteMeasure } from './types.js';

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
