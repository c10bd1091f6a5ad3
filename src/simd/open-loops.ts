import { LOOPS_BINARY } from './loops-binary.js';

/** Where an array of the memory begins, in bytes: what the loops are told of it. */
type At = number;

/** The loops, each told in the file of `loops/` it stands in. */
export interface Loops {
  firstByThree(x: At, y: At, count: number, twiddles: At): void;
  byFour(x: At, y: At, count: number, stride: number, twiddles: At): void;
  lastByTwo(x: At, y: At, stride: number): void;
  windowFrames(samples: At, hop: number, window: At, length: number, into: At): void;
  splitPowers(spectrum: At, size: number, firstBin: number, real: At, imaginary: At, sums: At): void;
  sumBands(power: At, edges: At, bands: number, into: At): void;
  packPowers(a: At, b: At, c: At, d: At, size: number, packed: At): void;
  unpackLags(
    output: At,
    size: number,
    oddScale: At,
    lags: number,
    sums: At,
    least: number,
    into: At,
    rowBytes: number,
  ): void;
  findPeaks(lags: At, gain: At, first: number, last: number, least: number, found: At): number;
  peakMagnitudes(power: At, half: number, into: At): void;
  weighPitches(
    magnitudes: At,
    harmonics: At,
    places: number,
    pitches: number,
    least: number,
    scratch: At,
    into: At,
  ): void;
  halve(samples: At, weights: At, odds: At, into: At, count: number): void;
  filterAt(
    samples: At,
    bank: At,
    taps: number,
    phases: number,
    step: number,
    phase: number,
    into: At,
    count: number,
  ): void;
  fromInt16(from: At, count: number, into: At): void;
  fromEveryOtherInt16(from: At, count: number, into: At): void;
  frameLevels(samples: At, frames: number, hop: number, power: At, peak: At): void;
}

/** Loops, and the memory they work on. */
export interface OpenedLoops<Name extends string> {
  readonly loops: Loops;
  /** arrays of the lengths asked for, filled with zeros; each begins at a multiple of 16 bytes */
  readonly memory: Readonly<Record<Name, Float32Array>>;
}

/** Bytes of a page of WebAssembly's memory. Source: WebAssembly Core Specification 2.0, section 4.2.8. */
const PAGE_BYTES = 65_536;
/** Loops may read a few numbers beyond the end of an array; nothing comes of them. */
const SPARE_NUMBERS = 16;

let compiled: WebAssembly.Module | null = null;

/**
 * Opens the loops with memory of their own, which lives as long as they do and never grows. Opening takes a tenth of a
 * millisecond and some address space: what is done often keeps what it has opened.
 *
 * @param lengths numbers wanted in each array, by name
 * @returns the loops and the arrays
 */
export function openLoops<Name extends string>(lengths: Readonly<Record<Name, number>>): OpenedLoops<Name> {
  const places = new Map<Name, number>();
  let bytes = 0;
  for (const [name, length] of Object.entries(lengths) as [Name, number][]) {
    places.set(name, bytes);
    bytes += 16 * Math.ceil((length + SPARE_NUMBERS) / 4);
  }
  const pages = new WebAssembly.Memory({ initial: Math.ceil(bytes / PAGE_BYTES) });
  compiled ??= new WebAssembly.Module(Buffer.from(LOOPS_BINARY, 'base64'));
  const { exports } = new WebAssembly.Instance(compiled, { env: { memory: pages } });
  const memory = {} as Record<Name, Float32Array>;
  for (const [name, at] of places) memory[name] = new Float32Array(pages.buffer, at, lengths[name]);
  return { loops: exports as unknown as Loops, memory };
}

/**
 * @param numbers an array of the memory
 * @returns the same memory as whole numbers
 */
export function wholeNumbers({ buffer, byteOffset, length }: Float32Array): Int32Array {
  return new Int32Array(buffer, byteOffset, length);
}
