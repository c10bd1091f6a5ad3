import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/base/index.js';
import type { Take } from '../../src/decode/index.js';
import { decodeWav, encodeWav } from '../../src/decode/index.js';
import { mixToMono } from '../../src/decode/mix-to-mono.js';
import { cautionSaid } from '../../src/words/index.js';
import { saidOf } from '../helpers/in-words.js';
import { ascii, chunk, extensible, formatChunk, ramp16, riff, u16, u32 } from './wav-bytes.js';

const FRAMES = 1000;

function refusal(bytes: Uint8Array): { code: string; message: string } {
  try {
    decodeWav(bytes);
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    const { code, message } = saidOf(error) as InputError;
    expect(message).not.toContain('\n');
    return { code, message };
  }
  throw new Error('the file was read');
}

/** What a reader is told of a file, in English. */
function cautionsOf({ cautions }: Pick<Take, 'cautions'>): string[] {
  return cautions.map((caution) => cautionSaid('en', caution));
}

function float32Bytes(values: number[]): number[] {
  return [...new Uint8Array(Float32Array.from(values).buffer)];
}

/** `head` first, then zeros up to the length a take needs. */
function padded(head: number[], length: number): number[] {
  return [...head, ...Array<number>(length - head.length).fill(0)];
}

// Source of the codings: Microsoft & IBM, Multimedia Programming Interface and Data Specifications 1.0 (1991), "Data
// Format of the Samples": 1 to 8 bit unsigned with the midpoint at 128, 9 bit and more signed, little-endian.
describe('codings', () => {
  it('reads 8 bit as unsigned around 128', () => {
    const data = [128, 0, 255, 192, ...Array<number>(FRAMES - 4).fill(128)];
    const take = decodeWav(riff([formatChunk({ bits: 8 }), chunk('data', data)]));
    expect([...take.samples.subarray(0, 5)]).toEqual([0, -1, 127 / 128, 0.5, 0]);
    expect(take).toMatchObject({ sampleRateHz: 8000, channels: 1, cautions: [] });
  });

  it('reads 16 bit as two’s complement, low byte first', () => {
    const data = padded([0x00, 0x80, 0xff, 0x7f, 0x00, 0x40, 0xff, 0xff], FRAMES * 2);
    const take = decodeWav(riff([formatChunk(), chunk('data', data)]));
    expect([...take.samples.subarray(0, 4)]).toEqual([-1, 32767 / 32768, 0.5, -1 / 32768]);
  });

  it('reads 24 bit', () => {
    const data = padded([0x00, 0x00, 0x80, 0xff, 0xff, 0x7f, 0x00, 0x00, 0x40, 0xff, 0xff, 0xff], FRAMES * 3);
    const take = decodeWav(riff([formatChunk({ bits: 24 }), chunk('data', data)]));
    expect([...take.samples.subarray(0, 4)]).toEqual([-1, 8388607 / 8388608, 0.5, -1 / 8388608]);
  });

  it('reads 20 bit in three bytes, left-justified', () => {
    const data = padded([0x00, 0x00, 0x40, 0x00, 0x00, 0xc0], FRAMES * 3);
    const take = decodeWav(riff([formatChunk({ bits: 20 }), chunk('data', data)]));
    expect([...take.samples.subarray(0, 2)]).toEqual([0.5, -0.5]);
  });

  it('reads 32 bit', () => {
    const data = padded([0x00, 0x00, 0x00, 0x80, 0x00, 0x00, 0x00, 0x40], FRAMES * 4);
    const take = decodeWav(riff([formatChunk({ bits: 32 }), chunk('data', data)]));
    expect([...take.samples.subarray(0, 2)]).toEqual([-1, 0.5]);
  });

  it('reads 32 bit float, beyond full scale too', () => {
    const data = padded(float32Bytes([0.25, -1.5, 1]), FRAMES * 4);
    const take = decodeWav(riff([formatChunk({ tag: 3, bits: 32 }), chunk('data', data)]));
    expect([...take.samples.subarray(0, 3)]).toEqual([0.25, -1.5, 1]);
  });

  it('reads 64 bit float', () => {
    const data = padded([...new Uint8Array(Float64Array.from([0.25, -0.5]).buffer)], FRAMES * 8);
    const take = decodeWav(riff([formatChunk({ tag: 3, bits: 64 }), chunk('data', data)]));
    expect([...take.samples.subarray(0, 2)]).toEqual([0.25, -0.5]);
  });

  it('replaces what is not a number in float audio and says so', () => {
    const data = padded(float32Bytes([Number.NaN, Number.POSITIVE_INFINITY, 0.5, -1e30]), FRAMES * 4);
    const take = decodeWav(riff([formatChunk({ tag: 3, bits: 32 }), chunk('data', data)]));
    expect([...take.samples.subarray(0, 4)]).toEqual([0, 0, 0.5, 0]);
    expect(cautionsOf(take)).toEqual(['3 damaged samples were replaced by silence']);
  });

  // Source: ITU-T G.711, table 2a: decoder output values 8031, 4191, 99, 33, 2 and 0 of 14 bit (here times 4 of 16
  // bit) for the codes 10000000, 10001111, 11011111, 11101111, 11111110 and 11111111; a leading 0 is the negative half.
  it('reads µ-law', () => {
    const codes = [0b10000000, 0b10001111, 0b11011111, 0b11101111, 0b11111110, 0b11111111, 0b00000000, 0b01111110];
    const take = decodeWav(riff([formatChunk({ tag: 7, bits: 8 }), chunk('data', padded(codes, FRAMES))]));
    const values = [...take.samples.subarray(0, 8)].map((sample) => (sample * 32768) / 4);
    expect(values).toEqual([8031, 4191, 99, 33, 2, 0, -8031, -2]);
  });

  // Source: ITU-T G.711, table 1a: decoder output values 4032, 2112, 66 and 1 of 13 bit (here times 8 of 16 bit), codes
  // with the even bits inverted as sent; a leading 1 is the positive half.
  it('reads A-law', () => {
    const even = 0b01010101;
    const codes = [0b11111111, 0b11110000, 0b10100000, 0b10000000, 0b01111111, 0b00000000].map((code) => code ^ even);
    const take = decodeWav(riff([formatChunk({ tag: 6, bits: 8 }), chunk('data', padded(codes, FRAMES))]));
    const values = [...take.samples.subarray(0, 6)].map((sample) => (sample * 32768) / 8);
    expect(values).toEqual([4032, 2112, 66, 1, -4032, -1]);
  });

  // Source: Microsoft, WAVEFORMATEXTENSIBLE.
  it('reads extensible PCM, 24 valid bits in four bytes, and extensible float', () => {
    const pcm = formatChunk({ tag: 0xfffe, bits: 32, extra: extensible(1, 24) });
    const fromPcm = decodeWav(riff([pcm, chunk('data', padded([0, 0, 0, 0x40], FRAMES * 4))]));
    expect(fromPcm.samples.subarray()[0]).toBe(0.5);
    const float = formatChunk({ tag: 0xfffe, bits: 32, extra: extensible(3, 32) });
    const fromFloat = decodeWav(riff([float, chunk('data', padded(float32Bytes([0.75]), FRAMES * 4))]));
    expect(fromFloat.samples.subarray()[0]).toBe(0.75);
  });
});

// Source: the same specification, RIFF: chunks in any number, each padded to an even length, unknown ones skipped.
describe('chunks', () => {
  const data = ramp16(FRAMES);

  it('skips LIST, bext, fact and unknown chunks, odd ones with their padding byte', () => {
    const others = [chunk('LIST', ascii('INFOabc')), chunk('bext', Array<number>(603).fill(1)), chunk('fact', u32(9))];
    const take = decodeWav(riff([chunk('JUNK', [1, 2, 3]), formatChunk(), ...others, chunk('data', data)]));
    expect(take.samples.length).toBe(FRAMES);
    expect(take.samples.subarray()[7]).toBe(7 / 32768);
  });

  it('finds the audio behind an odd chunk whose writer forgot the padding byte', () => {
    const unpadded = [...ascii('LIST'), ...u32(3), 1, 2, 3];
    const take = decodeWav(riff([formatChunk(), unpadded, chunk('data', data)]));
    expect(take.samples.subarray()[7]).toBe(7 / 32768);
  });

  it('takes the format after the audio', () => {
    expect(decodeWav(riff([chunk('data', data), formatChunk()])).samples.length).toBe(FRAMES);
  });

  it('leaves what follows the audio alone', () => {
    const take = decodeWav(riff([formatChunk(), chunk('data', data), chunk('LIST', ascii('INFOINAMx'))]));
    expect(take.samples.length).toBe(FRAMES);
  });

  it('reads a file that is a view into a larger buffer, at an odd offset', () => {
    const file = riff([formatChunk(), chunk('data', data)]);
    const larger = new Uint8Array(file.length + 5);
    larger.set(file, 3);
    expect(decodeWav(larger.subarray(3, 3 + file.length)).samples.subarray()[7]).toBe(7 / 32768);
  });

  // Source: EBU Tech 3306: RIFF and data sizes are FFFFFFFF, ds64 comes first and holds RIFF size, data size and sample
  // count as 64 bit numbers, low word first, and a table length.
  it.each(['RF64', 'BW64'])('reads %s with its lengths in ds64', (container) => {
    const ds64 = [...u32(4096), ...u32(0), ...u32(FRAMES * 2), ...u32(0), ...u32(FRAMES), ...u32(0), ...u32(0)];
    const trailing = chunk('LIST', ascii('INFO'));
    const open = chunk('data', data, 0xffffffff);
    const take = decodeWav(riff([chunk('ds64', ds64), formatChunk(), open, trailing], container, 0xffffffff));
    expect(take.samples.length).toBe(FRAMES);
    expect(cautionsOf(take)).toEqual([]);
  });
});

describe('lengths that are wrong', () => {
  // 0 and FFFFFFFF are what a recorder leaves that streams; 7FFFFFFF and 80000000 are written by common recorders on a
  // pipe (common practice).
  it.each([0, 0xffffffff, 0xffffffff - 36, 0x7fffffff, 0x80000000])('reads to the end when the size is %i', (size) => {
    const take = decodeWav(riff([formatChunk(), chunk('data', ramp16(FRAMES, 1), size)], 'RIFF', size));
    expect(take.samples.length).toBe(FRAMES);
    expect(cautionsOf(take)).toEqual([
      'the recorder did not write the length of the recording; it was read to the end of the file',
    ]);
  });

  it('reads an RF64 whose ds64 was never filled in', () => {
    const ds64 = chunk('ds64', Array<number>(28).fill(0));
    const take = decodeWav(riff([ds64, formatChunk(), chunk('data', ramp16(FRAMES, 1), 0xffffffff)], 'RF64'));
    expect(take.samples.length).toBe(FRAMES);
    expect(cautionsOf(take)).toHaveLength(1);
  });

  it('reads a file that breaks off as far as it goes, half a frame left out', () => {
    const whole = riff([formatChunk({ channels: 2 }), chunk('data', ramp16(16000))]);
    const take = decodeWav(whole.subarray(0, 44 + 16000 + 3));
    expect(take.samples.length).toBe(4000);
    expect(cautionsOf(take)).toEqual(['the file breaks off: it should hold 1.0 s and holds 0.5 s']);
  });

  it('takes an empty data chunk with another chunk after it as empty', () => {
    const bytes = riff([formatChunk(), chunk('data', []), chunk('LIST', Array<number>(4000).fill(65))]);
    expect(refusal(bytes)).toEqual({
      code: 'wav-damaged',
      message: 'the WAV file holds no audio; record or copy the take again',
    });
  });

  it('never believes a size the file does not bear out', () => {
    const ds64 = [...u32(0), ...u32(0x00ffffff), ...u32(0), ...u32(0x00ffffff), ...u32(0), ...u32(0), ...u32(0)];
    const huge = riff([chunk('ds64', ds64), formatChunk(), chunk('data', ramp16(FRAMES), 0xffffffff)], 'RF64');
    expect(decodeWav(huge).samples.length).toBe(FRAMES);
  });
});

describe('mono mix', () => {
  const wave = (i: number): number => Math.round(9000 * Math.sin(i * 0.3));
  const other = (i: number): number => Math.round(9000 * Math.sin(i * 0.5));
  const frames = (...channels: ((i: number) => number)[]): Uint8Array => {
    const data = Array.from({ length: 4000 }, (_, i) => channels.flatMap((channel) => u16(channel(i) & 0xffff))).flat();
    return riff([formatChunk({ channels: channels.length }), chunk('data', data)]);
  };

  it('is the mean of the channels', () => {
    const take = decodeWav(frames(wave, other));
    expect(take.channels).toBe(2);
    expect(cautionsOf(take)).toEqual([]);
    expect(take.samples.subarray()[10]).toBeCloseTo((wave(10) + other(10)) / 2 / 32768, 7);
    expect(take.samples.subarray()[3999]).toBeCloseTo((wave(3999) + other(3999)) / 2 / 32768, 7);
  });

  it('of a doubled channel is that channel', () => {
    const take = decodeWav(frames(wave, wave));
    expect(take.samples.subarray()[10]).toBe(wave(10) / 32768);
    expect(cautionsOf(take)).toEqual([]);
  });

  it('leaves out an empty channel, at zero, at a constant offset or at the noise of the last bit', () => {
    for (const empty of [() => 0, () => 700, (i: number) => i % 2]) {
      const take = decodeWav(frames(wave, empty));
      expect(take.samples.subarray()[10]).toBe(wave(10) / 32768);
      expect(cautionsOf(take)).toEqual(['the right channel is empty and was left out']);
    }
  });

  it('leaves out the empty ones of many', () => {
    const silent = (): number => 0;
    const take = decodeWav(frames(silent, wave, silent, other));
    expect(take.samples.subarray()[11]).toBeCloseTo((wave(11) + other(11)) / 2 / 32768, 7);
    expect(cautionsOf(take)).toEqual(['channel 1, channel 3 are empty and were left out']);
  });

  it('uses one channel where two cancel', () => {
    const take = decodeWav(frames((i) => -Math.round(0.8 * wave(i)), wave));
    expect(take.samples.subarray()[10]).toBe(wave(10) / 32768);
    expect(cautionsOf(take)).toEqual([
      'the channels cancel each other (one is upside down); only the right channel was used',
    ]);
  });

  it('keeps silence silent without remark on its channels', () => {
    const take = decodeWav(frames(() => 0, () => 0)); // biome-ignore format: two silent channels
    expect(cautionsOf(take)).toEqual([]);
    expect(take.samples.subarray().every((sample) => sample === 0)).toBe(true);
  });
});

describe('what is no WAV file', () => {
  it('a file of another kind', () => {
    expect(refusal(Uint8Array.from(padded(ascii('fLaC'), 64)))).toEqual({
      code: 'not-a-wav',
      message: 'this is no WAV file; save the take as WAV (16 or 24 bit PCM)',
    });
  });

  it('an empty file', () => {
    expect(refusal(new Uint8Array(0)).code).toBe('empty-file');
  });

  it('a WAV file of four bytes', () => {
    expect(refusal(Uint8Array.from(ascii('RIFF')))).toMatchObject({ code: 'wav-damaged' });
  });
});

describe('headers that cannot be read', () => {
  const data = chunk('data', ramp16(FRAMES));
  const cases: [string, string, number[]][] = [
    ['wav-damaged', 'sample rate of 0 Hz', formatChunk({ rate: 0 })],
    ['wav-unsupported', 'sample rate of 1 Hz', formatChunk({ rate: 1 })],
    ['wav-unsupported', 'sample rate of 4294967295 Hz', formatChunk({ rate: 0xffffffff })],
    ['wav-unsupported', '7999 Hz', formatChunk({ rate: 7999 })],
    ['wav-unsupported', '192001 Hz', formatChunk({ rate: 192001 })],
    ['wav-damaged', '0 channels', formatChunk({ channels: 0 })],
    ['wav-unsupported', '9 channels', formatChunk({ channels: 9 })],
    ['wav-unsupported', '65535 channels', formatChunk({ channels: 65535 })],
    ['wav-damaged', '3 bytes a frame instead of 2', formatChunk({ blockAlign: 3 })],
    ['wav-damaged', '0 bytes a frame instead of 2', formatChunk({ blockAlign: 0 })],
    ['wav-damaged', '0 bits', formatChunk({ bits: 0 })],
    ['wav-unsupported', '64 bit PCM', formatChunk({ bits: 64 })],
    ['wav-unsupported', '16 bit floating point', formatChunk({ tag: 3 })],
    ['wav-unsupported', '16 bit µ-law', formatChunk({ tag: 7 })],
    ['wav-unsupported', 'Microsoft ADPCM', formatChunk({ tag: 2, bits: 4 })],
    ['wav-unsupported', 'IMA ADPCM', formatChunk({ tag: 0x11, bits: 4 })],
    ['wav-unsupported', 'MP3', formatChunk({ tag: 0x55, bits: 0 })],
    ['wav-unsupported', 'format tag 0x1234', formatChunk({ tag: 0x1234 })],
    ['wav-damaged', 'extensible format is cut short', formatChunk({ tag: 0xfffe })],
    ['wav-unsupported', 'unknown kind', formatChunk({ tag: 0xfffe, extra: Array<number>(24).fill(7) })],
    ['wav-damaged', 'format description is cut short', chunk('fmt ', [1, 0, 1, 0])],
    ['wav-damaged', 'no fmt chunk', chunk('LIST', ascii('INFO'))],
  ];
  it.each(cases)('%s: %s', (code, part, format) => {
    const found = refusal(riff([format, data]));
    expect(found.message).toContain(part);
    expect(found.code).toBe(code);
  });

  it('without data', () => {
    expect(refusal(riff([formatChunk()])).message).toContain('no data chunk');
  });

  it('with less than a tenth of a second', () => {
    expect(refusal(riff([formatChunk(), chunk('data', ramp16(799))])).message).toContain('only 100 ms of audio');
    expect(decodeWav(riff([formatChunk(), chunk('data', ramp16(800))])).samples.length).toBe(800);
  });

  it('with more than an hour', () => {
    const header = riff([formatChunk({ bits: 8 }), chunk('data', [], 8000 * 3601)]);
    const file = new Uint8Array(header.length + 8000 * 3601);
    file.set(header);
    expect(refusal(file)).toMatchObject({ code: 'wav-unsupported' });
  });
});

describe('encodeWav', () => {
  // Source: the header of a canonical WAVE file, byte by byte, after the same specification.
  it('writes 16 bit PCM mono', () => {
    const bytes = encodeWav(Float32Array.of(0, 0.5, -1, 2), 22050);
    expect([...bytes]).toEqual([
      ...[...ascii('RIFF'), 44, 0, 0, 0, ...ascii('WAVE')],
      ...[...ascii('fmt '), 16, 0, 0, 0, 1, 0, 1, 0, 0x22, 0x56, 0, 0, 0x44, 0xac, 0, 0, 2, 0, 16, 0],
      ...[...ascii('data'), 8, 0, 0, 0, 0x00, 0x00, 0x00, 0x40, 0x00, 0x80, 0xff, 0x7f],
    ]);
  });

  it('comes back as it went, to the last bit of 16', () => {
    const samples = Float32Array.from({ length: 4000 }, (_, i) => ((i * 7919) % 65536) / 32768 - 1);
    expect(decodeWav(encodeWav(samples, 22050)).samples.subarray()).toEqual(samples);
  });
});

// Files written by SoX, an independent writer; see fixtures/ORIGINS.md. Each holds 0.2 s of a 200 Hz sine of amplitude ½.
describe('files of another writer', () => {
  const read = (name: string): Uint8Array => readFileSync(new URL(`../../fixtures/takes/${name}`, import.meta.url));
  const rms = (samples: Float32Array): number => Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);

  it.each(['8-bit', '24-bit', 'float', 'a-law', 'mu-law', '16-bit-piped'])('sine-%s.wav', (name) => {
    const take = decodeWav(read(`sine-${name}.wav`));
    expect(take.sampleRateHz).toBe(8000);
    expect(take.samples.length).toBe(1600);
    expect(rms(take.samples.subarray())).toBeCloseTo(0.5 / Math.SQRT2, 2);
    expect(take.samples.subarray()[10]).toBeCloseTo(0.5, 1);
    expect(take.samples.subarray()[30]).toBeCloseTo(-0.5, 1);
    expect(cautionsOf(take)).toHaveLength(name === '16-bit-piped' ? 1 : 0);
  });

  it('refuses its ADPCM by name, and its FLAC', () => {
    expect(refusal(read('sine-ms-adpcm.wav')).message).toContain('Microsoft ADPCM');
    expect(refusal(read('sine.flac')).message).toContain('no WAV file');
  });
});

describe('samples that are decoded when they are asked for', () => {
  // Source: definition, the mean of two channels. Stretches begin and end inside blocks and beyond them.
  it.each([10_000, 2 ** 22 + 10_000])('are the mean of the channels in whatever stretches, of %i frames', (frames) => {
    const value = (channel: number, i: number): number => ((i * 7919 + channel * 31) % 2000) / 4096;
    const read = (channel: number, from: number, out: Float32Array): number => {
      for (let i = 0; i < out.length; i++) out[i] = value(channel, from + i);
      return 0;
    };
    const { samples } = mixToMono({ channels: 2, frames, mayBeDamaged: false, read });
    expect(samples).toHaveLength(frames);
    for (const [from, to] of [
      [0, 1],
      [2047, 2050],
      [1, 9000],
      [4096, 8192],
      [frames - 5000, frames],
      [500, 500],
    ] as const) {
      const mean = Float32Array.from({ length: to - from }, (_, i) => (value(0, from + i) + value(1, from + i)) / 2);
      expect(samples.subarray(from, to)).toEqual(mean);
    }
  });
});
