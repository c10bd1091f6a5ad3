import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inspectPdf } from '../helpers/pdf-tools.js';
import { goodTake, SHORT_PART } from './short-part.js';
import { type Ended, everyFile, lines, PROJECT, put, readJson, takesheet } from './takesheet.js';

let root = '';
let ended: Ended;

const review = (out: string, ...rest: string[]): Ended =>
  takesheet(root, 'review', '--score', 'part.musicxml', '--out', out, 'takes', ...rest);

/** Records say what a result was made from, whether with pages or without. */
const withoutRecords = (files: Record<string, string>): Record<string, string> =>
  Object.fromEntries(Object.entries(files).filter(([file]) => !file.startsWith('records/')));

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'results-'));
  put(root, {
    'part.musicxml': SHORT_PART,
    'takes/week1/ada.wav': goodTake({ seed: 2 }),
    'takes/week2/ada.wav': goodTake({ seed: 3 }),
    'takes/2026-03-02_Ben-Ito.wav': goodTake({ seed: 4, tempoFactor: 0.9 }),
  });
  ended = review('out', '--jobs', '2');
});

afterAll(() => {
  rmSync(root, { recursive: true });
});

describe('a review', () => {
  it('writes two files and a record a take, and three for all of them', () => {
    expect(Object.keys(everyFile(join(root, 'out', 'records')))).toHaveLength(3);
    expect(Object.keys(withoutRecords(everyFile(join(root, 'out'))))).toEqual([
      'section.csv',
      'section.json',
      'section.pdf',
      'takes/2026-03-02_Ben-Ito.json',
      'takes/2026-03-02_Ben-Ito.pdf',
      'takes/week1--ada.json',
      'takes/week1--ada.pdf',
      'takes/week2--ada.json',
      'takes/week2--ada.pdf',
    ]);
  });

  // The part is laid out in a thread of its own and sent to the workers; a page without excerpts would be no error.
  it('shows what was found in notes', () => {
    const faults = [{ kind: 'wrong-note', at: { bar: '3', beat: 1 }, semitones: 2 }] as const;
    put(root, { 'slip/eve.wav': goodTake({ seed: 5, faults }) });
    for (const jobs of ['1', '2']) {
      const words = ['--score', 'part.musicxml', '--out', `slip-${jobs}`, '--jobs', jobs, 'slip'];
      expect(takesheet(root, 'review', ...words).status).toBe(0);
      const { elements } = inspectPdf(readFileSync(join(root, `slip-${jobs}`, 'takes', 'eve.pdf')));
      const figures = elements.filter(({ alternative }) => /of the part in notes/.test(alternative ?? ''));
      expect(figures).toHaveLength(1);
    }
  });

  it('prints one line a take in the order of names, and where its report is', () => {
    expect(ended.status).toBe(0);
    expect(lines(ended.stdout).map((line) => [line.split('\t')[0], line.split('\t')[4]])).toEqual([
      ['2026-03-02_Ben-Ito', 'takes/2026-03-02_Ben-Ito.pdf'],
      ['week1--ada', 'takes/week1--ada.pdf'],
      ['week2--ada', 'takes/week2--ada.pdf'],
    ]);
    expect(lines(ended.stderr).sort()).toHaveLength(3);
  });

  it('tells takes of one name apart in their content, too', () => {
    const [one, two] = ['week1', 'week2'].map((week) => readJson(join(root, 'out', 'takes', `${week}--ada.json`)).take);
    expect(one).toMatchObject({ file: 'ada.wav', player: null, date: null });
    expect(two).toMatchObject({ file: 'ada.wav' });
    expect(one).not.toEqual(two);
  });

  it('takes player and day from the file name', () => {
    const { take } = readJson(join(root, 'out', 'takes', '2026-03-02_Ben-Ito.json'));
    expect(take).toMatchObject({ file: '2026-03-02_Ben-Ito.wav', player: 'Ben Ito', date: '2026-03-02' });
  });

  it('gives the same bytes again, in one process as in several', () => {
    review('again', '--jobs', '1');
    expect(everyFile(join(root, 'again'))).toEqual(everyFile(join(root, 'out')));
  });

  it('writes no PDF when only JSON is wanted, and the same JSON', () => {
    const json = review('json', '--json-only');
    const expected = Object.entries(everyFile(join(root, 'out'))).filter(([file]) => !file.endsWith('.pdf'));
    expect(withoutRecords(everyFile(join(root, 'json')))).toEqual(withoutRecords(Object.fromEntries(expected)));
    expect(lines(json.stdout)[1]).toMatch(/\ttakes\/week1--ada\.json$/);
  });

  it('writes Letter pages when they are wanted', () => {
    review('letter', '--paper', 'letter', '--jobs', '1');
    const page = (out: string): string => readFileSync(join(root, out, 'takes/week1--ada.pdf'), 'latin1');
    // Letter is 8.5 by 11 inches (ANSI/ASME Y14.1 size A), A4 is 210 by 297 mm (ISO 216), a point is 1/72 inch (ISO 32000-1).
    expect(page('letter')).toMatch(/\/MediaBox \[0 0 612(?:\.0+)? 792(?:\.0+)?\]/);
    expect(page('out')).toMatch(/\/MediaBox \[0 0 595\.\d+ 841\.\d+\]/);
  });

  // Source: BCP 47 for the tag; ISO 32000-1, 14.9.2 (natural language of a document).
  it('writes German pages when they are wanted, in place of English ones that stand there', () => {
    const day = '2026-03-02_Ben-Ito';
    const read = (ending: string): string => readFileSync(join(root, 'two', `takes/${day}.${ending}`), 'latin1');
    review('two', '--jobs', '1');
    expect(read('pdf')).toMatch(/\/Lang \(en\)/);
    const german = review('two', '--jobs', '1', '--language', 'de');
    expect(german.stderr).not.toContain('as before');
    expect(read('pdf')).toMatch(/\/Lang \(de\)/);
    expect(readJson(join(root, 'two', `takes/${day}.json`))).toMatchObject({ language: 'de' });
    const again = review('two', '--jobs', '1', '--language', 'de');
    expect(again.stderr).toContain('as before');
  });
});

describe('standard output', () => {
  it('may be left early by who reads it', () => {
    const pipe = '"$0" "$1" schema | true';
    const ended = spawnSync('sh', ['-c', pipe, process.execPath, join(PROJECT, 'bin', 'takesheet.js')], {
      encoding: 'utf8',
    });
    expect(ended.stderr).toBe('');
  });
});

describe('the published schema', () => {
  // JSON Schema 2020-12, read by ajv.
  const validator = (...words: string[]): ((document: unknown) => boolean) =>
    new Ajv2020().compile(JSON.parse(takesheet(root, 'schema', ...words).stdout));

  it('holds for the documents', () => {
    const take = validator();
    const section = validator('--section');
    expect(take(readJson(join(root, 'out', 'takes', 'week1--ada.json')))).toBe(true);
    expect(section(readJson(join(root, 'out', 'section.json')))).toBe(true);
    expect(section(readJson(join(root, 'out', 'takes', 'week1--ada.json')))).toBe(false);
  });
});
