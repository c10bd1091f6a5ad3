import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/base/index.js';
import { decodeWav } from '../../src/decode/index.js';
import { chunk, formatChunk, ramp16, riff } from './wav-bytes.js';

/** Reads or refuses; anything else fails the test. Returns what was allocated for the samples. */
function readOrRefuse(bytes: Uint8Array): number {
  let length = 0;
  try {
    const take = decodeWav(bytes);
    length = take.samples.length;
    expect(take.samples.subarray().every(Number.isFinite)).toBe(true);
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
  }
  return length;
}

const valid = [
  riff([formatChunk({ channels: 2, rate: 44100 }), chunk('LIST', [1, 2, 3]), chunk('data', ramp16(12000))]),
  riff([formatChunk({ tag: 3, bits: 32 }), chunk('data', ramp16(4000))]),
  riff([chunk('ds64', Array<number>(28).fill(0)), formatChunk({ bits: 24 }), chunk('data', ramp16(6000))], 'RF64'),
];

describe('laws of decodeWav', () => {
  it('random bytes, with or without a RIFF head, are read or refused', () => {
    const heads = fc.constantFrom('', 'RIFF\0\0\0\0WAVE', 'RF64\xff\xff\xff\xffWAVE', 'RIFF\0\0\0\0WAVEfmt \x10\0\0\0');
    fc.assert(
      fc.property(heads, fc.uint8Array({ maxLength: 3000 }), (head, tail) => {
        const bytes = Uint8Array.from([...[...head].map((c) => c.charCodeAt(0)), ...tail]);
        expect(readOrRefuse(bytes)).toBeLessThanOrEqual(bytes.length);
      }),
      { numRuns: 300 },
    );
  });

  it('a valid file with bytes changed in its first 120 and its end cut is read or refused', () => {
    const change = fc.record({ at: fc.nat(119), to: fc.nat(255) });
    const inputs = [fc.constantFrom(...valid), fc.array(change, { maxLength: 6 }), fc.nat(3000)] as const;
    fc.assert(
      fc.property(...inputs, (file, changes, cut) => {
        const bytes = file.slice(0, file.length - cut);
        for (const { at, to } of changes) bytes[at] = to;
        expect(readOrRefuse(bytes)).toBeLessThanOrEqual(bytes.length);
      }),
      { numRuns: 500 },
    );
  });
});
