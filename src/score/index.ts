/**
 * MusicXML bytes to the part as performed.
 *
 * Conventions: time is quarter notes from the start of the first performed bar; beats are 1-based in the unit of the time
 * signature's denominator, and a pick-up bar ends on the last beat; pitch is MIDI note numbers, written and sounding;
 * notes, bars and marks come in performed order (repeats unfolded, tied notes merged), bars carry the number printed;
 * `printedId` is `n<k>`, k counting the `note` elements of the part from 1 in document order.
 */
export { engravingCopy } from './engraving/engraving-copy.js';
export { MISREADINGS, type MisreadingKind } from './misreadings.js';
export { type ReadPartOptions, readPart } from './read-part.js';
export { REMARKS, type Remark } from './remark-table.js';
export { QUARTERS_OF_BEAT, type TempoBeat, tempoBeat } from './tempo-beat.js';
export type * from './types.js';
