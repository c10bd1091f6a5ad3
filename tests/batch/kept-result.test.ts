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
    { folder: 'takes', ending: 'pdf', bytes: bytes('pages'), madeFor: 'a4' },
    { folder: 'takes', ending: 'json', bytes: bytes('{}'), madeFor: '' },
  ] as const;
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

  it('stands with a listening room and without: its pages only lead there', () => {
    const documents = [
      { folder: 'takes', ending: 'pdf', bytes: bytes('pages'), madeFor: 'a4, linked' },
      { folder: 'takes', ending: 'json', bytes: bytes('{}'), madeFor: '' },
      { folder: 'listen/sound', ending: 'webm', bytes: bytes('sound'), madeFor: '' },
      { folder: 'listen/sound', ending: 'facts.json', bytes: bytes('{"a":1}'), madeFor: '' },
    ] as const;
    writeTake(take, { answer: { how: 'reviewed', sha256: TAKE, documents, row } }, DEPENDS_ON, wanted);
    expect(keptResult('ada', { ...wanted, listen: true })).toBe(TAKE);
    expect(keptResult('ada', wanted)).toBe(TAKE);
    rmSync(join(outFolder, 'listen', 'sound', 'ada.webm'));
    expect(keptResult('ada', { ...wanted, listen: true })).toBeNull();
    expect(keptResult('ada', wanted)).toBe(TAKE);
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
    mkdirSync(join(outFolder, 'listen', 'sound'), { recursive: true });
    // `ada.html` is what earlier programs wrote beside a result
    const files = ['listen/sound/ada.webm', 'takes/ada.html', 'takes/old.json', 'takes/old.pdf'];
    for (const file of files) writeFileSync(join(outFolder, file), '');
    const plan = { takes: [take], lost: [], rosterLinesUnused: [], unrecognised: null };
    const ended = (kept: boolean) => [{ name: 'ada', row, report: 'takes/ada.pdf', kept }];
    const old = ['takes/ada.html', 'takes/old.json', 'takes/old.pdf'];
    expect(leftAlone(wanted, plan, ended(true))).toEqual(old);
    expect(leftAlone(wanted, plan, ended(false))).toEqual([...old, 'listen/sound/ada.webm']);
    const dataOnly = { ...wanted, jsonOnly: true };
    expect(leftAlone(dataOnly, plan, ended(false))).toEqual([
      ...['takes/ada.html', 'takes/ada.pdf', 'takes/old.json', 'takes/old.pdf'],
      'listen/sound/ada.webm',
    ]);
    expect(leftAlone({ ...wanted, listen: true }, plan, ended(false))).toEqual(old);
  });
});
