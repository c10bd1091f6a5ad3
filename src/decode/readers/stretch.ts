/** A stretch of decoded sound, read channel by channel and bit by bit. */
export interface Stretch {
  readonly channels: number;
  readonly frames: number;
  /** Fills `out` with the samples of a channel from a frame on; the caller stays within `frames`. Full scale = ±1. */
  readonly read: (channel: number, fromFrame: number, out: Float32Array) => void;
}

/** Sound as it comes out of a decoder, in order. */
export interface Sound {
  /** short name, as results tell it */
  readonly codec: string;
  readonly sampleRateHz: number;
  /** seconds the file says it holds; left out or null where it does not */
  readonly announcedSeconds?: number | null;
  /** told at the end whether the file went on in a way that could not be followed */
  readonly brokenOff?: () => boolean;
  /** told at the end where silence stands for what was damaged, in seconds of the sound; left out where it never does */
  readonly lostSeconds?: () => readonly number[];
  /** as many channels in each as in the first, or what can be told of them */
  readonly stretches: AsyncIterable<Stretch>;
}

/**
 * @param channels samples of each channel, equally many, at least one channel
 * @returns the same as a stretch
 */
export function stretchOf(channels: readonly Float32Array[]): Stretch {
  return {
    channels: channels.length,
    frames: channels[0]?.length ?? 0,
    read: (channel, fromFrame, out) => {
      const samples = channels[channel] as Float32Array;
      out.set(samples.subarray(fromFrame, fromFrame + out.length));
    },
  };
}

/**
 * @param stretch whatever was decoded
 * @param from first frame that is wanted
 * @param to frame after the last; what lies beyond the stretch is left out
 * @returns that part of it
 */
export function cut(stretch: Stretch, from: number, to: number): Stretch {
  const end = Math.max(0, Math.min(to, stretch.frames));
  const begin = Math.max(0, Math.min(from, end));
  return {
    channels: stretch.channels,
    frames: end - begin,
    read: (channel, fromFrame, out) => stretch.read(channel, begin + fromFrame, out),
  };
}
