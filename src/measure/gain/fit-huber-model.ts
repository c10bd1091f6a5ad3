import { robustSpread } from '../../base/index.js';

/** A model fitted to numbers with some outliers. */
export interface FittedModel {
  /** one coefficient a column */
  readonly coefficients: readonly number[];
  /** standard error of each */
  readonly errors: readonly number[];
}

const ROUNDS = 10;
/** Beyond so many standard deviations a number counts less (Huber 1981: 95 % efficient for normal errors). */
const HUBER = 1.345;
const LEAST_SPREAD = 1e-6;

/**
 * Fits `y` as a sum of columns.
 *
 * @param columns each as long as y; the first is usually all ones
 * @param y the numbers
 * @returns coefficients and their standard errors; null when the columns are not independent
 *
 * Source: M-estimate by iterated weighted least squares (Huber 1981).
 */
export function fitHuberModel(columns: readonly Float64Array[], y: Float64Array): FittedModel | null {
  const weights = new Float64Array(y.length).fill(1);
  let fitted: FittedModel | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    const inverse = inverted(products(columns, weights));
    if (inverse === null) return null;
    const right = columns.map((column) => sumOf(y.length, (i) => weights[i]! * column[i]! * y[i]!));
    const coefficients = inverse.map((row) => sumOf(row.length, (k) => row[k]! * right[k]!));
    const left = y.map((v, i) => v - sumOf(columns.length, (k) => coefficients[k]! * columns[k]![i]!));
    const spread = Math.max(LEAST_SPREAD, robustSpread(left));
    for (let i = 0; i < y.length; i++) weights[i] = Math.min(1, (HUBER * spread) / Math.max(1e-12, Math.abs(left[i]!)));
    fitted = { coefficients, errors: inverse.map((row, k) => spread * Math.sqrt(Math.max(0, row[k]!))) };
  }
  return fitted;
}

function products(columns: readonly Float64Array[], weights: Float64Array): number[][] {
  const matrix = columns.map(() => new Array<number>(columns.length).fill(0));
  columns.forEach((a, r) => {
    for (let c = r; c < columns.length; c++) {
      const b = columns[c]!;
      let sum = 0;
      for (let i = 0; i < weights.length; i++) sum += weights[i]! * a[i]! * b[i]!;
      matrix[r]![c] = sum;
      matrix[c]![r] = sum;
    }
  });
  return matrix;
}

function sumOf(count: number, term: (i: number) => number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) sum += term(i);
  return sum;
}

/** Gauss-Jordan elimination with the largest pivot; null for a singular matrix. */
function inverted(matrix: readonly (readonly number[])[]): number[][] | null {
  const size = matrix.length;
  const rows = matrix.map((row, r) => [...row, ...row.map((_, c) => (c === r ? 1 : 0))]);
  for (let c = 0; c < size; c++) {
    let pivot = c;
    for (let r = c + 1; r < size; r++) if (Math.abs(rows[r]![c]!) > Math.abs(rows[pivot]![c]!)) pivot = r;
    [rows[c], rows[pivot]] = [rows[pivot]!, rows[c]!];
    const by = rows[c]![c]!;
    if (Math.abs(by) < 1e-9 * Math.max(1, Math.abs(matrix[0]![0]!))) return null;
    rows[c] = rows[c]!.map((v) => v / by);
    for (let r = 0; r < size; r++) {
      if (r === c) continue;
      const times = rows[r]![c]!;
      rows[r] = rows[r]!.map((v, k) => v - times * rows[c]![k]!);
    }
  }
  return rows.map((row) => row.slice(size));
}
