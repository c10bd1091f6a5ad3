import { mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readDocument } from '../../src/batch/history/read-document.js';
import { readHistory } from '../../src/batch/history/read-history.js';
import { runProgress } from '../../src/batch/index.js';
import { compiledTakeResult, toTakeResult } from '../../src/result/index.js';
import { failureInWords, inWords } from '../helpers/in-words.js';
import { inspectPdf } from '../helpers/pdf-tools.js';
import { sampleReview } from '../helpers/sample-review.js';
import { takeOfWeeks } from '../helpers/weeks.js';
import { put } from '../journeys/takesheet.js';

let root = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'history-'));
});
afterEach(() => rmSync(root, { recursive: true }));

const { result } = takeOfWeeks();
const text = (document: unknown): string => JSON.stringify(document);
const bytes = (document: unknown): Uint8Array => new TextEncoder().encode(text(document));

describe('a document of the record', () => {
  it('comes back as it was written', () => {
    expect(readDocument(bytes(result))).toEqual({ kind: 'take', result });
  });

  it('is not read when it is something else', () => {
    for (const other of [{}, [], 3, null, 'x', { format: 'progress-result', version: 1 }, { name: 'package' }]) {
      expect(readDocument(bytes(other))).toBeNull();
    }
  });

  it.each<[string, Uint8Array, RegExp]>([
    ['cut off', bytes(result).slice(0, 200), /^this is not whole JSON.*review the takes again$/],
    ['empty', new Uint8Array(), /^this is not whole JSON/],
    ['not UTF-8', Uint8Array.of(0x22, 0xff, 0x22), /^this is not whole JSON/],
    [
      'of a later version',
      bytes({ ...result, version: 2, tool: { name: 'takesheet', version: '3.1.4' } }),
      /^this is a result of version 2, written by takesheet 3\.1\.4, and version 1 is read; use the program that wrote it, or review/,
    ],
    ['without a version', bytes({ ...result, version: undefined }), /^this is a result that names no version/],
    ['a section of a later version', bytes({ format: 'section-result', version: 9 }), /^this is a result of version 9/],
    [
      'not as its schema says',
      bytes({ ...result, outcome: 'splendid' }),
      /^this result is not as its schema says, at outcome; review the take again$/,
    ],
  ])('%s is refused in one line', (_what, file, line) => {
    expect(() => readDocument(file)).toThrow(expect.objectContaining({ name: 'InputError', code: 'bad-result' }));
    expect(inWords(() => readDocument(file))).toThrow(line);
  });

  // The contract is a file of its own, written before the project: what it does not require, early programs did not write.
  it('is read when it holds only what the contract requires', () => {
    const contract = JSON.parse(
      readFileSync(new URL('../../fixtures/contract/take-result.schema.json', import.meta.url), 'utf8'),
    );
    const early = {
      ...only(result, contract.required),
      tuning: result.tuning,
      tempo: 'notMeasured' in result.tempo ? result.tempo : { markedQuarterBpm: 96, playedQuarterBpm: 92 },
      notes: result.notes.map((note) => only(note, contract.properties.notes.items.required)),
      added: [],
      restarts: [],
      levels: result.levels.map((level) => only(level, contract.properties.levels.items.required)),
      contrasts: result.contrasts.map((one) => only(one, contract.properties.contrasts.items.required)),
      hairpins: result.hairpins.map((one) => only(one, contract.properties.hairpins.items.required)),
      fermatas: [],
      findings: [{ ...{ kind: 'wrong-note', criterion: 'notes', weight: 'fix', bar: '3', pass: 1, text: 'B.' } }],
    };
    expect(new Ajv2020({ strict: false }).validate(contract, early)).toBe(true);
    expect(compiledTakeResult().safeParse(early).success).toBe(false);
    const read = readDocument(bytes(early));
    if (read?.kind !== 'take') throw new Error('not read');
    const right = early.notes.filter((note) => note.status === 'as-written').length;
    expect(read.result.fit.share).toBeCloseTo(right / early.notes.length, 4);
    expect(read.result.contrasts[0]?.registerAdjustedDb).toHaveProperty('notMeasured');
    expect(read.result.criteria.find(({ criterion }) => criterion === 'notes')).toMatchObject({ fix: 1, judged: true });
    expect(read.result.groups).toBeUndefined();
  });

  it('knows from the summary what was not judged, where nothing else says so', () => {
    const criteria = result.criteria.map(({ criterion, fix, watch }) => ({
      ...{ criterion, fix, watch },
      summary: criterion === 'articulation' ? 'not judged: all slurred for practice' : 'fine',
    }));
    const read = readDocument(bytes({ ...result, criteria }));
    if (read?.kind !== 'take') throw new Error('not read');
    expect(read.result.criteria.filter(({ judged }) => judged === false).map(({ criterion }) => criterion)).toEqual([
      'articulation',
    ]);
  });
});

function only(object: object, keys: readonly string[]): Record<string, unknown> {
  return Object.fromEntries(Object.entries(object).filter(([key]) => keys.includes(key)));
}

describe('the record', () => {
  it('is every result below the folders, each file once, in order, whatever else lies there', () => {
    put(root, {
      'b/takes/x.json': text(result),
      'a/deep/er/x.json': text(result),
      'a/.hidden/x.json': text(result),
      'a/package.json': '{"name":"x"}',
      'a/notes.txt': '{',
    });
    symlinkSync('..', join(root, 'a', 'round'));
    const { results, failures } = readHistory([join(root, 'b'), join(root, 'a'), join(root, 'b/takes/x.json')]);
    expect(results.map(({ file }) => file)).toEqual(['a/deep/er/x.json', 'b/takes/x.json']);
    expect(failures).toEqual([]);
  });

  it('costs one line for each file that cannot be read, and the others are read', () => {
    put(root, {
      'a/good.json': text(result),
      'a/late.json': text({ ...result, version: 4 }),
      'a/cut.json': '{"format":"take-result"',
      'other.json': '{}',
    });
    const { results, failures } = readHistory([join(root, 'a'), join(root, 'none'), join(root, 'other.json')]);
    expect(results).toHaveLength(1);
    expect(failures.map(({ file, code }) => [file, code]).sort()).toEqual([
      ['a/cut.json', 'bad-result'],
      ['a/late.json', 'bad-result'],
      ['none', 'no-such-file'],
      ['other.json', 'bad-result'],
    ]);
    for (const failure of failures) expect(failureInWords(failure)).not.toContain(root);
  });

  it('knows takes that were lost when they were reviewed', () => {
    const { score, tool } = result;
    const failures = [{ file: 'w/2026-03-09_Bo-Ek.wav', code: 'wav-damaged', message: 'the file ends too early' }];
    const section = {
      format: 'section-result',
      version: 1,
      tool,
      score,
      players: 0,
      bars: [],
      takes: [],
      troubles: [],
    };
    put(root, { 'section.json': text({ ...section, failures }) });
    expect(readHistory([root]).lost).toEqual([
      {
        ...{ file: 'w/2026-03-09_Bo-Ek.wav', player: 'Bo Ek', date: '2026-03-09' },
        fault: { code: 'told-before', facts: { said: 'the file ends too early' } },
        ...{ scoreSha256: score.sha256, place: root },
      },
    ]);
  });
});

describe('a run', () => {
  const tool = { name: 'takesheet', version: '0.1.0' };
  const run = (inputs: string[], out?: string) =>
    runProgress({ tool, inputs: inputs.map((input) => join(root, input)), out, format: 'json', paper: 'a4' });

  it('writes into the first folder, or where it is told to', async () => {
    put(root, { 'a/x.json': text(result), 'b/x.json': text(result) });
    expect((await run(['b', 'a'])).sheetPaths).toEqual([join(root, 'b', 'progress.json')]);
    expect((await run(['a/x.json'], join(root, 'new'))).sheetPaths).toEqual([join(root, 'new', 'progress.json')]);
    expect((await run(['a'], join(root, 'mine.json'))).sheetPaths).toEqual([join(root, 'mine.json')]);
  });

  it('reads its own output as no result, so that it can be run again', async () => {
    put(root, { 'a/x.json': text(result) });
    await run(['a']);
    const before = readFileSync(join(root, 'a/progress.json'));
    expect((await run(['a'])).failures).toEqual([]);
    expect(readFileSync(join(root, 'a/progress.json')).equals(before)).toBe(true);
  });

  it('refuses what holds no result, and what would write over one', async () => {
    put(root, { 'empty/x.txt': '', 'late/x.json': text({ ...result, version: 4 }), 'a/progress.json': text(result) });
    await expect(run(['empty'])).rejects.toMatchObject({ code: 'no-results' });
    await expect(inWords(() => run(['late']))()).rejects.toThrow(/late\/x\.json: this is a result of version 4/);
    await expect(run(['a/progress.json'])).rejects.toMatchObject({ code: 'bad-option' });
  });

  it('tells in the language of the results when they agree, in English when they do not, and as it is asked', async () => {
    const german = { ...takeOfWeeks().result, language: 'de' };
    put(root, { 'de/x.json': text(german), 'en/x.json': text(result) });
    const languageOf = async (inputs: string[], language?: 'en' | 'de') => {
      const { sheetPaths } = await runProgress({
        ...{ tool, inputs: inputs.map((input) => join(root, input)), out: join(root, 'out'), language },
        ...{ format: 'json', paper: 'a4' },
      });
      return JSON.parse(readFileSync(String(sheetPaths[0]), 'utf8')).language;
    };
    expect(await languageOf(['de'])).toBe('de');
    expect(await languageOf(['en'])).toBe('en');
    expect(await languageOf(['de', 'en'])).toBe('en');
    expect(await languageOf(['de', 'en'], 'de')).toBe('de');
  });

  it('goes on in further files when there are more players than one sheet holds', async () => {
    const short = toTakeResult(sampleReview({ bars: 1, fit: 'nothing', findings: [] }));
    const names = Array.from({ length: 151 }, (_, i) => `Player ${String(i).padStart(3, '0')}`);
    const documents = names.map((player, i) => {
      const take = { ...short.take, player, sha256: i.toString(16).padStart(64, '0') };
      return [`many/takes/${i}.json`, text({ ...short, take })];
    });
    put(root, { ...Object.fromEntries(documents), 'many/takes/late.json': text({ ...result, version: 4 }) });
    const ended = await runProgress({
      ...{ tool, inputs: [join(root, 'many')], out: join(root, 'school.pdf'), format: 'pdf', paper: 'a4' },
    });
    expect(ended.sheetPaths).toEqual([join(root, 'school.pdf'), join(root, 'school-2.pdf')]);
    const texts = ended.sheetPaths.map((path) =>
      inspectPdf(readFileSync(path)).pageTexts.join(' ').replace(/\s+/g, ' '),
    );
    expect(texts.map((said) => names.filter((name) => said.includes(name)).length)).toEqual([150, 1]);
    expect(texts[0]).toContain('Sheet 1 of 2: Player 000 to Player 149');
    expect(texts[1]).toContain('Sheet 2 of 2: Player 150 to Player 150');
    expect(texts.map((said) => said.includes('late.json'))).toEqual([true, false]);
    const whole = await run(['many']);
    expect(JSON.parse(readFileSync(String(whole.sheetPaths[0]), 'utf8')).pieces[0].players).toHaveLength(151);
  });
});
