import { type Path, POINTS_OF_STEP } from '../path/path.js';

/**
 * Begins a path on the page of a PDF; whoever calls fills or strokes it.
 *
 * @param doc PDF being drawn
 * @param path of any form
 *
 * Source: ISO 32000-1, 8.5.2 (path construction); SVG 2, path data, for the control point that a smooth curve leaves out:
 * that of the curve before it seen from the point where both meet, or after anything else than a curve that point itself.
 */
export function tracePath(doc: PDFKit.PDFDocument, { steps, points }: Path): void {
  let next = 0;
  let [x, y, controlX, controlY] = [0, 0, 0, 0];
  for (const step of steps) {
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = points.slice(next, next + 2 * POINTS_OF_STEP[step]);
    next += 2 * POINTS_OF_STEP[step];
    if (step === 'C') {
      doc.bezierCurveTo(a, b, c, d, e, f);
      [controlX, controlY, x, y] = [c, d, e, f];
    } else if (step === 'S') {
      doc.bezierCurveTo(2 * x - controlX, 2 * y - controlY, a, b, c, d);
      [controlX, controlY, x, y] = [a, b, c, d];
    } else if (step === 'Z') doc.closePath();
    else {
      if (step === 'M') doc.moveTo(a, b);
      else doc.lineTo(a, b);
      [controlX, controlY, x, y] = [a, b, a, b];
    }
  }
}
