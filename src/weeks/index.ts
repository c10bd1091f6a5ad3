/**
 * Follows players over weeks: what changed, what came back, and what is no more than chance. Takes documents in, gives a
 * document back.
 *
 * Conventions: days are ISO 8601 dates; figures carry the units of the documents they come from.
 */
export { dayNumber, weekOf } from './calendar.js';
export { keepResult } from './keep-result.js';
export { progressDocument } from './progress-document.js';
export { type ProgressInParts, progressInParts } from './progress-in-parts.js';
export { progressResultJsonSchema } from './progress-json-schema.js';
export type {
  BarStory,
  BesideSlurred,
  Followed,
  Goal,
  ProgressEtude,
  ProgressMeasure,
  ProgressPlayer,
  ProgressResult,
} from './progress-result-schema.js';
export { type ProgressSheet, progressSheets } from './progress-sheets.js';
export type { FoundResult, KeptResult, LostTake } from './types.js';
