import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/base/index.js';
import { decodeWav, refuseOverAnHour } from '../../src/decode/index.js';
import { openSound } from '../../src/decode/readers/open-sound.js';

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

  // Apple, Audio Interchange File Format 1.3: FORM, then COMM (channels, frames, bits, the rate as an 80 bit number), then SSND
  // behind an offset and a block size of 4 bytes each. 44,100 frames of 4 bytes a second: 3600 s are 635,040,000 bytes.
  const HOUR_OF_AIFF = 635_040_000;
  function aiffHead(dataBytes: number, form = 'AIFF', compression: readonly number[] = []): Uint8Array {
    const size = 18 + compression.length;
    const view = new DataView(new ArrayBuffer(12 + 8 + size + 16));
    const tag = (at: number, text: string): void => {
      for (const [i, letter] of [...text].entries()) view.setUint8(at + i, letter.charCodeAt(0));
    };
    tag(0, 'FORM');
    tag(8, `${form}COMM`);
    view.setUint32(16, size);
    view.setUint16(20, 2);
    view.setUint16(26, 16);
    // 44,100 is 44,100/32,768 times 2 to the 15th: exponent 16383 + 15, and 44,100 shifted to the first of 64 bits
    view.setUint16(28, 16398);
    view.setUint32(30, 44_100 * 2 ** 16);
    new Uint8Array(view.buffer).set(compression, 38);
    tag(20 + size, 'SSND');
    view.setUint32(24 + size, dataBytes + 8);
    return new Uint8Array(view.buffer);
  }
  const refused = (minutes: number) =>
    expect.objectContaining({ fault: { code: 'recording-too-long', facts: { minutes } } });

  it('is refused by the first bytes of an AIFF file, which must have the bytes for it', () => {
    expect(() => refuseOverAnHour(aiffHead(HOUR_OF_AIFF), HOUR_OF_AIFF + 54)).not.toThrow();
    expect(() => refuseOverAnHour(aiffHead(HOUR_OF_AIFF + 176), HOUR_OF_AIFF + 54 + 176)).toThrow(refused(60));
    expect(() => refuseOverAnHour(aiffHead(1.5 * HOUR_OF_AIFF), 1.5 * HOUR_OF_AIFF + 54)).toThrow(refused(90));
    expect(() => refuseOverAnHour(aiffHead(1.5 * HOUR_OF_AIFF), 10_000_000)).not.toThrow();
    expect(() => refuseOverAnHour(aiffHead(10_000_000), 1.5 * HOUR_OF_AIFF)).not.toThrow();
  });

  it('is refused in AIFF-C by the bytes of its coding, and left to the reading where that has no name', () => {
    const coding = (name: string) => [...new TextEncoder().encode(name), 0, 0];
    // one byte a sample: half of the bytes are an hour
    const half = HOUR_OF_AIFF / 2;
    expect(() => refuseOverAnHour(aiffHead(half + 89, 'AIFC', coding('ulaw')), half + 149)).toThrow(refused(60));
    expect(() => refuseOverAnHour(aiffHead(half + 89, 'AIFC', coding('sowt')), half + 149)).not.toThrow();
    expect(() => refuseOverAnHour(aiffHead(2e9, 'AIFC', coding('QDM2')), 2e9)).not.toThrow();
    for (const [at, value] of [
      [20, 0],
      [28, 0],
    ] as const) {
      const senseless = aiffHead(2e9);
      new DataView(senseless.buffer).setUint16(at, value);
      expect(() => refuseOverAnHour(senseless, 2e9)).not.toThrow();
    }
  });

  // RFC 4867, table 1 and 5.3: a packet of 20 ms is no more than 32 bytes of AMR and 61 of AMR-WB, behind 6 and 9 of a mark.
  it.each([
    ['#!AMR\n', 6 + 180_000 * 32],
    ['#!AMR-WB\n', 9 + 180_000 * 61],
  ])('is refused by the size of an AMR file, whatever its packets are: %j', (mark, hour) => {
    const bytes = new TextEncoder().encode(mark);
    expect(() => refuseOverAnHour(bytes, hour)).not.toThrow();
    expect(() => refuseOverAnHour(bytes, hour + 1)).toThrow(refused(60));
    expect(() => refuseOverAnHour(bytes, 2 * hour)).toThrow(refused(120));
    expect(() => refuseOverAnHour(bytes, bytes.length)).not.toThrow();
  });
});

// RFC 4867, 5.3: mode 0 of AMR takes 13 bytes, and one without data (15) a single one. An hour is 180,000 packets.
describe('an AMR file of small packets', () => {
  const amr = (packets: number, size: number, header: number): Uint8Array => {
    const bytes = new Uint8Array(6 + packets * size);
    bytes.set(new TextEncoder().encode('#!AMR\n'));
    for (let at = 6; at < bytes.length; at += size) bytes[at] = header;
    return bytes;
  };

  it.each([
    [13, 0x04],
    [1, 0x7c],
  ])('of %d bytes is known to be longer than an hour before it is decoded', async (size, header) => {
    await expect(openSound(amr(180_001, size, header))).rejects.toThrow(
      expect.objectContaining({ fault: { code: 'recording-too-long', facts: { minutes: 60 } } }),
    );
    await expect(openSound(amr(180_000, size, header))).resolves.toMatchObject({ codec: 'amr' });
  });
});
