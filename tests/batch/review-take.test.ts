import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { InputError, sha256 } from '../../src/base/index.js';
import { reviewInWorker } from '../../src/batch/results/review-in-worker.js';
import { type Etude, type ReviewedTake, reviewTake, type TakeRequest } from '../../src/review/index.js';
import { listeningRange } from '../../src/review/listening-range.js';
import { type Part, readPart } from '../../src/score/index.js';
import { goodTake, OTHER_PART, otherTake, SHORT_PART } from '../journeys/short-part.js';

const part = readPart(new TextEncoder().encode(SHORT_PART));
const shared = {
  part,
  score: { file: 'part.musicxml', sha256: '00' },
  tool: { name: 'takesheet', version: '0.0.0' },
  paper: 'a4',
  language: 'en',
} as const;
const who = { player: 'Ada Lindqvist', date: '2026-03-02', instrument: null };
const request: TakeRequest = {
  ...shared,
  who,
  bytes: goodTake(),
  file: '2026-03-02_Ada-Lindqvist.wav',
  jsonOnly: false,
};

/** Slower than is asked for, so that there is a finding. */
const otherSpeed = goodTake({ tempoFactor: 0.7 });

function documentOf({ documents }: ReviewedTake, ending: string): Buffer {
  return Buffer.from(documents.find((document) => document.ending === ending)?.bytes ?? []);
}

describe('the review of one take', () => {
  it('goes from bytes to a result and a report, and gives the same again', async () => {
    const [first, second] = [await reviewTake(request), await reviewTake(request)];
    expect(first.result.outcome).toBe('reviewed');
    expect(first.result.take).toMatchObject({ player: 'Ada Lindqvist', date: '2026-03-02' });
    expect(first.result.notes).toHaveLength(part.notes.length);
    expect(second).toEqual(first);
  });

  it('dates the pages by the take, not by the clock', async () => {
    const pdf = documentOf(await reviewTake(request), 'pdf');
    // ISO 32000-1, 7.9.4: a date is D:YYYYMMDDHHmmSSZ.
    expect(pdf.toString('latin1')).toContain('D:20260302000000Z');
  });

  it('draws no page when none is wanted, and says the same', async () => {
    const { result, documents } = await reviewTake({ ...request, jsonOnly: true });
    expect(documents.map(({ ending }) => ending)).toEqual(['json']);
    expect(result).toEqual((await reviewTake(request)).result);
  });

  it('writes the sound and what is known of it when that is wanted, and the same again', async () => {
    expect((await reviewTake(request)).documents.map(({ ending }) => ending)).toEqual(['pdf', 'json']);
    const [first, second] = [
      await reviewTake({ ...request, listen: true }),
      await reviewTake({ ...request, listen: true }),
    ];
    // Source: RFC 8794: a WebM file begins with 1A 45 DF A3.
    expect(documentOf(first, 'webm').subarray(0, 4).toString('hex')).toBe('1a45dfa3');
    const facts = JSON.parse(documentOf(first, 'facts.json').toString());
    const { durationSeconds } = first.result.take;
    expect(facts.durationSeconds).toBeCloseTo(durationSeconds, 2);
    // stretches from the first sample to beyond the last one
    expect(Math.floor(facts.levelsDb.length - durationSeconds / facts.levelHopSeconds)).toBe(0);
    expect(Math.floor(facts.kWeightedDb.length - durationSeconds / 0.1)).toBe(0);
    expect(second).toEqual(first);
  });

  it('lets pages lead to the room only where the take has a name there and can be heard', async () => {
    const leads = async (more: Partial<TakeRequest>) =>
      documentOf(await reviewTake({ ...request, bytes: otherSpeed, ...more }), 'pdf').includes('listen/index.html#');
    expect(await leads({ listen: true, name: 'ada' })).toBe(true);
    expect(await leads({ listen: true })).toBe(false);
    expect(await leads({ name: 'ada' })).toBe(false);
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

  const etude = { part, brief: null, score: shared.score };
  const work = { ...shared, etudes: [etude], limits: {}, jsonOnly: true };
  const who = { player: null, date: null, instrument: null };
  const take = (name: string) => {
    const path = join(root, `${name}.wav`);
    return { path, file: `week 1/${name}.wav`, name, shownAs: `${name}.wav`, who, etudes: [0] };
  };

  it('never throws: a fault of the program is the take’s own end', async () => {
    const broken = { ...work, etudes: [{ ...etude, part: { ...part, notes: null } as unknown as Part }] };
    const end = await reviewInWorker({ take: take('a'), keptSha256: null }, broken, () => {});
    expect(end).toMatchObject({ how: 'failed', failure: { file: 'week 1/a.wav', code: 'internal-error' } });
    expect(readdirSync(root)).toEqual(['a.wav']);
  });

  it('says so when the take has gone', async () => {
    const end = await reviewInWorker({ take: take('b'), keptSha256: null }, work, () => {});
    expect(end).toMatchObject({ how: 'failed', failure: { file: 'week 1/b.wav', code: 'no-such-file' } });
  });

  it('asks for time in proportion to the take’s length, unless the user has bounded it', async () => {
    const asked: number[] = [];
    await reviewInWorker({ take: take('a'), keptSha256: null }, work, (seconds) => asked.push(seconds));
    const fixed = { ...work, limits: { seconds: 7 } };
    await reviewInWorker({ take: take('a'), keptSha256: null }, fixed, (seconds) => asked.push(seconds));
    expect(asked[0]).toBeGreaterThan(60);
    expect(asked[1]).toBe(7);
  });

  it('does not listen to what it knows already', async () => {
    const keptSha256 = sha256(goodTake());
    expect(await reviewInWorker({ take: take('a'), keptSha256 }, work, () => {})).toEqual({ how: 'as-before' });
    const other = { take: take('a'), keptSha256: keptSha256.replace(/^./, 'g') };
    expect(await reviewInWorker(other, work, () => {})).toMatchObject({ how: 'reviewed' });
  });
});

describe('a take that may be of several études', () => {
  const other = readPart(new TextEncoder().encode(OTHER_PART));
  const [own, foreign] = [part, other].map((one, i) => ({
    part: one,
    brief: null,
    score: { file: `${i}.xml`, sha256: '' },
  }));

  it('is held against each, and the result says which it was', async () => {
    const played = await reviewTake({ ...request, ...foreign, others: [own as Etude], jsonOnly: true });
    expect(played.result).toMatchObject({ outcome: 'reviewed', score: { file: '0.xml' } });
    const turned = { ...request, bytes: otherTake(), ...own, others: [foreign as Etude], jsonOnly: true };
    expect((await reviewTake(turned)).result).toMatchObject({ outcome: 'reviewed', score: { file: '1.xml' } });
  });

  it('is the same whichever is named first', async () => {
    const [first, second] = [
      await reviewTake({ ...request, ...own, others: [foreign as Etude], jsonOnly: true }),
      await reviewTake({ ...request, ...foreign, others: [own as Etude], jsonOnly: true }),
    ];
    expect(first).toEqual(second);
  });
});
