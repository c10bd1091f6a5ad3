import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { readDemoScore } from '../../src/demo/index.js';
import { findPassage } from '../../src/report/listen/find-passage.js';
import { findingKindSchema } from '../../src/result/schema/take-result-schema.js';
import { type Part, readPart } from '../../src/score/index.js';
import { findingAt, playedAsWritten } from '../helpers/marked-excerpts.js';

describe('the passage of a finding', () => {
  let part: Part;
  beforeAll(() => {
    part = readPart(readDemoScore());
  });

  // The helper plays a quarter in 0.6 s, so bars before and after of the 4/4 étude are 2.4 s each.
  it('runs from one bar before to one bar after', () => {
    const index = part.notes.findIndex(({ bar }) => bar === '11');
    const passage = findPassage(findingAt(part, 'accidental', index), playedAsWritten(part), part, 8);
    expect(passage?.bars.map(({ bar }) => bar)).toEqual(['10', '11', '12']);
  });

  it('holds its notes, lies within the recording and is no longer than it must be', () => {
    const result = playedAsWritten(part);
    const kinds = findingKindSchema.options.filter((kind) => !['off-tempo', 'tuning-off', 'restart'].includes(kind));
    const last = part.notes.length - 1;
    const law = fc.property(fc.constantFrom(...kinds), fc.nat(last), fc.nat(12), (kind, index, more) => {
      const toIndex = Math.min(last, index + more);
      const passage = findPassage(findingAt(part, kind, index, { toIndex }), result, part, 8);
      if (passage === null) return;
      const { fromSeconds, toSeconds, bars } = passage;
      const own = (result.notes[toIndex]?.offset ?? 0) - (result.notes[index]?.onset ?? 0);
      expect(fromSeconds).toBeGreaterThanOrEqual(0);
      expect(fromSeconds).toBeLessThanOrEqual(result.notes[index]?.onset ?? 0);
      expect(toSeconds).toBeGreaterThanOrEqual(
        Math.min(result.take.durationSeconds, result.notes[toIndex]?.offset ?? 0),
      );
      expect(toSeconds).toBeLessThanOrEqual(result.take.durationSeconds);
      expect(toSeconds - fromSeconds).toBeLessThanOrEqual(Math.max(8, own + 2) + 0.3);
      expect(bars.length).toBeGreaterThan(0);
    });
    fc.assert(law, { seed: 11, numRuns: 300 });
  });

  it('lets a note that was left out be missed between its neighbours', () => {
    const result = playedAsWritten(part);
    const { onset: _, offset: __, playedMidi: ___, ...rest } = result.notes[20]!;
    result.notes[20] = { ...rest, status: 'left-out' };
    const passage = findPassage(findingAt(part, 'missed-note', 20), result, part, 8)!;
    expect(passage.fromSeconds).toBeLessThan(result.notes[19]!.offset!);
    expect(passage.toSeconds).toBeGreaterThan(result.notes[21]!.onset!);
  });

  it('is not there for the take as a whole, nor where nothing was heard', () => {
    const result = playedAsWritten(part);
    expect(findPassage(findingAt(part, 'tuning-off', 0), result, part, 8)).toBeNull();
    const unheard = { ...result, notes: result.notes.map(({ onset: _, offset: __, ...note }) => note) };
    expect(findPassage(findingAt(part, 'missed-note', 9), unheard, part, 8)).toBeNull();
  });
});
