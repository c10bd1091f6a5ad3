import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { InputError } from '../../src/base/index.js';
import { reviewTake, type TakeRequest } from '../../src/batch/index.js';
import { listeningRange } from '../../src/batch/listening-range.js';
import { reviewFile } from '../../src/batch/review-file.js';
import { type Part, readPart } from '../../src/score/index.js';
import { goodTake, SHORT_PART } from '../journeys/short-part.js';

const part = readPart(new TextEncoder().encode(SHORT_PART));
const shared = {
  part,
  score: { file: 'part.musicxml', sha256: '00' },
  tool: { name: 'takesheet', version: '0.0.0' },
  paper: 'a4',
} as const;
const request: TakeRequest = { ...shared, bytes: goodTake(), file: '2026-03-02_Ada-Lindqvist.wav', withPdf: true };

describe('the review of one take', () => {
  it('goes from bytes to a result and a report, and gives the same again', async () => {
    const [first, second] = [await reviewTake(request), await reviewTake(request)];
    expect(first.result.outcome).toBe('reviewed');
    expect(first.result.take).toMatchObject({ player: 'Ada Lindqvist', date: '2026-03-02' });
    expect(first.result.notes).toHaveLength(part.notes.length);
    expect(second).toEqual(first);
  });

  it('dates the pages by the take, not by the clock', async () => {
    const { pdf } = await reviewTake(request);
    // ISO 32000-1, 7.9.4: a date is D:YYYYMMDDHHmmSSZ.
    expect(Buffer.from(pdf ?? []).toString('latin1')).toContain('D:20260302000000Z');
  });

  it('draws no page when none is wanted, and says the same', async () => {
    const { result, pdf } = await reviewTake({ ...request, withPdf: false });
    expect(pdf).toBeNull();
    expect(result).toEqual((await reviewTake(request)).result);
  });

  it('refuses what is not a recording', async () => {
    const bytes = new TextEncoder().encode('not a recording at all, only words');
    await expect(reviewTake({ ...request, bytes })).rejects.toThrow(InputError);
  });
});

describe('the range listened to', () => {
  // The part runs from F4 (MIDI 65) to D5 (74): MIDI 1.0, middle C = 60.
  it('holds every note of the part, and room above it for what may be played instead', () => {
    const { lowestMidi, highestMidi } = listeningRange(part);
    expect(lowestMidi).toBeLessThanOrEqual(65);
    expect(highestMidi).toBeGreaterThan(74);
  });
});

describe('the review of one file', () => {
  let root = '';

  beforeEach(() => {
    root = mkdtempSync(join(tmpdir(), 'one-file-'));
    writeFileSync(join(root, 'a.wav'), goodTake());
  });

  afterEach(() => {
    rmSync(root, { recursive: true });
  });

  const work = () => ({ ...shared, outFolder: join(root, 'out'), jsonOnly: true });

  it('never throws: a fault of the program is the take’s own end', async () => {
    const broken = { ...work(), part: { ...part, notes: null } as unknown as Part };
    const end = await reviewFile({ path: join(root, 'a.wav'), file: 'week 1/a.wav', name: 'a' }, broken);
    expect(end).toMatchObject({ name: 'a', failure: { file: 'week 1/a.wav', code: 'internal-error' } });
    expect(readdirSync(root)).toEqual(['a.wav']);
  });

  it('says so when the take has gone', async () => {
    const end = await reviewFile({ path: join(root, 'b.wav'), file: 'b.wav', name: 'b' }, work());
    expect(end).toMatchObject({ failure: { file: 'b.wav', code: 'no-such-file' } });
  });
});
