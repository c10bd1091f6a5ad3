/**
 * The teacher's own page for an étude, written in YAML: tempo, breaths, bars to watch, how long, how loud, what counts.
 * Whatever it leaves out is read from the part or is the house's default.
 *
 * Conventions: tempo is quarter notes a minute; levels are dB, pitch is cents; a fermata's length is times the written
 * length; bars carry the printed number, beats are 1-based in the unit of the time signature's denominator; breaths come
 * in performed order, one for every time they are passed.
 */
export { applyBrief } from './apply-brief.js';
export { type BriefCriterion, CRITERIA, WITHOUT_POINTS } from './criteria.js';
export { defaultBrief } from './default-brief.js';
export { readBrief } from './read-brief.js';
export { secondsBetween } from './seconds-between.js';
export type * from './types.js';
export { writeStarterBrief } from './write-starter-brief.js';
