/** Spectral bands an octave for the change function. */
const BANDS_AN_OCTAVE = 3;
/** Frames between the two spectra whose difference is the change. */
const CHANGE_SPAN = 2;

/**
 * @param firstBin lowest bin of the lowest band
 * @param lastBin highest bin of the highest band
 * @returns first bin of each band and, at the end, the bin after the last; low bands may be empty
 */
export function bandEdges(firstBin: number, lastBin: number): Int32Array {
  const bandOf = (bin: number): number => Math.floor(BANDS_AN_OCTAVE * Math.log2(bin / firstBin));
  const edges = new Int32Array(bandOf(lastBin) + 2).fill(lastBin + 1);
  for (let bin = lastBin; bin >= firstBin; bin--) edges.fill(bin, 0, bandOf(bin) + 1);
  return edges;
}

/**
 * @param bandPower power in each band, frame-major; the floor is added to it
 * @param bands bands a frame
 * @param frames number of frames
 * @returns strength of spectral change at each frame, mean over the bands of the rise in log power
 *
 * Source: half-wave rectified difference of log powers, as in spectral-flux onset detection (Bello et al. 2005).
 * Differs: bands instead of bins, so vibrato moves it less.
 */
export function spectralChange(bandPower: Float32Array, bands: number, frames: number): Float32Array {
  let strongest = 0;
  for (let i = 0; i < bandPower.length; i++) strongest = Math.max(strongest, bandPower[i]!);
  const floor = 1e-5 * strongest + 1e-20;
  for (let i = 0; i < bandPower.length; i++) bandPower[i] = bandPower[i]! + floor;
  const change = new Float32Array(frames);
  const back = CHANGE_SPAN * bands;
  for (let f = CHANGE_SPAN; f < frames; f++) {
    // the sum of logarithms is the logarithm of the product, which the floor keeps far from the largest number
    let product = 1;
    for (let i = f * bands, end = i + bands; i < end; i++) {
      const ratio = bandPower[i]! / bandPower[i - back]!;
      if (ratio > 1) product *= ratio;
    }
    change[f] = Math.log10(product) / bands;
  }
  return change;
}
