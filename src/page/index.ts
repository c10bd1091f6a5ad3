/**
 * Pages as plain data: text, lines and areas with places on paper, filled from top to bottom, and their drawing as PDF and
 * SVG. Knows no take and no words of its own.
 *
 * Conventions: lengths are points (1/72 inch) from the top left corner of the page, y downwards. The same drawing gives the
 * same bytes. Touches the disk only to open the typefaces of its packages.
 */
export { circle } from './circle.js';
export { widthWithCompany, writeParagraph } from './company.js';
export { drawPdf } from './draw/draw-pdf.js';
export { type OpenFont, openFaces } from './draw/faces.js';
export { markupText } from './draw/markup-text.js';
export { FACE_CLASSES, toSvg } from './draw/to-svg.js';
export { createTypesetter } from './draw/typesetter.js';
export { webFont } from './draw/web-font/web-font.js';
export type { Drawing, DrawingElement, Face, Item, PageMarks, PathItem, TextItem, Typesetter } from './drawing.js';
export { drawHeadRule } from './head-rule.js';
export { INKS } from './inks.js';
export { areaUnder, lineThrough, numberInPath } from './path.js';
export { placeText, type SetText, setOneLine, setText, type TextStyle } from './set-text.js';
export { type PaperSize, Sheet } from './sheet.js';
export { MARGIN_COLUMN, MARGIN_GAP, STYLES } from './styles.js';
export { type Cell, type Column, drawTable, tableHeight } from './table.js';
