import type { FixedLimits } from '../types.js';

/** A machine that is busy with other things may take this long to start a worker and read a take. */
const LEAST_SECONDS = 90;
/** Listening takes a small part of real time, even on an old machine; a page takes a second or two. */
const SECONDS_A_TAKE_SECOND = 4;
const LEAST_HEAP_MB = 512;
/** Heap and buffers grow with the length of a take; a megabyte of file is at least 3 s of sound. */
const HEAP_MB_A_FILE_MB = 8;
const BUFFER_MB_A_FILE_MB = 16;
const LEAST_BUFFER_MB = 512;

/** How long a take may be worked on, and how much memory it may use. */
export interface TakeLimits {
  /** before it is known how long the take is */
  readonly firstSeconds: number;
  /** of the engine's heap, in MB */
  readonly heapMb: number;
  /** of heap and buffers together, in MB */
  readonly totalMb: number;
}

/**
 * @param fileBytes size of the take's file
 * @param fixed bounds set by the user
 * @returns the bounds on its review; heaps come in powers of two, so that a worker serves many takes
 *
 * Working values.
 */
export function takeLimits(fileBytes: number, fixed: FixedLimits): TakeLimits {
  const fileMb = fileBytes / 2 ** 20;
  const heapMb = fixed.megabytes ?? 2 ** Math.ceil(Math.log2(LEAST_HEAP_MB + HEAP_MB_A_FILE_MB * fileMb));
  const totalMb = fixed.megabytes ?? heapMb + LEAST_BUFFER_MB + BUFFER_MB_A_FILE_MB * fileMb;
  return { firstSeconds: fixed.seconds ?? LEAST_SECONDS, heapMb, totalMb };
}

/**
 * @param takeSeconds how long the take is
 * @param etudes how many études it is held against
 * @param fixed bounds set by the user
 * @returns seconds it may be worked on from the beginning
 *
 * Working values.
 */
export function secondsFor(takeSeconds: number, etudes: number, fixed: FixedLimits): number {
  return fixed.seconds ?? LEAST_SECONDS + SECONDS_A_TAKE_SECOND * takeSeconds * etudes;
}
