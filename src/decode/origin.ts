import { measureBandwidth } from './bandwidth.js';
import type { Origin, Samples } from './types.js';

/** Codings that give back what went in. */
const LOSSLESS = new Set(['flac', 'alac', 'pcm']);
const SPEECH = new Set(['amr', 'amr-wb']);

/** What is known of a file whose sound was decoded apart. */
export interface OriginFacts {
  readonly container: string;
  readonly codec: string;
  readonly fileBytes: number;
  readonly sampleRateHz: number;
}

/**
 * @param facts of the file
 * @param samples its sound, mono
 * @returns what the recording was made and kept as
 *
 * Source: definition; the spread of onsets as measured by tests/outside/codecs.test.ts.
 */
export function originOf({ container, codec, fileBytes, sampleRateHz }: OriginFacts, samples: Samples): Origin {
  return {
    container,
    codec,
    lossy: !LOSSLESS.has(codec),
    speech: SPEECH.has(codec),
    bitsASecond: Math.round((fileBytes * 8 * sampleRateHz) / samples.length),
    bandwidthHz: measureBandwidth(samples, sampleRateHz),
    onsetSpreadSeconds: 0,
  };
}
