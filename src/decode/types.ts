/** A decoded recording: the mono mix and what the file said about itself. */
export interface Take {
  /** mono mix (mean of the channels that carry sound), full scale = ±1 */
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  /** channels in the file */
  readonly channels: number;
  /** the file holds less than its header says: the end of the playing may be missing */
  readonly breaksOff?: boolean;
  /** plain-word remarks on the file itself, e.g. a repaired length or an empty channel; usually none */
  readonly cautions: readonly string[];
}
