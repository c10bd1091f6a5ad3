import type { OpusSound } from './opus-packets.js';

/** Opus counts in samples of this rate, whatever went in. */
const OPUS_RATE_HZ = 48_000;

/**
 * @param sound packets of one channel
 * @returns what a decoder must know before the first packet
 *
 * Source: RFC 7845, section 5.1 (identification header).
 */
export function opusHead({ delaySeconds, sampleRateHz }: OpusSound): Uint8Array {
  const head = new Uint8Array(19);
  const view = new DataView(head.buffer);
  head.set(new TextEncoder().encode('OpusHead'));
  // version, channels, samples to leave out, rate of the input, gain, and no table of channels
  view.setUint8(8, 1);
  view.setUint8(9, 1);
  view.setUint16(10, Math.round(delaySeconds * OPUS_RATE_HZ), true);
  view.setUint32(12, sampleRateHz, true);
  view.setInt16(16, 0, true);
  view.setUint8(18, 0);
  return head;
}
