import type { Caution } from '../base/index.js';

/**
 * Samples that may be decoded only when they are asked for, so that a long take need not be in memory twice. An array of
 * samples is such samples, too.
 */
export interface Samples {
  readonly length: number;
  /**
   * @param from first sample, the first of all when it is left out
   * @param to sample after the last, beyond the last of all when it is left out; 0 ≤ from ≤ to ≤ length
   * @returns these samples: not to be written to, and not to be relied on once others are asked for
   */
  subarray(from?: number, to?: number): Float32Array;
}

/** A decoded recording: the mono mix and what the file said about itself. */
export interface Take {
  /** mono mix (mean of the channels that carry sound), full scale = ±1 */
  readonly samples: Samples;
  readonly sampleRateHz: number;
  /** channels in the file */
  readonly channels: number;
  /** the file holds less than its header says: the end of the playing may be missing */
  readonly breaksOff?: boolean;
  /** what is to be known of the file itself, e.g. a repaired length or an empty channel; usually nothing */
  readonly cautions: readonly Caution[];
}
