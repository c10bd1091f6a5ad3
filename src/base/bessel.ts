/**
 * Modified Bessel function of the first kind, order 0: the shape of Kaiser's window.
 *
 * @param x any
 * @returns its value, 1 at 0
 *
 * Source: its power series, Abramowitz & Stegun 9.6.12.
 */
export function besselI0(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > 1e-12 * sum; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}
