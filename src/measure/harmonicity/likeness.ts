/** The lag is looked for so far around the one that is expected: 17 cents. */
const AROUND = 0.01;
/** Between samples the correlation is read with so many on each side. */
const SIDE = 16;
/** Parts of what is left to search that are thrown away, by the golden section. */
const STEPS = 20;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** How like a stretch of sound is to what comes later. */
export interface Likeness {
  /** normalised, at most 1 */
  readonly correlation: number;
  /** mean square of the stretch */
  readonly power: number;
}

/**
 * @param signal samples, from 16 before the stretch to 18 after what it is compared with
 * @param at where the stretch begins
 * @param length of the stretch in samples
 * @param lag how much later it is expected to come again, in samples
 * @returns the best normalised correlation within 17 cents of that lag, the stretch weighted by a Hann window
 *
 * Source: Boersma 1993, equations 18 to 24: a maximum between samples, read with sin x / x. Differs: under a Blackman
 * window, which leaves less ripple (Harris 1978).
 */
export function likeness(signal: Float64Array, at: number, length: number, lag: number): Likeness {
  const [low, high] = [lag * (1 - AROUND), lag * (1 + AROUND)];
  const start = Math.floor(low) - SIDE;
  const end = Math.ceil(high) + SIDE;
  const weighted = signal.subarray(at, at + length).map((value, i) => value * hann(i, length));
  const products = new Float64Array(end - start + 1);
  for (let k = 0; k < products.length; k++) {
    const shift = at + start + k;
    let product = 0;
    for (let i = 0; i < length; i++) product += weighted[i]! * signal[shift + i]!;
    products[k] = product;
  }
  const own = energyAt(signal, at, length);
  // under a window the energy changes evenly from lag to lag
  const [first, last] = [Math.floor(low), Math.ceil(high)];
  const [atFirst, atLast] = [energyAt(signal, at + first, length), energyAt(signal, at + last, length)];
  const correlation = (shift: number): number => {
    const energy = atFirst + ((atLast - atFirst) * (shift - first)) / (last - first);
    return between(products, shift - start) / Math.sqrt(own * energy + 1e-30);
  };
  return { correlation: Math.min(1, highest(correlation, low, high)), power: (2 * own) / length };
}

function hann(i: number, length: number): number {
  return 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / length);
}

/** Weighted sum of squares. */
function energyAt(signal: Float64Array, from: number, length: number): number {
  let sum = 0;
  for (let i = 0; i < length; i++) sum += hann(i, length) * signal[from + i]! ** 2;
  return sum;
}

/** A value between samples. */
function between(values: Float64Array, at: number): number {
  const base = Math.floor(at);
  const part = at - base;
  if (part < 1e-9) return values[base]!;
  const sine = Math.sin(Math.PI * part) / Math.PI;
  let sum = 0;
  for (let k = Math.max(0, base - SIDE + 1); k <= Math.min(values.length - 1, base + SIDE); k++) {
    const away = at - k;
    const sign = (base - k) % 2 === 0 ? 1 : -1;
    const turn = (Math.PI * away) / SIDE;
    sum += values[k]! * ((sign * sine) / away) * (0.42 + 0.5 * Math.cos(turn) + 0.08 * Math.cos(2 * turn));
  }
  return sum;
}

/** Highest value of a function that has one hill between two places. Source: golden section search, Kiefer 1953. */
function highest(of: (at: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [c, d] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
  let [atC, atD] = [of(c), of(d)];
  for (let step = 0; step < STEPS; step++) {
    if (atC > atD) {
      [b, d, atD] = [d, c, atC];
      c = b - GOLDEN * (b - a);
      atC = of(c);
    } else {
      [a, c, atC] = [c, d, atD];
      d = a + GOLDEN * (b - a);
      atD = of(d);
    }
  }
  return Math.max(atC, atD);
}
