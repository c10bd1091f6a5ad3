/**
 * Writes down what was heard: result documents, and pages to practise from. Pure functions; nothing here touches the disk
 * but to open the typefaces of its packages.
 *
 * Conventions: times are seconds from the first sample; levels are dBFS (RMS); pitch is cents, sharp positive; score time is
 * quarters from the first performed bar. On pages, lengths are points from the top left corner, y downwards. Every function
 * gives the same bytes for the same input.
 */

export { cellText, csvText, textCell } from './csv/csv-text.js';
export { drawListeningPage, type ListeningPageInput } from './draw-listening-page.js';
export { drawProgressSheet, type ProgressSheetInput } from './draw-progress-sheet.js';
export { drawSectionSheet } from './draw-section-sheet.js';
export { drawStudySheet, type StudySheetInput } from './draw-study-sheet.js';
export { drawTakeReport } from './draw-take-report.js';
export { engraveInThread } from './engrave/engrave-in-thread.js';
export { type EngravedPart, engravePart } from './engrave/engrave-part.js';
export type { PaperSize } from './layout/sheet.js';
export type { Loudness } from './layout/take/loudness-curve.js';
export type { ProgressResult } from './progress/progress-result-schema.js';
export { type ProgressInput, toProgressResult } from './progress/to-progress-result.js';
export type { FoundResult, LostTake } from './progress/types.js';
export { progressResultJsonSchema, sectionResultJsonSchema, takeResultJsonSchema } from './result/json-schemas.js';
export { type TakeResult, takeResultSchema } from './result/take-result-schema.js';
export { type TakeResultInput, toTakeResult } from './result/to-take-result.js';
export { sectionCsv } from './section/section-csv.js';
export {
  type SectionFailure,
  type SectionRecord,
  type SectionResult,
  type SectionScore,
  sectionRecordSchema,
} from './section/section-result-schema.js';
export { type SectionRow, sectionRow } from './section/section-row.js';
export { sectionScore } from './section/section-score.js';
export { type SectionInput, toSectionResult } from './section/to-section-result.js';
export { toStudyDocument } from './study/to-study-document.js';
