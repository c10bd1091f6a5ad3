import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/base/index.js';
import { encodeWav } from '../../src/decode/index.js';
import { performTake } from '../../src/demo/index.js';
import { compiledTakeResult } from '../../src/result/index.js';
import { reviewTake } from '../../src/review/index.js';
import { type Part, readPart } from '../../src/score/index.js';
import { bytesOf } from '../score/score-of.js';
import { damagedBytes } from './damaged-bytes.js';
import { damagedXml } from './damaged-xml.js';
import { shareRead } from './how-much.js';
import { readOrRefuse } from './read-or-refuse.js';

const compared = join(import.meta.dirname, '../../fixtures/scores/compared');
const files = ['line-02-tuplets', 'line-08-clarinet', 'line-19-ties', 'way-05-two-endings', 'way-17-ds-al-coda'];

/** What `encodeWav` writes before the samples; source: Microsoft & IBM 1991, WAVE. */
const WAV_HEAD_BYTES = 44;

/** Each score, and a take of it as it stands. */
const sets = files.map((file) => {
  const xml = readFileSync(join(compared, `${file}.musicxml`), 'utf8');
  const part = readPart(bytesOf(xml));
  const { samples, sampleRateHz } = performTake(part, { seed: 5, voice: 'clarinet', sampleRateHz: 11025 });
  return { xml, part, take: encodeWav(samples, sampleRateHz) };
});

/** Reviews a take; what comes is a result document by its schema, or one plain refusal. */
async function expectResult(bytes: Uint8Array, part: Part): Promise<string> {
  const request = {
    ...({ bytes, part, file: '2026-03-02_Ada.wav', brief: null, paper: 'a4', jsonOnly: true } as const),
    who: { player: null, date: null, instrument: null },
    score: { file: 'score.musicxml', sha256: '0'.repeat(64) },
    tool: { name: 'takesheet', version: '0.0.0' },
  };
  try {
    const { result } = await reviewTake(request);
    const written = JSON.parse(JSON.stringify(result));
    expect(written).toEqual(result);
    expect(compiledTakeResult().safeParse(written).error?.issues ?? []).toEqual([]);
    return result.outcome;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    readOrRefuse(() => {
      throw error;
    });
    return error.code;
  }
}

describe('a review', () => {
  it('of a take that is not damaged is one', async () => {
    for (const { part, take } of sets) expect(await expectResult(take, part)).toBe('reviewed');
  });

  it('of a take against any score that can be read gives a result', async () => {
    const damaged = fc
      .integer({ min: 0, max: sets.length - 1 })
      .chain((i) => damagedXml([sets[i]!.xml]).map((xml) => ({ i, xml })));
    const reviewed = await shareRead(60, damaged, async ({ i, xml }) => {
      const part = readOrRefuse(() => readPart(bytesOf(xml)));
      if (part === null || part.notes.length > 2000) return false;
      return (await expectResult(sets[i]!.take, part)) === 'reviewed';
    });
    expect(reviewed).toBeGreaterThan(0.2);
  });

  it('of any sound gives a result', async () => {
    const { part, take } = sets[1]!;
    const head = take.slice(0, WAV_HEAD_BYTES);
    const sound = damagedBytes([take.slice(WAV_HEAD_BYTES)]).map((body) => Uint8Array.from([...head, ...body]));
    const reviewed = await shareRead(60, sound, async (bytes) => (await expectResult(bytes, part)) === 'reviewed');
    expect(reviewed).toBeGreaterThan(0.2);
  });
});
