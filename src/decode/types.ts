import type { Caution, FileFormat } from '../base/index.js';

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

/** What a recording was made and kept as, where it was no WAV file. */
export interface Origin {
  /** short name: `mp4`, `matroska`, `ogg`, `flac` … */
  readonly container: FileFormat;
  /** short name: `aac`, `opus`, `mp3`, `flac`, `amr` … */
  readonly codec: string;
  /** whether the coding leaves out what it takes to be inaudible */
  readonly lossy: boolean;
  /** whether the coding is made for speech on the telephone: it keeps pitch and time, not the colour of a sound */
  readonly speech: boolean;
  /** of the whole file, film beside the sound included */
  readonly bitsASecond: number;
  /** nothing sounds above it */
  readonly bandwidthHz: number;
  /** by how much the coding itself may move an onset: 95 of 100 onsets stay within it. 0 for lossless codings */
  readonly onsetSpreadSeconds: number;
}

/** A decoded recording: the mono mix and what the file said about itself. */
export interface Take {
  /** mono: the mean of the channels, or the better one of them, as the cautions say; full scale = ±1 */
  readonly samples: Samples;
  readonly sampleRateHz: number;
  /** channels in the file */
  readonly channels: number;
  /** left out for a WAV file */
  readonly origin?: Origin;
  /** the file holds less than its header says: the end of the playing may be missing */
  readonly breaksOff?: boolean;
  /** what is to be known of the file itself, e.g. a repaired length or an empty channel; usually nothing */
  readonly cautions: readonly Caution[];
}
