/** How a gain may follow what is played. */
export interface GainKind {
  /** true for one that knows what is to come, as programs that level a finished recording do */
  readonly looksAhead: boolean;
  readonly seconds: number;
}

/** Width of the window in which a gain that looks ahead is cut off, in its own standard deviations. */
const REACH = 3;

/**
 * Where a gain of this kind has got to at each note.
 *
 * @param onsets seconds, rising
 * @param plan dB a note, as written
 * @param kind of the gain
 * @returns dB a note: the plan as a moving average in time sees it in the middle of the note's first second
 *
 * Source: one-pole smoothing, as automatic gain works; a Gauss window for one that looks ahead.
 */
export function planCourse(onsets: Float64Array, plan: Float64Array, kind: GainKind): Float64Array {
  const course = new Float64Array(onsets.length);
  const endOf = (i: number) => onsets[i + 1] ?? onsets[i]! + 1;
  const cumulative = kind.looksAhead ? normalShare : pastShare;
  for (let i = 0; i < onsets.length; i++) {
    const at = onsets[i]! + Math.min(1, endOf(i) - onsets[i]!) / 2;
    const reach = (kind.looksAhead ? REACH : 2 * REACH) * kind.seconds;
    let sum = 0;
    let whole = 0;
    let from = i;
    while (from > 0 && onsets[from]! > at - reach) from--;
    for (let k = from; k < onsets.length && onsets[k]! < at + reach; k++) {
      const share = cumulative((endOf(k) - at) / kind.seconds) - cumulative((onsets[k]! - at) / kind.seconds);
      sum += share * plan[k]!;
      whole += share;
    }
    course[i] = whole > 0 ? sum / whole : plan[i]!;
  }
  return course;
}

/** Share of a one-pole average that lies before a moment, in time constants from now; nothing lies ahead. */
function pastShare(x: number): number {
  return x >= 0 ? 1 : Math.exp(x);
}

/** Share of a normal distribution below x. Source: logistic approximation, good to 0.01 (Bowling et al. 2009). */
function normalShare(x: number): number {
  return 1 / (1 + Math.exp(-0.07056 * x ** 3 - 1.5976 * x));
}
