/** Gives the samples of one channel, piece by piece. */
export interface ChannelSource {
  readonly channels: number;
  readonly frames: number;
  /** whether there may be samples that are no number; whole numbers cannot be damaged in a way that shows */
  readonly mayBeDamaged: boolean;
  /**
   * Fills `out` with the samples of a channel from a frame on; the caller stays within `frames`.
   * Returns how many samples were no number or absurdly large and were set to 0.
   */
  readonly read: (channel: number, fromFrame: number, out: Float32Array) => number;
}
