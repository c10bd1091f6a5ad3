import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { inspectPdf } from '../helpers/pdf-tools.js';
import { goodTake, SHORT_PART } from './short-part.js';
import { everyFile, lines, put, readJson, takesheet } from './takesheet.js';

let root = '';

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'study-'));
  put(root, { 'etude.musicxml': SHORT_PART });
});

const made: string[] = [];
beforeEach(() => made.push(root));
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true });
});

describe('study', () => {
  it('writes the sheet beside the étude and says where', () => {
    expect(takesheet(root, 'study', 'etude.musicxml')).toEqual({ status: 0, stdout: 'etude.study.pdf\n', stderr: '' });
    const pdf = inspectPdf(readFileSync(join(root, 'etude.study.pdf')));
    expect(pdf.faults).toBe('');
    expect(pdf.title).toBe('Étude: Four Bars – Study sheet');
  });

  it('writes where it is told to, a file or a folder, as pages or as data', () => {
    expect(takesheet(root, 'study', 'etude.musicxml', '--out', 'mine/sheet.pdf').stdout).toBe('mine/sheet.pdf\n');
    expect(takesheet(root, 'study', 'etude.musicxml', '--out', 'data', '--format', 'json').status).toBe(0);
    const plan = readJson(join(root, 'data', 'etude.study.json'));
    expect(plan).toMatchObject({ format: 'study-plan', version: 1, title: 'Étude: Four Bars', bars: 4 });
    expect(Object.keys(everyFile(root))).toEqual(['data/etude.study.json', 'etude.musicxml', 'mine/sheet.pdf']);
  });

  it('writes it in German on request, as pages and as data', () => {
    put(root, { 'own.yaml': 'watch:\n  - { bar: 2, reason: "Think of the ferry." }\n' });
    const words = ['study', 'etude.musicxml', '--language', 'de', '--brief', 'own.yaml'];
    expect(takesheet(root, ...words)).toMatchObject({ status: 0, stdout: 'etude.study.pdf\n' });
    const pdf = inspectPdf(readFileSync(join(root, 'etude.study.pdf')));
    expect([pdf.faults, pdf.catalog['/Lang'], pdf.title]).toEqual(['', 'u:de', 'Étude: Four Bars – Übeblatt']);
    expect(pdf.pageTexts.join(' ')).toMatch(/Think of the ferry\.[\s\S]*Übe mit Bedacht/);
    expect(takesheet(root, ...words, '--format', 'json').status).toBe(0);
    const plan = readJson<{ practice: { title: string }[] }>(join(root, 'etude.study.json'));
    expect(plan).toMatchObject({ format: 'study-plan', language: 'de', bars: 4 });
    expect(plan.practice[0]?.title).toBe('Lies, bevor du spielst');
  });

  it('writes a starter brief where there is none, and the same sheet with it the next time', () => {
    const words = ['study', 'etude.musicxml', '--brief', 'etude.brief.yaml'];
    const first = takesheet(root, ...words);
    expect(first).toMatchObject({ status: 0, stdout: 'etude.study.pdf\n' });
    expect(lines(first.stderr)).toEqual([
      expect.stringMatching(/^etude\.brief\.yaml was not there; wrote a starter brief/),
    ]);
    const before = everyFile(root);
    const second = takesheet(root, ...words);
    expect(lines(second.stderr)).toEqual(['used the brief etude.brief.yaml']);
    expect(everyFile(root)).toEqual(before);
  });

  it('follows the brief, and so does the review', () => {
    put(root, {
      'slow.yaml': 'title: Four Slow Bars\ntempo: { quarterBpm: 60 }\ncriteria: { tempo: off }\n',
      'takes/ada.wav': goodTake(),
    });
    takesheet(root, 'study', 'etude.musicxml', '--brief', 'slow.yaml', '--format', 'json');
    expect(readJson(join(root, 'etude.study.json'))).toMatchObject({
      title: 'Four Slow Bars',
      tempo: { quarterBpm: 60 },
    });
    const review = takesheet(
      root,
      'review',
      '--score',
      'etude.musicxml',
      '--brief',
      'slow.yaml',
      '--out',
      'out',
      'takes',
    );
    expect(review.status).toBe(0);
    const result = readJson<{
      score: { title: string };
      tempo: object;
      criteria: { criterion: string; summary: string }[];
    }>(join(root, 'out', 'takes', 'ada.json'));
    expect(result.score.title).toBe('Four Slow Bars');
    expect(result.tempo).toMatchObject({ markedQuarterBpm: 60 });
    const tempo = result.criteria.find(({ criterion }) => criterion === 'tempo');
    expect(tempo?.summary).toBe('not judged: the brief leaves it out');
  });
});

describe('a wrong request to study', () => {
  it.each<[string, string[], RegExp]>([
    ['no such étude', ['none.musicxml'], /^takesheet: none\.musicxml: there is no such file/],
    ['no étude named', [], /^takesheet: missing required argument 'étude'/],
    [
      'a brief with a mistake',
      ['etude.musicxml', '--brief', 'bad.yaml'],
      /^takesheet: bad\.yaml: line 2: played is "loud"/,
    ],
    ['a brief that is a folder', ['etude.musicxml', '--brief', 'folder'], /^takesheet: folder: this is a folder/],
    [
      'a place below a file',
      ['etude.musicxml', '--out', 'bad.yaml/x', '--brief', 'new.yaml'],
      /^takesheet: bad\.yaml\/x\/etude\.study\.pdf: cannot write here/,
    ],
    [
      'a starter below a file',
      ['etude.musicxml', '--brief', 'bad.yaml/new.yaml'],
      /^takesheet: bad\.yaml\/new\.yaml: /,
    ],
    ['the étude as the sheet', ['odd.pdf', '--out', 'odd.pdf'], /^takesheet: odd\.pdf: the sheet would take the place/],
    ['an unknown language', ['etude.musicxml', '--language', 'fr'], /Allowed choices are en, de/],
    ['an unknown format', ['etude.musicxml', '--format', 'png'], /Allowed choices are pdf, json/],
  ])('%s gets one line, exit status 2, and nothing is written', (_what, words, line) => {
    put(root, { 'bad.yaml': 'title: x\nplayed: loud\n', 'folder/x.txt': '', 'odd.pdf': SHORT_PART });
    const before = readdirSync(root, { recursive: true });
    const ended = takesheet(root, 'study', ...words);
    expect(ended.stdout).toBe('');
    expect(lines(ended.stderr)).toEqual([expect.stringMatching(line)]);
    expect(ended.status).toBe(2);
    expect(readdirSync(root, { recursive: true })).toEqual(before);
  });

  it('to review with a brief that is not there is told so', () => {
    put(root, { 'good.wav': goodTake() });
    const words = ['review', '--score', 'etude.musicxml', '--brief', 'none.yaml', '--out', 'out', 'good.wav'];
    expect(takesheet(root, ...words)).toMatchObject({
      status: 2,
      stderr: 'takesheet: none.yaml: there is no such file; check the name\n',
    });
  });
});
