/**
 * @param frames in rising order
 * @param value any
 * @returns index of the first that is not below the value, their number when there is none
 *
 * Source: definition (binary search).
 */
export function lowerBound(frames: Int32Array, value: number): number {
  let low = 0;
  let high = frames.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (frames[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
