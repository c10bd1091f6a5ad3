/**
 * Inner loops that work on four numbers at a time, compiled from AssemblyScript to WebAssembly: Fourier transforms, what stands
 * around them, filters and levels. Knows numbers alone: what they mean is told by the rooms that ask.
 *
 * Conventions: single precision; an array is handed over by its byteOffset in the memory opened with the loops; a vector is four
 * numbers, each lane of which belongs to a frame of its own; complex numbers are two vectors, real parts first. The same
 * numbers give the same bytes on every machine (WebAssembly's vectors are exact; its relaxed ones are not used).
 */
export { type FourfoldTransform, fourfoldTransform, transformSize } from './fourfold-transform.js';
export { keptFor } from './kept-for.js';
export { type Loops, openLoops, wholeNumbers } from './open-loops.js';
