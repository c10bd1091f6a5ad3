/**
 * One take, from bytes to documents: listens, measures, judges and writes down. Touches neither disk nor clock, so the same
 * bytes give the same documents.
 *
 * Conventions: those of the house; paths are names only.
 */
export { DOCUMENTS, type DocumentEnding, documentPath, wantedDocuments } from './documents/documents.js';
export { PAGES } from './documents/pages.js';
export { SOUND } from './documents/sound.js';
export { SOUND_FACTS } from './documents/sound-facts.js';
export { type DocumentWishes, wishesIn } from './documents/wishes.js';
export { pageDate } from './page-date.js';
export { type MadeDocument, type ReviewedTake, reviewTake, type TakeRequest } from './review-take.js';
export type { Engraving, Etude, Tool, Who } from './types.js';
