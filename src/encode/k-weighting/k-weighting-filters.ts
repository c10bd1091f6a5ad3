/** One section of a filter of second order; the weight of what comes out itself is 1. */
export interface Biquad {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
}

/**
 * The two filters of the standard are printed for 48 kHz alone. Taken back to the frequency, gain and quality they were made
 * from, they can be made for any rate. Source: ITU-R BS.1770-5, annex 1, tables 1 and 2, solved for these by the bilinear
 * transform; at 48 kHz they give the printed coefficients to eight places.
 */
const SHELF = {
  hz: 1681.974450955533,
  gainDb: 3.999843853973347,
  quality: 0.7071752369554196,
  middle: 0.4996667741545416,
};
const HIGH_PASS = { hz: 38.13547087602444, quality: 0.5003270373238773 };

/**
 * @param rateHz of the samples
 * @returns the filters of the K weighting, in the order in which they follow each other: what a head adds at high
 * frequencies, and what the ear leaves out at low ones
 */
export function kWeightingFilters(rateHz: number): readonly [Biquad, Biquad] {
  return [shelf(rateHz), highPass(rateHz)];
}

function shelf(rateHz: number): Biquad {
  const { hz, gainDb, quality, middle } = SHELF;
  const k = Math.tan((Math.PI * hz) / rateHz);
  const high = 10 ** (gainDb / 20);
  const band = high ** middle;
  const a0 = 1 + k / quality + k * k;
  return {
    b0: (high + (band * k) / quality + k * k) / a0,
    b1: (2 * (k * k - high)) / a0,
    b2: (high - (band * k) / quality + k * k) / a0,
    ...poles(k, quality, a0),
  };
}

function highPass(rateHz: number): Biquad {
  const { hz, quality } = HIGH_PASS;
  const k = Math.tan((Math.PI * hz) / rateHz);
  return { b0: 1, b1: -2, b2: 1, ...poles(k, quality, 1 + k / quality + k * k) };
}

function poles(k: number, quality: number, a0: number): Pick<Biquad, 'a1' | 'a2'> {
  return { a1: (2 * (k * k - 1)) / a0, a2: (1 - k / quality + k * k) / a0 };
}
