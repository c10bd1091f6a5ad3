import type { TimeStretch } from './score-axis.js';

/** Loudness of the take, frame by frame. */
export interface Loudness {
  readonly hopSeconds: number;
  /** dBFS; the centre of frame f is at `(f + 0.5) * hopSeconds`; minus infinity is allowed */
  readonly levelDb: Float32Array;
}

/** Frames are averaged over this time. Source: EBU Tech 3341, momentary loudness (the window, not the weighting). */
const WINDOW_SECONDS = 0.4;

/** Score time between two points of the curve is bridged when it is no wider than this many bins. */
const BRIDGED_BINS = 3;

/**
 * Loudness over score time: the mean power, over 400 ms each, of the frames that fall into each bin.
 *
 * @param loudness frames of the recording
 * @param stretches where the recording stands in the score
 * @param fromQuarters start of the axis
 * @param toQuarters end of the axis
 * @param bins how many bins the axis has
 * @returns dBFS a bin, NaN where nothing was played
 */
export function loudnessCurve(
  loudness: Loudness,
  stretches: readonly TimeStretch[],
  fromQuarters: number,
  toQuarters: number,
  bins: number,
): Float64Array {
  const smooth = smoothedPower(loudness);
  const power = new Float64Array(bins);
  const frames = new Float64Array(bins);
  const binsPerQuarter = bins / (toQuarters - fromQuarters);
  for (const stretch of stretches) {
    if (stretch.toQuarters < fromQuarters || stretch.fromQuarters > toQuarters) continue;
    const quartersPerSecond = (stretch.toQuarters - stretch.fromQuarters) / (stretch.toSeconds - stretch.fromSeconds);
    const first = Math.max(0, Math.ceil(stretch.fromSeconds / loudness.hopSeconds - 0.5));
    const last = Math.min(loudness.levelDb.length, Math.ceil(stretch.toSeconds / loudness.hopSeconds - 0.5));
    for (let f = first; f < last; f++) {
      const seconds = (f + 0.5) * loudness.hopSeconds;
      const quarters = stretch.fromQuarters + (seconds - stretch.fromSeconds) * quartersPerSecond;
      const bin = Math.floor((quarters - fromQuarters) * binsPerQuarter);
      if (bin < 0 || bin >= bins) continue;
      power[bin] = (power[bin] as number) + (smooth[f] as number);
      frames[bin] = (frames[bin] as number) + 1;
    }
  }
  return bridged(
    power.map((sum, bin) => 10 * Math.log10(Math.max(sum, 1e-12) / (frames[bin] as number))).map(finiteOrNaN),
  );
}

const finiteOrNaN = (value: number) => (Number.isFinite(value) ? value : Number.NaN);

/** A page asks for a curve a row of bars; all are cut from one. */
const known = new WeakMap<Loudness, Float64Array>();

function smoothedPower(loudness: Loudness): Float64Array {
  const smooth = known.get(loudness) ?? meanPower(loudness);
  known.set(loudness, smooth);
  return smooth;
}

/** Mean power around each frame, shorter at the ends of the recording. */
function meanPower({ levelDb, hopSeconds }: Loudness): Float64Array {
  const sums = new Float64Array(levelDb.length + 1);
  for (let f = 0; f < levelDb.length; f++) sums[f + 1] = (sums[f] as number) + 10 ** ((levelDb[f] as number) / 10);
  const reach = Math.max(0, Math.floor(WINDOW_SECONDS / hopSeconds / 2));
  return Float64Array.from(levelDb, (_, f) => {
    const from = Math.max(0, f - reach);
    const to = Math.min(levelDb.length, f + reach + 1);
    return ((sums[to] as number) - (sums[from] as number)) / (to - from);
  });
}

/** Fills short gaps, which only mean that the bins are finer than the frames. */
function bridged(levels: Float64Array): Float64Array {
  const filled = levels.slice();
  let last = -1;
  for (let bin = 0; bin < levels.length; bin++) {
    if (Number.isNaN(levels[bin] as number)) continue;
    const gap = bin - last - 1;
    if (last >= 0 && gap > 0 && gap <= BRIDGED_BINS) {
      const from = levels[last] as number;
      const step = ((levels[bin] as number) - from) / (gap + 1);
      for (let i = 1; i <= gap; i++) filled[last + i] = from + step * i;
    }
    last = bin;
  }
  return filled;
}
