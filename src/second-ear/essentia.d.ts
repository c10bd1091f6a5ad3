/** The part of essentia.js that is used here; the package's own types do not describe its door. */
declare module 'essentia.js' {
  interface Vector {
    delete(): void;
    size(): number;
  }
  class Essentia {
    constructor(engine: unknown);
    arrayToVector(samples: Float32Array): Vector;
    Windowing(
      frame: Vector,
      normalized: boolean,
      size: number,
      type: 'hann',
      zeroPadding: number,
      zeroPhase: boolean,
    ): { readonly frame: Vector };
    Spectrum(frame: Vector, size: number): { readonly spectrum: Vector };
    PitchYinFFT(
      spectrum: Vector,
      frameSize: number,
      interpolate: boolean,
      maxFrequency: number,
      minFrequency: number,
      sampleRate: number,
      tolerance: number,
    ): { readonly pitch: number; readonly pitchConfidence: number };
    SpectralPeaks(
      spectrum: Vector,
      magnitudeThreshold: number,
      maxFrequency: number,
      maxPeaks: number,
      minFrequency: number,
      orderBy: 'frequency',
      sampleRate: number,
    ): { readonly frequencies: Vector; readonly magnitudes: Vector };
    HarmonicPeaks(
      frequencies: Vector,
      magnitudes: Vector,
      pitch: number,
      maxHarmonics: number,
      tolerance: number,
    ): { readonly harmonicFrequencies: Vector; readonly harmonicMagnitudes: Vector };
    Tristimulus(frequencies: Vector, magnitudes: Vector): { readonly tristimulus: Vector };
    vectorToArray(vector: Vector): Float32Array;
  }
  export type Engine = Essentia;
  const door: { readonly Essentia: typeof Essentia; readonly EssentiaWASM: unknown };
  export default door;
}
