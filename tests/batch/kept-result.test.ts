import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sha256 } from '../../src/base/index.js';
import { keptResult, type Wanted } from '../../src/batch/results/kept-result.js';
import { leftAlone } from '../../src/batch/results/left-alone.js';
import { readRecord, recordPath } from '../../src/batch/results/take-record.js';
import { writeTake } from '../../src/batch/results/write-take.js';
import type { PlannedTake } from '../../src/batch/types.js';
import { sectionRow, toTakeResult } from '../../src/result/index.js';
import { sampleReview } from '../helpers/sample-review.js';

const DEPENDS_ON = 'd'.repeat(64);
const TAKE = 'a'.repeat(64);
const who = { player: 'Ada', date: null, instrument: null };
const take: PlannedTake = { path: '/ada.wav', file: 'ada.wav', name: 'ada', shownAs: 'ada.wav', who, etudes: [0] };
const bytes = (text: string) => new TextEncoder().encode(text);
const row = sectionRow('ada', toTakeResult(sampleReview()));

let outFolder: string;
let wanted: Wanted;

beforeEach(() => {
  outFolder = mkdtempSync(join(tmpdir(), 'takesheet-kept-'));
  wanted = { outFolder, dependsOn: DEPENDS_ON, jsonOnly: false, paper: 'a4' };
  const documents = [
    { ending: 'pdf', bytes: bytes('pages'), madeFor: 'a4' },
    { ending: 'json', bytes: bytes('{}'), madeFor: '' },
  ];
  writeTake(take, { answer: { how: 'reviewed', sha256: TAKE, documents, row } }, DEPENDS_ON, wanted);
});
afterEach(() => rmSync(outFolder, { recursive: true }));

describe('a result of an earlier run', () => {
  it('stands where every document that is wanted is there as it was written', () => {
    expect(readdirSync(join(outFolder, 'takes')).sort()).toEqual(['ada.json', 'ada.pdf']);
    expect(keptResult('ada', wanted)).toBe(TAKE);
    expect(keptResult('ada', { ...wanted, jsonOnly: true })).toBe(TAKE);
    expect(keptResult('bela', wanted)).toBeNull();
  });

  it('does not stand for anything else: paper, a document that was not made, another program', () => {
    expect(keptResult('ada', { ...wanted, paper: 'letter' })).toBeNull();
    expect(keptResult('ada', { ...wanted, paper: 'letter', jsonOnly: true })).toBe(TAKE);
    expect(keptResult('ada', { ...wanted, listen: true })).toBeNull();
    expect(keptResult('ada', { ...wanted, dependsOn: 'e'.repeat(64) })).toBeNull();
  });

  it.each(['pdf', 'json'])('does not stand when its %s was changed', (ending) => {
    writeFileSync(join(outFolder, 'takes', `ada.${ending}`), 'changed');
    expect(keptResult('ada', wanted)).toBeNull();
  });
});

describe('records of the version before', () => {
  const path = () => recordPath(outFolder, 'bela');
  const write = (end: object) => {
    mkdirSync(join(outFolder, 'records'), { recursive: true });
    writeFileSync(path(), JSON.stringify({ format: 'take-record', version: 1, name: 'bela', end }));
  };

  // Source: a record as version 1 wrote it.
  it('count as none where a take was reviewed', () => {
    write({ dependsOn: DEPENDS_ON, takeSha256: TAKE, jsonSha256: sha256(bytes('{}')), pdf: null });
    expect(readRecord(path())).toBeNull();
  });

  it('still tell of a take that failed', () => {
    const failure = { file: 'bela.wav', code: 'not-a-recording', message: 'this is no recording' };
    write({ failure, who });
    expect(readRecord(path())?.end).toEqual({ failure, who });
  });
});

describe('files left alone', () => {
  it('are those that the run neither wrote nor kept', () => {
    for (const file of ['ada.html', 'old.json', 'old.pdf']) writeFileSync(join(outFolder, 'takes', file), '');
    const plan = { takes: [take], lost: [], rosterLinesUnused: [], unrecognised: null };
    const ended = (kept: boolean) => [{ name: 'ada', row, report: 'takes/ada.pdf', kept }];
    expect(leftAlone(wanted, plan, ended(true))).toEqual(['old.json', 'old.pdf']);
    expect(leftAlone(wanted, plan, ended(false))).toEqual(['ada.html', 'old.json', 'old.pdf']);
    const dataOnly = { ...wanted, jsonOnly: true };
    expect(leftAlone(dataOnly, plan, ended(false))).toEqual(['ada.html', 'ada.pdf', 'old.json', 'old.pdf']);
    expect(leftAlone({ ...wanted, listen: true }, plan, ended(false))).toEqual(['old.json', 'old.pdf']);
  });
});
