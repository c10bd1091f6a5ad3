/**
 * Writes down what was heard: result documents, and pages to practise from. Pure functions; nothing here touches the disk
 * but to open the typefaces of its packages.
 *
 * Conventions: times are seconds from the first sample; levels are dBFS (RMS); pitch is cents, sharp positive; score time is
 * quarters from the first performed bar. On pages, lengths are points from the top left corner, y downwards. Every function
 * gives the same bytes for the same input.
 */

export type { Loudness } from './curves/loudness-curve.js';
export { drawHandoutIndex, type HandoutIndex, type HandoutRow } from './handout/draw-handout-index.js';
export { drawListeningRoom } from './listen/draw-listening-room.js';
export type { RoomInput, RoomPart, RoomTake, SoundFacts } from './listen/room-input.js';
export { drawSectionSheets, type SectionSheetInput } from './section/draw-section-sheets.js';
export { drawPanelSheet, drawStanding } from './standing/draw-standing.js';
export { drawStudySheet, type StudySheetInput } from './study/draw-study-sheet.js';
export { drawTakeReport } from './take/draw-take-report.js';
export { drawProgressSheet, type ProgressSheetInput } from './weeks/draw-progress-sheet.js';
