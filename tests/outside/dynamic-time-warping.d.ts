/** The package brings no types. */
declare module 'dynamic-time-warping' {
  export default class DynamicTimeWarping<A, B> {
    constructor(first: readonly A[], second: readonly B[], distance: (a: A, b: B) => number);
    /** sum of the distances along the best path */
    getDistance(): number;
    /** pairs of indexes, one series after the other, from the beginning */
    getPath(): [number, number][];
  }
}
