import type { Take } from '../decode/index.js';
import { atRate } from './at-rate.js';
import { KWeightedPower } from './k-weighting/k-weighted-power.js';
import { OpusPackets } from './opus/opus-packets.js';
import { webmFile } from './webm/webm-file.js';

/** Enough for every wind instrument's tone: what is above 12 kHz is air. */
const RATE_HZ = 24_000;

/** A recording as a file to be heard. */
export interface EncodedSound {
  /** Opus in WebM, mono, about 0.5 MB a minute */
  readonly bytes: Uint8Array;
  readonly durationSeconds: number;
  /**
   * mean square after the K weighting of ITU-R BS.1770, of stretches of 0.1 s from the first sample on; the last one may be
   * shorter
   */
  readonly kWeightedPower: readonly number[];
}

/**
 * Compresses a recording. Its levels stay what they are.
 *
 * @param take the recording
 * @returns the file, and the loudness of what can be heard in it
 */
export function encodeSound({ samples, sampleRateHz }: Pick<Take, 'samples' | 'sampleRateHz'>): EncodedSound {
  const packets = new OpusPackets(RATE_HZ);
  const loudness = new KWeightedPower(RATE_HZ);
  try {
    for (const block of atRate(samples, Math.round(sampleRateHz), RATE_HZ)) {
      loudness.add(block);
      packets.add(block);
    }
    return {
      bytes: webmFile(packets.end()),
      durationSeconds: samples.length / sampleRateHz,
      kWeightedPower: loudness.end(),
    };
  } finally {
    packets.free();
  }
}
