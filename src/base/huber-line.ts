import { median } from './statistics.js';

/** A fitted straight line. */
export interface FittedLine {
  readonly slope: number;
  readonly intercept: number;
  /** standard error of the slope, NaN with fewer than three points */
  readonly slopeError: number;
}

/** Residuals beyond this many robust standard deviations lose weight. */
const HUBER_K = 1.345;
const ROUNDS = 20;

/**
 * Straight line by Huber's M-estimate: least squares where points behave, robust where one does not.
 *
 * @param x abscissae, at least two different
 * @param y ordinates, same length
 * @returns slope, intercept and standard error of the slope
 *
 * Source: Huber 1981, Robust Statistics; k = 1.345 gives 95 % efficiency on normal data; iteratively reweighted.
 */
export function fitHuberLine(x: readonly number[], y: readonly number[]): FittedLine {
  let weights = x.map(() => 1);
  let line = weightedLine(x, y, weights);
  for (let round = 0; round < ROUNDS; round++) {
    const residuals = y.map((v, i) => v - line.intercept - line.slope * x[i]!);
    const scale = 1.4826 * median(residuals.map(Math.abs));
    if (!(scale > 1e-9)) break;
    weights = residuals.map((r) => Math.min(1, (HUBER_K * scale) / Math.max(1e-12, Math.abs(r))));
    const next = weightedLine(x, y, weights);
    const done = Math.abs(next.slope - line.slope) < 1e-9;
    line = next;
    if (done) break;
  }
  return line;
}

function weightedLine(x: readonly number[], y: readonly number[], w: readonly number[]): FittedLine {
  let total = 0;
  let meanX = 0;
  let meanY = 0;
  for (let i = 0; i < x.length; i++) {
    total += w[i]!;
    meanX += w[i]! * x[i]!;
    meanY += w[i]! * y[i]!;
  }
  meanX /= total;
  meanY /= total;
  let sxx = 0;
  let sxy = 0;
  for (let i = 0; i < x.length; i++) {
    sxx += w[i]! * (x[i]! - meanX) ** 2;
    sxy += w[i]! * (x[i]! - meanX) * (y[i]! - meanY);
  }
  const slope = sxx > 0 ? sxy / sxx : 0;
  const intercept = meanY - slope * meanX;
  let squares = 0;
  for (let i = 0; i < x.length; i++) squares += w[i]! * (y[i]! - intercept - slope * x[i]!) ** 2;
  const slopeError = x.length > 2 && sxx > 0 ? Math.sqrt(squares / (x.length - 2) / sxx) : Number.NaN;
  return { slope, intercept, slopeError };
}
