import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type CodeTable, FAILURES, REASONS } from '../../src/base/index.js';
import { codeOf } from '../../src/batch/history/old-sentences/code-of.js';
import { failureTold } from '../../src/batch/history/old-sentences/failure-told.js';
import { OLD_FAILURES } from '../../src/batch/history/old-sentences/old-failures.js';
import { OLD_REASONS } from '../../src/batch/history/old-sentences/old-reasons.js';
import { withCodes } from '../../src/batch/history/old-sentences/with-codes.js';
import { readRecord } from '../../src/batch/results/take-record.js';

describe.each([
  ['failures', OLD_FAILURES, FAILURES as CodeTable],
  ['reasons', OLD_REASONS, REASONS as CodeTable],
])('sentences of earlier programs: %s', (_what, sentences, table) => {
  const find = codeOf(sentences, table);

  it('have their code and their facts, whatever is put in', () => {
    for (const { code, facts = {}, en, de } of sentences) {
      for (const form of [en, de]) {
        const told: Record<string, unknown> = { ...facts };
        const sentence = form.replace(/\{(\w+)\}/g, (_, name: string) => {
          const isNumber = table[code]?.[name] === 'number';
          told[name] = isNumber ? 37 : 'Xq.';
          return isNumber ? '37' : 'Xq.';
        });
        expect([sentence, find(sentence)]).toEqual([sentence, { code, facts: told }]);
        expect(Object.keys(told).sort()).toEqual(Object.keys(table[code] ?? {}).sort());
      }
    }
  });

  it('are not found in what nobody has said', () => {
    expect(find('quite another thing')).toBeNull();
  });
});

describe('a failure that is kept', () => {
  it('is read by its code, else by its sentence, else told as it was', () => {
    const fault = { code: 'wav-ends-at-once', facts: { bytes: 10 } };
    expect(failureTold({ fault, message: 'x' })).toEqual(fault);
    expect(
      failureTold({ message: 'Die WAV-Datei endet nach 10 Bytes; die Aufnahme neu machen oder neu kopieren.' }),
    ).toEqual(fault);
    const asItWas = { code: 'told-before', facts: { said: 'x' } };
    expect(failureTold({ message: 'x' })).toEqual(asItWas);
    for (const odd of [
      { code: 'unheard-of' },
      { code: 'wav-ends-at-once', facts: { bytes: 'ten' } },
      { code: 'toString' },
    ])
      expect(failureTold({ fault: odd, message: 'x' })).toEqual(asItWas);
  });

  it('is read from a record of an earlier program', () => {
    const folder = mkdtempSync(join(tmpdir(), 'record-'));
    const path = join(folder, 'x.json');
    const failure = {
      file: 'x.wav',
      code: 'wav-damaged',
      message: 'the WAV file holds no audio; record or copy the take again',
    };
    const end = { failure, who: { player: null, date: null, instrument: null } };
    writeFileSync(path, JSON.stringify({ format: 'take-record', version: 1, name: 'x', end }));
    expect(readRecord(path)?.end).toEqual(end);
    expect(failureTold(failure)).toEqual({ code: 'wav-without-audio', facts: {} });
    rmSync(folder, { recursive: true });
  });
});

describe('a result that holds only sentences', () => {
  const old = {
    language: 'de',
    recording: { cautions: [] },
    tempo: { notMeasured: 'zu wenige Takte mit sicheren Noten' },
    contrasts: [{ differenceDb: { notMeasured: 'too few notes were heard under mf' }, registerAdjustedDb: 3 }],
    fermatas: [{ ratio: { notMeasured: 'quite another thing' } }],
    criteria: [
      { criterion: 'tempo', judged: false, summary: 'nicht gemessen: zu wenige Takte mit sicheren Noten' },
      { criterion: 'breath', judged: false, summary: 'no breath marked' },
      { criterion: 'notes', judged: true, summary: '3 von 4 Noten, wie sie dastehen' },
    ],
  };

  it('gets the codes of those that are known', () => {
    const { tempo, contrasts, fermatas, criteria } = withCodes(old) as typeof old;
    expect(tempo).toEqual({ ...old.tempo, code: 'too-few-bars' });
    expect(contrasts).toEqual([
      {
        differenceDb: { ...old.contrasts[0]?.differenceDb, code: 'too-few-under-mark', facts: { mark: 'mf' } },
        registerAdjustedDb: 3,
      },
    ]);
    expect(fermatas).toEqual(old.fermatas);
    expect(criteria).toEqual([
      { ...old.criteria[0], reason: { code: 'too-few-bars' } },
      { ...old.criteria[1], reason: { code: 'no-breath-marked' } },
      old.criteria[2],
    ]);
  });

  it('is left alone when it is of today', () => {
    const today = { ...old, recording: { cautions: [], cautionCodes: [] } };
    expect(withCodes(today)).toBe(today);
  });
});
