import { type Biquad, kWeightingFilters } from './k-weighting-filters.js';

/** Four neighbours make a block of 400 ms, and such blocks begin every 100 ms. Source: ITU-R BS.1770-5, annex 1. */
const STRETCH_SECONDS = 0.1;

/** Measures the K-weighted power of a mono sound as it comes. */
export class KWeightedPower {
  readonly #filters: readonly [Biquad, Biquad];
  readonly #stretch: number;
  readonly #powers: number[] = [];
  /** what both filters remember: two numbers each */
  readonly #memory = new Float64Array(4);
  #sum = 0;
  #count = 0;

  /** @param rateHz samples a second; a tenth of it is a whole number */
  constructor(rateHz: number) {
    this.#filters = kWeightingFilters(rateHz);
    this.#stretch = Math.round(STRETCH_SECONDS * rateHz);
  }

  /** @param samples what comes next, full scale = ±1 */
  add(samples: Float32Array): void {
    for (let from = 0; from < samples.length; ) {
      const to = Math.min(samples.length, from + this.#stretch - this.#count);
      this.#sum += this.#energy(samples.subarray(from, to));
      this.#count += to - from;
      from = to;
      if (this.#count === this.#stretch) this.#close();
    }
  }

  /** @returns mean square of each stretch of 0.1 s, the last one as long as it is */
  end(): number[] {
    if (this.#count > 0) this.#close();
    return this.#powers;
  }

  #close(): void {
    this.#powers.push(this.#sum / this.#count);
    this.#sum = 0;
    this.#count = 0;
  }

  /** Both filters in their transposed direct form, which remembers two numbers each. */
  #energy(samples: Float32Array): number {
    const [s, h] = this.#filters;
    let [m1 = 0, m2 = 0, m3 = 0, m4 = 0] = this.#memory;
    let energy = 0;
    for (let i = 0; i < samples.length; i++) {
      const x = samples[i] as number;
      const y = s.b0 * x + m1;
      m1 = s.b1 * x - s.a1 * y + m2;
      m2 = s.b2 * x - s.a2 * y;
      const z = h.b0 * y + m3;
      m3 = h.b1 * y - h.a1 * z + m4;
      m4 = h.b2 * y - h.a2 * z;
      energy += z * z;
    }
    this.#memory.set([m1, m2, m3, m4]);
    return energy;
  }
}
