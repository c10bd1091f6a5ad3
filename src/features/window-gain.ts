/**
 * @param window taper of a frame
 * @param length how many values are wanted
 * @returns 1 / autocorrelation of the window in half lags, with value 1 at lag 0
 *
 * Source: Boersma 1993.
 */
export function windowGain(window: Float64Array, length: number): Float64Array {
  const gain = new Float64Array(length);
  for (let t = 0; t < length; t++) {
    const shift = t >> 1;
    const between = t / 2 - shift;
    let sum = 0;
    for (let i = 0; i + shift + 1 < window.length; i++) {
      sum += window[i]! * (window[i + shift]! * (1 - between) + window[i + shift + 1]! * between);
    }
    gain[t] = sum;
  }
  return gain.map((g) => gain[0]! / g);
}
