import { describe, expect, it } from 'vitest';
import { encodeWav } from '../../src/decode/index.js';
import { performTake, type TakePlan } from '../../src/demo/index.js';
import { reviewTake } from '../../src/review/index.js';
import { readPart } from '../../src/score/index.js';
import { SHORT_PART } from '../journeys/short-part.js';

const PART = readPart(new TextEncoder().encode(SHORT_PART));

async function reviewed(plan: Partial<TakePlan>) {
  const { samples, sampleRateHz } = performTake(PART, { seed: 1, voice: 'flute', sampleRateHz: 44100, ...plan });
  const { result } = await reviewTake({
    bytes: encodeWav(samples, sampleRateHz),
    file: 'take.wav',
    who: { player: null, date: null, instrument: null },
    part: PART,
    score: { file: 'part.musicxml', sha256: '0'.repeat(64) },
    jsonOnly: true,
    paper: 'a4',
    tool: { name: 'takesheet', version: '0.0.0' },
  });
  return result;
}

// Source: what the synthesiser was told to play.
describe('the second ear in a review', () => {
  it('is asked about the note that would be told as out of tune, and about no other', async () => {
    const faults = [{ kind: 'out-of-tune', at: { bar: '2', beat: 1 }, cents: 48 }] as const;
    const { notes, findings } = await reviewed({ faults, tuningCents: 6, tuningScatterCents: 2 });
    const asked = notes.filter(({ secondEarCents }) => secondEarCents !== undefined);
    expect(asked.map(({ bar, beat }) => [bar, beat])).toEqual([['2', 1]]);
    // 48 cents above a tuning of 6, scattered by 2
    expect(Math.abs((asked[0]!.secondEarCents as number) - 54)).toBeLessThan(8);
    expect(Math.abs((asked[0]!.secondEarCents as number) - (asked[0]!.cents as number))).toBeLessThan(3);
    expect(findings.filter(({ kind }) => kind === 'note-out-of-tune')).toMatchObject([{ bar: '2', weight: 'fix' }]);
  });

  it('is not asked about a take in tune', async () => {
    const { notes } = await reviewed({ tuningScatterCents: 2 });
    expect(notes).toHaveLength(PART.notes.length);
    expect(notes.filter((note) => 'secondEarCents' in note)).toEqual([]);
  });
});
