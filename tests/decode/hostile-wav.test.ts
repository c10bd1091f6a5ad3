import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/base/index.js';
import { decodeWav, refuseOverAnHour } from '../../src/decode/index.js';

/** RIFF and WAVE. Source: Microsoft & IBM, Multimedia Programming Interface and Data Specifications 1.0 (1991). */
function head(sampleRateHz: number, channels: number, bits: number, dataBytes: number): Uint8Array {
  const view = new DataView(new ArrayBuffer(44));
  const tag = (at: number, text: string): void => {
    for (const [i, letter] of [...text].entries()) view.setUint8(at + i, letter.charCodeAt(0));
  };
  const frameBytes = (channels * bits) / 8;
  tag(0, 'RIFF');
  view.setUint32(4, 36 + dataBytes, true);
  tag(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, channels, true);
  view.setUint32(24, sampleRateHz, true);
  view.setUint32(28, sampleRateHz * frameBytes, true);
  view.setUint16(32, frameBytes, true);
  view.setUint16(34, bits, true);
  tag(36, 'data');
  view.setUint32(40, dataBytes, true);
  return new Uint8Array(view.buffer);
}

describe('a file of nothing but empty chunks of audio', () => {
  it('is walked once', () => {
    const bytes = new Uint8Array(36 + 8 * 100_000);
    bytes.set(head(48_000, 1, 16, 0).subarray(0, 36));
    for (let at = 36; at < bytes.length; at += 8) bytes.set([0x64, 0x61, 0x74, 0x61], at);
    const began = performance.now();
    expect(() => decodeWav(bytes)).toThrow(InputError);
    expect(performance.now() - began).toBeLessThan(2000);
  });
});

describe('a recording of more than an hour', () => {
  // 48,000 frames of 4 bytes a second: 95.5 minutes are 1,100 MB.
  it('is refused by its first bytes', () => {
    const long = head(48_000, 2, 16, 1.1e9);
    expect(() => refuseOverAnHour(long, 1.1e9 + 44)).toThrow(
      expect.objectContaining({ fault: { code: 'recording-too-long', facts: { minutes: 95 } } }),
    );
  });

  it('is not what a small file only says it is, nor what is no WAV file', () => {
    expect(() => refuseOverAnHour(head(48_000, 2, 16, 1.1e9), 10_000_000)).not.toThrow();
    expect(() => refuseOverAnHour(head(48_000, 2, 16, 3600 * 192_000), 3600 * 192_000 + 44)).not.toThrow();
    expect(() => refuseOverAnHour(new TextEncoder().encode('fLaC'), 2e9)).not.toThrow();
    expect(() => refuseOverAnHour(new Uint8Array(), 0)).not.toThrow();
  });
});
