/** How many pitch candidates a frame carries. */
export const CANDIDATES = 4;

/** What the ear of the program hears, frame by frame. Knows nothing of the score. */
export interface Features {
  readonly durationSeconds: number;
  /** pitch frames: the centre of frame f is at `f * pitchHopSeconds` */
  readonly pitchHopSeconds: number;
  readonly pitchFrames: number;
  /** candidate pitches as fractional MIDI numbers, frame-major, CANDIDATES a frame, best first, 0 where there is none */
  readonly candidateMidi: Float32Array;
  /** periodicity of each candidate, 0 to 1 */
  readonly candidateClarity: Float32Array;
  /** strength of spectral change at each pitch frame, ≥ 0, about 1 at a clear tongued onset */
  readonly change: Float32Array;
  /** the signal the pitch was read from: mono, low-passed and slower than the file, for looking closely at one moment */
  readonly signal: Float32Array;
  readonly signalRateHz: number;
  /** level frames: the centre of frame f is at `(f + 0.5) * levelHopSeconds`; they do not overlap */
  readonly levelHopSeconds: number;
  /** mean square of the mono mix in each level frame (full scale sine = 0.5) */
  readonly power: Float32Array;
  /** largest size of a sample in each level frame; one entry more for the samples after the last whole frame */
  readonly peak: Float32Array;
  /** level below which there is only room and recorder, dBFS */
  readonly noiseFloorDb: number;
}
