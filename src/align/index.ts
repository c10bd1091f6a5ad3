/**
 * From what was heard and what is written to where every note of the part is in the recording.
 *
 * Times are seconds from the first sample; indexes are those of the part's notes in performed order.
 */
export { alignTake } from './align-take.js';
export type { AddedNote, AlignedNote, Alignment, NoteStatus, Restart, Skip } from './types.js';
