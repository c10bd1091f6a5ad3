/** The part of essentia.js that is used here; the package's own types do not describe its door. */
declare module 'essentia.js' {
  interface Vector {
    delete(): void;
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
  }
  const door: { readonly Essentia: typeof Essentia; readonly EssentiaWASM: unknown };
  export default door;
}
