/**
 * What is written down as data: the documents of a take, of a section and of a study sheet, their schemas, and the table as
 * CSV. Pure functions; nothing here touches the disk.
 *
 * Conventions: times are seconds from the first sample; levels are dBFS (RMS); pitch is cents, sharp positive; score time is
 * quarters from the first performed bar. The same input gives the same bytes.
 */

export { jsonPieces } from './json-pieces.js';
export { sectionResultJsonSchema, takeResultJsonSchema } from './json-schemas.js';
export { maybe, measured } from './quantities.js';
export { codeSchema, notMeasured } from './schema/common-schema.js';
export { compiledTakeResult } from './schema/compiled-take-result.js';
export { criterionSchema } from './schema/criterion-schema.js';
export { languageSchema } from './schema/language-schema.js';
export type { TonguedPlace } from './schema/playing-schema.js';
export {
  findingKindSchema,
  outcomeSchema,
  type ResultFinding,
  type TakeResult,
  toolSchema,
} from './schema/take-result-schema.js';
export { cellText, csvText, exactCell, textCell } from './section/csv-text.js';
export { sameRecordings } from './section/same-recordings.js';
export { sectionCsv } from './section/section-csv.js';
export {
  type SectionRecord,
  type SectionResult,
  type SectionScore,
  type SectionTake,
  sectionRecordSchema,
} from './section/section-result-schema.js';
export { type SectionRow, sectionRow } from './section/section-row.js';
export { sectionScore } from './section/section-score.js';
export { toSectionResult } from './section/to-section-result.js';
export { standingCsv } from './standing/standing-csv.js';
export type { Standing, StandingGroup, StandingTake } from './standing/standing-schema.js';
export { type PanelMark, standingRow, toStanding } from './standing/to-standing.js';
export { toJson } from './to-json.js';
export { toStudyDocument } from './to-study-document.js';
export { toTakeResult } from './to-take-result.js';
export { reasonOf, toldNumber, toldReason } from './told-reason.js';
