import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGLISH_WORDS as ENGLISH } from '../helpers/english-words.js';
import { inspectPdf } from '../helpers/pdf-tools.js';
import { goodTake, otherTake, SHORT_PART } from './short-part.js';
import { type Ended, everyFile, lines, put, readJson, takesheet } from './takesheet.js';

interface Document {
  readonly takes: number;
  readonly pieces: readonly {
    readonly players: readonly {
      readonly player: string;
      readonly measures: readonly {
        readonly measure: string;
        readonly sinceFirst: { readonly verdict: string } | null;
      }[];
      readonly gaps: readonly { readonly why: string }[];
    }[];
  }[];
}

let root = '';
const review = (week: string): Ended =>
  takesheet(root, 'review', '--score', 'part.musicxml', '--out', `sheets/${week}`, '--json-only', week);

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'progress-'));
  put(root, {
    'part.musicxml': SHORT_PART,
    'week1/2026-03-02_Ada-Lindqvist.wav': goodTake({ seed: 2, tempoFactor: 0.8 }),
    'week1/2026-03-02_Ben-Ito.wav': goodTake({ seed: 3 }),
    'week2/2026-03-09_Ada-Lindqvist.wav': goodTake({ seed: 4, tempoFactor: 1 }),
    'week2/2026-03-09_Ben-Ito.wav': otherTake(),
    'week2/2026-03-10_Ben-Ito.wav': new Uint8Array(10),
  });
  review('week1');
  review('week2');
});

afterAll(() => rmSync(root, { recursive: true }));

describe('progress', () => {
  it('writes the sheet into the first folder and says where', () => {
    const ended = takesheet(root, 'progress', 'sheets');
    expect(ended).toEqual({ status: 0, stdout: 'sheets/progress.pdf\n', stderr: '' });
    const pdf = inspectPdf(readFileSync(join(root, 'sheets/progress.pdf')));
    const text = pdf.pageTexts.join(' ').replace(/\s+/g, ' ');
    expect(pdf.faults).toBe('');
    expect(text).toContain('Étude: Four Bars');
    expect(text).toMatch(/The tempo has come nearer to the mark: (99|100|101) % of the mark \(2 March: (79|80|81)\)\./);
    expect(text).toContain('Not counted, because it does not fit the part: 9 March.');
    expect(text).toContain('Not counted, because it could not be read: the take of 10 March');
  });

  // The takes are played at 0.8 and 1 of the mark, so the tempo has come nearer: known from how they were made.
  it('writes the same as data, valid against the published schema', () => {
    expect(takesheet(root, 'progress', 'sheets/week2', 'sheets/week1', '--format', 'json', '--out', 'out').stdout).toBe(
      'out/progress.json\n',
    );
    const document = readJson<Document & Record<string, unknown>>(join(root, 'out/progress.json'));
    const validate = new Ajv2020().compile(JSON.parse(takesheet(root, 'schema', '--progress').stdout));
    expect([validate(document), validate.errors]).toEqual([true, null]);
    const [ada, ben] = document.pieces[0]?.players ?? [];
    expect([document.takes, ada?.player, ben?.player]).toEqual([4, 'Ada Lindqvist', 'Ben Ito']);
    expect(ada?.measures.find(({ measure }) => measure === 'tempo')?.sinceFirst?.verdict).toBe('better');
    expect(ben?.gaps.map(({ why }) => why)).toEqual(['not-this-score', 'failed']);
  });

  it('gives the same bytes again', () => {
    for (const out of ['one', 'two']) takesheet(root, 'progress', 'sheets', '--out', out);
    expect(everyFile(join(root, 'one'))).toEqual(everyFile(join(root, 'two')));
  });

  it('compares what it can read, names what it cannot, and ends with 1', () => {
    put(root, { 'late/x.json': '{"format":"take-result","version":2}', 'late/y.json': '{"format":' });
    const ended = takesheet(root, 'progress', 'sheets', 'late', '--format', 'json', '--out', 'some');
    expect([ended.status, ended.stdout]).toEqual([1, 'some/progress.json\n']);
    expect(lines(ended.stderr)).toEqual([
      expect.stringMatching(/^late\/x\.json: this is a result of version 2, and version 1 is read; /),
      expect.stringMatching(/^late\/y\.json: this is not whole JSON, /),
    ]);
  });

  it.each<[string, string[], RegExp]>([
    [
      'an empty folder',
      ['empty'],
      /^takesheet: empty: no result of a take was found; give folders that review has written$/,
    ],
    ['no such folder', ['none'], /^takesheet: none: there is no such file/],
    ['only results of another version', ['other'], /^takesheet: other\/x\.json: this is a result of version 2/],
    ['no folder named', [], /^takesheet: missing required argument 'results'/],
    ['an unknown format', ['sheets', '--format', 'png'], /Allowed choices are pdf, json/],
    [
      'a place below a file',
      ['sheets', '--out', 'part.musicxml/x'],
      /part\.musicxml\/x\/progress\.pdf: cannot write here/,
    ],
  ])('%s gets one line, exit status 2, and nothing is written', (_what, words, line) => {
    put(root, { 'empty/x.txt': '', 'other/x.json': '{"format":"take-result","version":2}' });
    const before = everyFile(root);
    const ended = takesheet(root, 'progress', ...words);
    expect([ended.status, ended.stdout]).toEqual([2, '']);
    expect(lines(ended.stderr)).toEqual([expect.stringMatching(line)]);
    expect(everyFile(root)).toEqual(before);
  });
});

describe('a German section', () => {
  const textOf = (file: string): string =>
    inspectPdf(readFileSync(join(root, file)))
      .pageTexts.join(' ')
      .replace(/\s+/g, ' ');
  const languageOf = (file: string): unknown => readJson(join(root, file)).language;

  beforeAll(() => {
    takesheet(root, 'review', '--score', 'part.musicxml', '--out', 'de', '--language', 'de', 'week1', 'week2');
  });

  // Source: BCP 47 for the tag; ISO 32000-1, 14.9.2 (natural language of a document).
  it('has its sheet in German, with what could not be read', () => {
    const pdf = inspectPdf(readFileSync(join(root, 'de/section.pdf')));
    expect([pdf.catalog['/Lang'], languageOf('de/section.json')]).toEqual(['u:de', 'de']);
    const text = textOf('de/section.pdf').replaceAll('Étude: Four Bars', '');
    expect(text).toContain('Wer was braucht');
    expect(text).toContain('Das ist keine Aufnahme bekannter Art; nötig ist eine Aufnahme');
    expect(text).not.toMatch(ENGLISH);
  });

  it('is brought together and followed in the language of its results, or in the other one', () => {
    const before = everyFile(join(root, 'de'));
    expect(takesheet(root, 'section', 'de').stderr).toMatch(
      /this is no recording of a known kind; a recording is needed/,
    );
    expect(everyFile(join(root, 'de'))).toEqual(before);
    expect(takesheet(root, 'progress', 'de', '--out', 'german.pdf').status).toBe(0);
    expect(textOf('german.pdf')).toContain('Nicht gezählt, weil nicht zu den Noten passend: 9. März.');
    expect(textOf('german.pdf').replaceAll('Étude: Four Bars', '')).not.toMatch(ENGLISH);
    takesheet(root, 'section', 'de', '--language', 'en');
    expect([languageOf('de/section.json'), textOf('de/section.pdf')]).toEqual([
      'en',
      expect.stringContaining('this is no recording of a known kind; a recording is needed'),
    ]);
    takesheet(root, 'progress', 'de', '--language', 'en', '--out', 'english.pdf');
    const english = textOf('english.pdf');
    expect(english).toMatch(/The tempo has come nearer to the mark/);
    expect(english).not.toMatch(/\b(?:nicht|Takt|Noten|beurteilt|zu)\b/);
  });
});

describe('a section under numbers', () => {
  const blind = (out: string, ...takes: string[]): Ended =>
    takesheet(root, 'review', '--score', 'part.musicxml', '--out', out, '--json-only', '--blind', ...takes);
  const playersOf = (file: string) => readJson<Document>(join(root, file)).pieces[0]?.players ?? [];

  it('is followed when all its weeks are in one folder', () => {
    blind('blind/all', 'week1', 'week2');
    expect(takesheet(root, 'progress', 'blind/all', '--format', 'json').status).toBe(0);
    const players = playersOf('blind/all/progress.json');
    expect(players.map(({ player }) => player)).toEqual(['01', '02']);
    const verdicts = players.map(
      ({ measures }) => measures.find(({ measure }) => measure === 'tempo')?.sinceFirst?.verdict ?? null,
    );
    expect(verdicts.toSorted()).toEqual(['better', null]);
  });

  it('is not followed from folder to folder, and is told so in one line', () => {
    blind('blind/one', 'week1');
    blind('blind/two', 'week2');
    const before = everyFile(root);
    const ended = takesheet(root, 'progress', 'blind/one', 'blind/two');
    expect([ended.status, ended.stdout]).toEqual([2, '']);
    expect(lines(ended.stderr)).toEqual([
      expect.stringMatching(
        /^takesheet: blind\/one, blind\/two: numbers stand here instead of names, .*blind-key\.csv$/,
      ),
    ]);
    expect(everyFile(root)).toEqual(before);
    const named = takesheet(root, 'progress', 'sheets', 'blind/one', '--format', 'json', '--out', 'named');
    expect(named).toMatchObject({ status: 0, stdout: 'named/progress.json\n' });
    expect(playersOf('named/progress.json').map(({ player }) => player)).toEqual(['Ada Lindqvist', 'Ben Ito']);
  });
});
