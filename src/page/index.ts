/**
 * Pages as plain data: text, lines and areas with places on paper, filled from top to bottom, and their drawing as PDF and
 * SVG. Knows no take and no words of its own.
 *
 * Conventions: lengths are points (1/72 inch) from the top left corner of the page, y downwards. The same drawing gives the
 * same bytes. Touches the disk only to open the typefaces of its packages.
 */

export { drawPdf } from './draw/draw-pdf.js';
export { openFaces } from './draw/faces/faces.js';
export type { OpenFont } from './draw/faces/open-font.js';
export { packagesWanting } from './draw/faces/packages-wanting.js';
export { gatherPdfs, type Pages } from './draw/gather-pdfs.js';
export { markupText } from './draw/markup-text.js';
export { numberInMarkup } from './draw/number-in-markup.js';
export { FACE_CLASSES, toSvg } from './draw/to-svg.js';
export { createTypesetter } from './draw/typesetter.js';
export { webFont } from './draw/web-font/web-font.js';
export type {
  Drawing,
  DrawingElement,
  Face,
  Item,
  Link,
  PageMarks,
  PathItem,
  TextItem,
  Typesetter,
} from './drawing.js';
export { drawHeadRule } from './head-rule.js';
export { INKS } from './inks.js';
export { linked } from './linked.js';
export { type AffineMap, combined, mapped, scaleOf, UNMOVED } from './path/affine-map.js';
export { areaOf } from './path/area-of.js';
export { areaUnder } from './path/area-under.js';
export { type Bounds, boundsOf } from './path/bounds-of.js';
export { circle } from './path/circle.js';
export { clipPath } from './path/clip-path.js';
export { ellipse } from './path/ellipse.js';
export { joinPaths } from './path/join-paths.js';
export { lineAcross } from './path/line-across.js';
export { lineThrough } from './path/line-through.js';
export { mapPath } from './path/map-path.js';
export { mapPoints } from './path/map-points.js';
export type { Path, Point, Step } from './path/path.js';
export { pointsAlong } from './path/points-along.js';
export { placeText, type SetText, setOneLine, setText, type TextStyle } from './set-text.js';
export { type PaperSize, Sheet, type SheetOptions } from './sheet.js';
export { MARGIN_COLUMN, MARGIN_GAP, STYLES } from './styles.js';
export { type Cell, type Column, drawTable, tableHeight } from './table.js';
export { widthWithoutLonelyWord } from './width-without-lonely-word.js';
export { writeParagraph } from './write-paragraph.js';
