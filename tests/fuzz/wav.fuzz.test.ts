import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeWav } from '../../src/decode/index.js';
import { cautionSaid } from '../../src/words/index.js';
import { chunk, extensible, formatChunk, ramp16, riff } from '../decode/wav-bytes.js';
import { damagedBytes } from './damaged-bytes.js';
import { shareRead } from './how-much.js';
import { megabytesGrown, readOrRefuse } from './read-or-refuse.js';

const takes = join(import.meta.dirname, '../../fixtures/takes');
const recorded = ['16-bit-piped', '24-bit', '8-bit', 'a-law', 'float', 'ms-adpcm', 'mu-law'].map((kind) =>
  Uint8Array.from(readFileSync(join(takes, `sine-${kind}.wav`))).subarray(0, 6000),
);
/** Built byte by byte after the specifications, as small as may be. */
const built = [
  riff([formatChunk(), chunk('data', ramp16(1000))]),
  riff([formatChunk({ channels: 2, rate: 44100 }), chunk('LIST', [1, 2, 3]), chunk('data', ramp16(9000))]),
  riff([formatChunk({ channels: 8, bits: 8 }), chunk('data', ramp16(3300))]),
  riff([formatChunk({ tag: 3, bits: 64 }), chunk('data', ramp16(4000))]),
  riff([formatChunk({ tag: 0xfffe, bits: 24, extra: extensible(1, 24) }), chunk('data', ramp16(3000))]),
  riff([chunk('ds64', Array<number>(28).fill(0)), formatChunk({ bits: 32 }), chunk('data', ramp16(2000))], 'RF64'),
  riff([chunk('junk', ramp16(20)), formatChunk(), chunk('data', ramp16(1000), 0xffffffff)], 'BW64'),
];

/** What can be heard in a file is in the file: never more samples than bytes, all of them numbers, a plain rate. */
function expectSound(bytes: Uint8Array): boolean {
  const take = readOrRefuse(() => decodeWav(bytes));
  if (take === null) return false;
  expect(take.samples.length).toBeGreaterThan(0);
  expect(take.samples.length).toBeLessThanOrEqual(bytes.length);
  expect(take.samples.subarray().every(Number.isFinite)).toBe(true);
  expect(take.sampleRateHz).toBeGreaterThanOrEqual(8000);
  expect(take.sampleRateHz).toBeLessThanOrEqual(192000);
  for (const caution of take.cautions)
    expect(cautionSaid('en', caution)).not.toMatch(/[\p{Cc}]|NaN|Infinity|undefined/u);
  return true;
}

describe('the reader of WAV files', () => {
  it('can read the files that are damaged below', () => {
    const read = [...recorded, ...built].filter((bytes) => readOrRefuse(() => decodeWav(bytes)) !== null);
    // one of the recorded ones is compressed and refused
    expect(read).toHaveLength(recorded.length + built.length - 1);
  });

  it('reads or refuses any bytes', async () => {
    const heads = [
      '',
      'RIFF',
      'RIFF\0\0\0\0WAVE',
      'RF64\xff\xff\xff\xffWAVEds64',
      'RIFF\xff\xff\xff\x7fWAVEfmt \x28\0\0\0',
    ];
    const any = fc.tuple(fc.constantFrom(...heads), fc.uint8Array({ maxLength: 400 })).map(([head, tail]) => {
      return Uint8Array.from([...Buffer.from(head, 'latin1'), ...tail]);
    });
    expect(await shareRead(2000, any, expectSound)).toBeLessThan(0.5);
  });

  it('reads or refuses damaged files, and never takes more memory than they bear out', async () => {
    const grown = await megabytesGrown(async () => {
      const read = await shareRead(4000, damagedBytes([...recorded, ...built]), expectSound);
      expect(read).toBeGreaterThan(0.1);
      expect(read).toBeLessThan(0.9);
    });
    // files of at most some kilobytes: what grows is the heap that waits for its collector
    expect(grown).toBeLessThan(300);
  });
});
