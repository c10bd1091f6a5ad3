import { loadEngine } from './load-engine.js';

/** Samples looked at together. */
export const FRAME = 4096;

/** Hears the pitch of a frame; null where it hears none. */
export type FrameEar = (frame: Float32Array, sampleRateHz: number, range: FrequencyRange) => FramePitch | null;

/** Where a pitch is looked for, in Hz. */
export interface FrequencyRange {
  readonly lowest: number;
  readonly highest: number;
}

/** What is heard in a frame. */
export interface FramePitch {
  readonly hz: number;
  /** 0 to 1: how periodic the frame is */
  readonly confidence: number;
}

let ear: Promise<FrameEar> | null = null;

/**
 * @returns hears frames of 4096 samples; the engine is loaded once, when it is first asked for (0.3 s, 30 MB)
 *
 * Source: P. Brossier, Automatic Annotation of Musical Audio for Interactive Applications, 2007 (YIN in the frequency
 * domain), as essentia.js implements it.
 */
export function frameEar(): Promise<FrameEar> {
  ear ??= load();
  return ear;
}

async function load(): Promise<FrameEar> {
  const engine = await loadEngine();
  return (frame, sampleRateHz, { lowest, highest }) => {
    const made: { delete(): void }[] = [];
    const kept = <T extends { delete(): void }>(vector: T): T => {
      made.push(vector);
      return vector;
    };
    try {
      const samples = kept(engine.arrayToVector(frame));
      const tapered = kept(engine.Windowing(samples, true, FRAME, 'hann', 0, false).frame);
      const spectrum = kept(engine.Spectrum(tapered, FRAME).spectrum);
      const heard = engine.PitchYinFFT(spectrum, FRAME, true, highest, lowest, sampleRateHz, 1);
      return heard.pitch > 0 ? { hz: heard.pitch, confidence: heard.pitchConfidence } : null;
    } catch (error) {
      // The engine throws bare numbers, addresses of its own, where it cannot answer.
      if (typeof error === 'number') return null;
      throw error;
    } finally {
      for (const vector of made) vector.delete();
    }
  };
}
