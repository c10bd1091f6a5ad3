import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Caution } from '../../src/base/index.js';
import { notMeasured } from '../../src/base/index.js';
import { compiledTakeResult, type TakeResult, takeResultJsonSchema, toTakeResult } from '../../src/result/index.js';
import {
  beats,
  cents,
  decibels,
  fraction,
  maybe,
  measured,
  ratio,
  seconds,
  share,
  tempo,
} from '../../src/result/quantities.js';
import { type Sample, sampleReview } from '../helpers/sample-review.js';

// The contract is a file of its own, written before the project and not by it.
const contractFile = new URL('../../fixtures/contract/take-result.schema.json', import.meta.url);
const contract = new Ajv2020({ strict: false }).compile(JSON.parse(readFileSync(contractFile, 'utf8')));
const published = new Ajv2020().compile(takeResultJsonSchema());

const reviewed = toTakeResult(sampleReview());

/** What a reader gets: the document after it has been a file. */
const asFile = (result: TakeResult): unknown => JSON.parse(JSON.stringify(result));

function silent(): Sample {
  const sample = sampleReview({ fit: 'nothing' });
  const recording = { ...sample.measurements.recording, peakDbfs: Number.NEGATIVE_INFINITY };
  return { ...sample, measurements: { ...sample.measurements, recording } };
}

function nothingMeasured(): Sample {
  const sample = sampleReview();
  const reason = notMeasured('level-moved');
  const { measurements } = sample;
  return {
    ...sample,
    measurements: {
      ...measurements,
      recording: { ...measurements.recording, signalToNoiseDb: reason },
      tuning: reason,
      tempo: reason,
      notes: measurements.notes.map(({ index }) => ({
        index,
        cents: reason,
        centsFromOwnTuning: reason,
        levelDb: reason,
      })),
      levels: measurements.levels.map((level) => ({ ...level, levelDb: reason })),
      fermatas: measurements.fermatas.map((f) => ({
        ...f,
        writtenSeconds: reason,
        heldSeconds: reason,
        ratio: reason,
      })),
    },
  };
}

describe('the result document', () => {
  const documents: [string, TakeResult][] = [
    ['a reviewed take', reviewed],
    ['another piece', toTakeResult(sampleReview({ fit: 'other' }))],
    ['silence', toTakeResult(silent())],
    ['nothing measured', toTakeResult(nothingMeasured())],
    ['a part of one bar without findings', toTakeResult(sampleReview({ bars: 1, findings: [], player: null }))],
  ];

  it.each(documents)('is valid against the contract and against the published schema: %s', (_, result) => {
    expect([contract(asFile(result)), contract.errors]).toEqual([true, null]);
    expect([published(asFile(result)), published.errors]).toEqual([true, null]);
  });

  // Source: the contract, which says that a document valid in the published schema must be valid there.
  it('refuses at least what the contract refuses, whatever value is put wherever', () => {
    const paths = pathsOf(asFile(reviewed));
    const value = fc.oneof(fc.jsonValue({ maxDepth: 1 }), fc.constantFrom(-1, 0.5, 2, 'x', 'fix', null, [], {}));
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.option(value, { nil: undefined }), (path, put) => {
        const document = changed(asFile(reviewed), path, put);
        const ours = published(document);
        const parsed = compiledTakeResult().safeParse(document);
        // Bounds hold for numbers as they are kept: a hair beyond one is rounded back and may stand.
        expect(parsed.success && published(asFile(parsed.data))).toBe(parsed.success);
        if (ours || !parsed.success) expect(parsed.success).toBe(ours);
        if (ours) expect([path, contract(document), contract.errors]).toEqual([path, true, null]);
      }),
      { numRuns: 600 },
    );
  });

  it('needs every field the contract needs', () => {
    for (const key of JSON.parse(readFileSync(contractFile, 'utf8')).required as string[]) {
      const document = changed(asFile(reviewed), [key], undefined);
      expect([key, contract(document), published(document)]).toEqual([key, false, false]);
    }
  });

  // Source: JSON Schema 2020-12, section 8.1.1.
  it('publishes a schema that names its dialect', () => {
    expect(takeResultJsonSchema().$schema).toBe('https://json-schema.org/draft/2020-12/schema');
  });

  it('keeps what was heard of every note, in order', () => {
    const { part, alignment } = sampleReview();
    expect(reviewed.notes.map((note) => note.index)).toEqual(part.notes.map((_, i) => i));
    expect(reviewed.notes[41]).toMatchObject({ status: 'left-out' });
    expect(reviewed.notes[41]).not.toHaveProperty('playedMidi');
    expect(reviewed.notes[17]).toMatchObject({
      status: 'other-pitch',
      playedMidi: (part.notes[17]?.soundingMidi ?? 0) + 1,
    });
    expect(reviewed.notes[3]?.onset).toBeCloseTo(alignment.notes[3]?.onsetSeconds ?? 0, 4);
  });

  it('says of a take that was not reviewed only why, and what the file is', () => {
    const result = toTakeResult(sampleReview({ fit: 'other' }));
    expect(result.outcome).toBe('not-this-score');
    expect(result.tuning).toHaveProperty('notMeasured');
    expect(result.tempo).toHaveProperty('notMeasured');
    expect([result.notes, result.findings, result.levels, result.criteria]).toEqual([[], [], [], []]);
    expect(result.take.durationSeconds).toBeGreaterThan(60);
    expect(toTakeResult(silent()).outcome).toBe('too-poor');
  });

  it('brings the cautions of the file and of the recording together, each once', () => {
    const empty: Caution = { code: 'channels-empty', facts: { channels: [2], of: 2 } };
    const sample = sampleReview({ cautions: [{ ...empty }, { code: 'rings-long', facts: {} }] });
    const result = toTakeResult({ ...sample, take: { ...sample.take, cautions: [empty] } });
    expect(result.recording.cautions).toEqual([
      'the right channel is empty and was left out',
      'The room rings long: gaps between notes fill up, so slurs and short notes are not told apart surely.',
    ]);
    expect(result.recording.cautionCodes).toEqual([empty, { code: 'rings-long' }]);
  });

  it('has no place for a number that is not finite', () => {
    const sample = sampleReview();
    const recording = { ...sample.measurements.recording, peakDbfs: Number.NaN };
    expect(() => toTakeResult({ ...sample, measurements: { ...sample.measurements, recording } })).toThrow();
  });

  it('is small and the same every time', () => {
    const text = JSON.stringify(toTakeResult(sampleReview()));
    expect(text).toBe(JSON.stringify(reviewed));
    const longest = Math.max(
      ...(text.match(/-?\d+\.\d+/g) ?? []).map((number) => (number.split('.')[1] as string).length),
    );
    expect(longest).toBeLessThanOrEqual(6);
  });
});

describe('rounding', () => {
  const kept = [
    [seconds(), 4],
    [decibels(), 2],
    [cents(), 1],
    [beats(), 4],
    [tempo(), 2],
    [ratio(), 3],
    [fraction(), 4],
    [measured(), 3],
  ] as const;
  const quantity = fc.constantFrom(...kept);

  it('moves a number by half a unit of its last decimal at most, and never gives -0', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), quantity, (value, [schema, decimals]) => {
        const result = schema.parse(value);
        expect(Math.abs(result - value)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-9);
        expect(Object.is(result, -0)).toBe(false);
        expect(schema.parse(-value)).toBeCloseTo(-result, 9);
        expect(schema.parse(result)).toBe(result);
      }),
    );
  });

  it('keeps times to 0.1 ms, levels to 0.01 dB and pitch to 0.1 cent', () => {
    expect(seconds().parse(1.23456)).toBe(1.2346);
    expect(decibels().parse(-20.456)).toBe(-20.46);
    expect(cents().parse(-0.04)).toBe(0);
  });

  it('holds a share within its bounds as it is kept, so that a last bit too much does not count', () => {
    expect(share().parse(1.00000001)).toBe(1);
    expect(share().safeParse(1.001).success).toBe(false);
  });

  // Source: definition; a document of JSON has no place for minus infinity (RFC 8259, section 6).
  it('gives silence a finite level, and no other number that is not finite a place', () => {
    expect(decibels().parse(Number.NEGATIVE_INFINITY)).toBe(-200);
    expect(maybe(decibels()).parse(Number.NEGATIVE_INFINITY)).toBe(-200);
    expect(seconds().safeParse(Number.NEGATIVE_INFINITY).success).toBe(false);
    expect(decibels().safeParse(Number.POSITIVE_INFINITY).success).toBe(false);
    expect(decibels().safeParse(Number.NaN).success).toBe(false);
  });

  it('says in the published schema what every number is counted in', () => {
    const text = JSON.stringify(takeResultJsonSchema());
    expect(text).toContain('"description":"positive is late; seconds"');
    expect(numbersWithoutUnit(takeResultJsonSchema())).toEqual([]);
  });
});

/** Keys under which a published schema has a number and does not say what it counts. */
function numbersWithoutUnit(schema: object, key = ''): string[] {
  const own =
    'type' in schema && schema.type === 'number' && !('const' in schema) && !('description' in schema) ? [key] : [];
  const below = Object.entries(schema).flatMap(([name, value]) =>
    typeof value === 'object' && value !== null ? numbersWithoutUnit(value, name) : [],
  );
  return [...own, ...below];
}

function pathsOf(value: unknown, path: readonly string[] = []): string[][] {
  if (typeof value !== 'object' || value === null) return [[...path]];
  const keys = Array.isArray(value) ? Object.keys(value).slice(0, 2) : Object.keys(value);
  return [
    ...(path.length > 0 ? [[...path]] : []),
    ...keys.flatMap((key) => pathsOf((value as Record<string, unknown>)[key], [...path, key])),
  ];
}

/** The document with one value replaced, or taken out. */
function changed(document: unknown, path: readonly string[], value: unknown): unknown {
  const holder = path
    .slice(0, -1)
    .reduce((at, key) => at[key] as Record<string, unknown>, document as Record<string, unknown>);
  const last = path.at(-1) as string;
  if (value !== undefined) holder[last] = value;
  else if (Array.isArray(holder)) holder.splice(Number(last), 1);
  else delete holder[last];
  return document;
}
