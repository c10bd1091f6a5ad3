/**
 * Engraves bars of a part: the part is laid out once as one unbroken line, excerpts are bars taken out of that line, as
 * items that a page can draw, with the places of their notes.
 *
 * Conventions: staff spaces and places are points from the top left corner of the excerpt, y downwards; notes are known by
 * their index in the part.
 */
export { type Engrave, type Excerpt, engraveExcerpt, type Notehead } from './engrave-excerpt.js';
export { engraveInThread } from './engrave-in-thread.js';
export { engraveLines, type LineOfBars } from './engrave-lines.js';
export { type EngravedPart, engravePart } from './engrave-part.js';
export { FreeRoom } from './free-room.js';
export { rememberExcerpts } from './remember-excerpts.js';
export { shifted } from './shift-items.js';
