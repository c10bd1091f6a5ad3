import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inspectPdf } from '../helpers/pdf-tools.js';
import { goodTake, SHORT_PART } from './short-part.js';
import { type Ended, everyFile, lines, put, takesheet } from './takesheet.js';

let root = '';

const ROSTER = `file;player;date;mail;chair
a.wav;Ada Lindqvist;02.03.2026;ada@school.example;1
b.wav;李明华;02.03.2026;ming@school.example;2
a2.wav;Ada Lindqvist;09.03.2026;ada@school.example;1
c.wav;CON;02.03.2026;;3
`;

const review = (out: string, ...rest: string[]): Ended =>
  takesheet(root, 'review', '--score', 'etude.musicxml', '--out', out, ...rest, 'takes');
const rows = (path: string): Record<string, string>[] =>
  parse(readFileSync(join(root, path)), { bom: true, columns: true });
const files = (folder: string): string[] => Object.keys(everyFile(join(root, folder)));

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'handout-'));
  put(root, {
    'etude.musicxml': SHORT_PART,
    'roster.csv': ROSTER,
    'takes/a.wav': goodTake({ seed: 1 }),
    'takes/a2.wav': goodTake({ seed: 2 }),
    'takes/b.wav': goodTake({ seed: 3 }),
    'takes/c.wav': goodTake({ seed: 4 }),
  });
  const ended = review('sheets', '--listen', '--roster', 'roster.csv');
  expect(ended).toMatchObject({ status: 0 });
  expect(ended.stderr).toContain('4 of 4 recordings recognised\n');
});

afterAll(() => {
  rmSync(root, { recursive: true });
});

describe('a roster’s further columns', () => {
  it('come last in the section’s table', () => {
    const [first] = rows('sheets/section.csv');
    expect(Object.keys(first ?? {}).slice(-2)).toEqual(['mail', 'chair']);
    expect(rows('sheets/section.csv').map(({ take, date, mail, chair }) => [take, date, mail, chair])).toEqual([
      ['a', '2026-03-02', 'ada@school.example', '1'],
      ['a2', '2026-03-09', 'ada@school.example', '1'],
      ['b', '2026-03-02', 'ming@school.example', '2'],
      ['c', '2026-03-02', '', '3'],
    ]);
  });

  it('may change without anything being listened to again, and stay for section', () => {
    put(root, { 'later.csv': ROSTER.replace(';1\nb', ';4\nb') });
    const ended = review('sheets', '--listen', '--roster', 'later.csv');
    expect(lines(ended.stderr).filter((line) => line.endsWith('as before'))).toHaveLength(4);
    expect(rows('sheets/section.csv').map(({ chair }) => chair)).toEqual(['4', '1', '2', '3']);
    const before = everyFile(join(root, 'sheets'))['section.csv'];
    expect(takesheet(root, 'section', 'sheets').status).toBe(0);
    expect(everyFile(join(root, 'sheets'))['section.csv']).toBe(before);
  });
});

describe('handout', () => {
  it('writes a folder a player, a document to print, a page over everything and a mail table', () => {
    expect(takesheet(root, 'handout', 'sheets')).toEqual({
      status: 0,
      stdout: 'sheets/handout/index.html\nsheets/handout/print.pdf\nsheets/handout/mail.csv\n',
      stderr: '',
    });
    expect(files('sheets/handout')).toEqual([
      'index.html',
      'mail.csv',
      ...[
        ['Ada Lindqvist', 'a2'],
        ['_CON', 'c'],
        ['李明华', 'b'],
      ].flatMap(([player, take]) => [
        `players/${player}/listen/index.html`,
        `players/${player}/listen/sound/${take}.webm`,
        `players/${player}/takes/${take}.pdf`,
      ]),
      'print.pdf',
      'section.pdf',
    ]);
    const [sheets, handout] = [everyFile(join(root, 'sheets')), everyFile(join(root, 'sheets', 'handout'))];
    expect(handout['players/李明华/takes/b.pdf']).toBe(sheets['takes/b.pdf']);
    expect(handout['players/李明华/listen/sound/b.webm']).toBe(sheets['listen/sound/b.webm']);
  });

  it('gives each player a room with their own takes and nobody else’s', () => {
    const room = readFileSync(join(root, 'sheets/handout/players/Ada Lindqvist/listen/index.html'), 'utf8');
    expect(room).toContain('Ada Lindqvist');
    expect(room).toContain('sound/a2.webm');
    expect(room).not.toMatch(/李明华|CON\b|sound\/[abc]\.webm/);
  });

  it('writes a line a take for mail merge, with the roster’s addresses', () => {
    expect(rows('sheets/handout/mail.csv')).toEqual([
      {
        player: 'Ada Lindqvist',
        mail: 'ada@school.example',
        date: '2026-03-09',
        file: 'players/Ada Lindqvist/takes/a2.pdf',
        listening_page: 'players/Ada Lindqvist/listen/index.html',
        subject: 'Your pages: Étude: Four Bars, 9 March 2026',
      },
      expect.objectContaining({ player: 'CON', mail: '' }),
      expect.objectContaining({ player: '李明华', mail: 'ming@school.example', date: '2026-03-02' }),
    ]);
  });

  it('prints each player’s pages from a sheet of their own', () => {
    const pdf = inspectPdf(readFileSync(join(root, 'sheets', 'handout', 'print.pdf')));
    expect(pdf.faults).toBe('');
    expect(pdf.bookmarks.map(({ title }) => title)).toEqual([
      'Ada Lindqvist – Étude: Four Bars',
      'CON – Étude: Four Bars',
      '李明华 – Étude: Four Bars',
    ]);
    expect(pdf.bookmarks.map(({ page }) => page % 2)).toEqual([0, 0, 0]);
    expect(pdf.pages % 2).toBe(0);
    expect(pdf.pageTexts[pdf.bookmarks[2]?.page ?? 0]).toContain('李明华');
  });

  it('leads to files that are there, and to nothing else', () => {
    const page = readFileSync(join(root, 'sheets', 'handout', 'index.html'), 'utf8');
    const places = [...page.matchAll(/(?:href|src)="([^"]*)"/g)].map(([, place = '']) => decodeURIComponent(place));
    expect(new Set(places.map((place) => place.replace(/#take=\w+$/, '')))).toEqual(
      new Set(files('sheets/handout').filter((file) => file !== 'index.html' && !file.endsWith('.webm'))),
    );
    expect(places).toContain('players/Ada Lindqvist/listen/index.html#take=a2');
    expect(page).not.toMatch(/https?:|<script|url\((?!data:)/);
  });

  it('takes every take on request, and writes German where it is told to', () => {
    const ended = takesheet(root, 'handout', 'sheets', '--all', '--language', 'de', '--out', 'all');
    expect(ended.status).toBe(0);
    expect(rows('all/mail.csv').map(({ player, subject }) => [player, subject])).toEqual([
      ['Ada Lindqvist', 'Deine Übeblätter: Étude: Four Bars, 2. März 2026'],
      ['Ada Lindqvist', 'Deine Übeblätter: Étude: Four Bars, 9. März 2026'],
      ['CON', 'Deine Übeblätter: Étude: Four Bars, 2. März 2026'],
      ['李明华', 'Deine Übeblätter: Étude: Four Bars, 2. März 2026'],
    ]);
    expect(readFileSync(join(root, 'all', 'index.html'), 'utf8')).toContain('<html lang="de">');
  });

  it('gives the same bytes each time', () => {
    takesheet(root, 'handout', 'sheets', '--out', 'again');
    expect(everyFile(join(root, 'again'))).toEqual(everyFile(join(root, 'sheets', 'handout')));
  });

  it('hands out every sheet of the section, and what a larger section has left goes with the next writing', () => {
    put(root, { 'sheets/section-2.pdf': readFileSync(join(root, 'sheets', 'section.pdf')) });
    expect(takesheet(root, 'handout', 'sheets', '--out', 'large').status).toBe(0);
    expect(files('large').filter((file) => file.startsWith('section'))).toEqual(['section-2.pdf', 'section.pdf']);
    expect(readFileSync(join(root, 'large', 'index.html'), 'utf8')).toContain('href="section-2.pdf"');
    expect(takesheet(root, 'section', 'sheets').status).toBe(0);
    expect(files('sheets').filter((file) => file.startsWith('section'))).toEqual([
      'section.csv',
      'section.json',
      'section.pdf',
    ]);
  });

  it('names nobody where the results are blind', () => {
    expect(review('blind', '--blind', '--roster', 'roster.csv').status).toBe(0);
    expect(takesheet(root, 'handout', 'blind').status).toBe(0);
    const names = /Lindqvist|李|CON\b|school\.example/;
    for (const file of ['handout/index.html', 'handout/mail.csv', 'section.csv', 'section.json']) {
      expect(readFileSync(join(root, 'blind', file), 'utf8')).not.toMatch(names);
    }
    expect(files('blind/handout').join()).not.toMatch(names);
    expect(inspectPdf(readFileSync(join(root, 'blind', 'handout', 'print.pdf'))).pageTexts.join()).not.toMatch(names);
  });

  it('says what is missing', () => {
    expect(review('data', '--json-only').status).toBe(0);
    expect(takesheet(root, 'handout', 'data')).toMatchObject({
      status: 2,
      stderr: 'takesheet: data: no take in this folder has pages; run review again without --json-only\n',
    });
    expect(takesheet(root, 'handout', 'takes').stderr).toContain('no result of a take is in this folder');
    rmSync(join(root, 'sheets', 'takes', 'c.pdf'));
    const ended = takesheet(root, 'handout', 'sheets', '--out', 'less');
    expect(ended).toMatchObject({
      status: 1,
      stderr: 'takes/c.pdf: this take has a result and no pages; run review again without --json-only\n',
    });
    expect(rows('less/mail.csv')).toHaveLength(2);
  });
});
