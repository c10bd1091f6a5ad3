/**
 * From numbers to what is told to the player. Deciding and wording are apart; standards are data with their sources.
 *
 * Weights: `fix` is sure and matters, `watch` is worth a listen, `well` is praise. Findings come most useful first.
 */
export { judgeTake } from './judge-take.js';
export { playedName } from './note-name.js';
export { standardsFor } from './standards-for.js';
export type * from './types.js';
export { noteNameIn } from './wording/note-name-in.js';
export { sentenceIn } from './wording/sentence-in.js';
