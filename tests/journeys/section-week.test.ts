import { spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { goodTake, OTHER_PART, otherTake, SHORT_PART } from './short-part.js';
import { type Ended, everyFile, lines, put, readJson, takesheet } from './takesheet.js';

interface Take {
  readonly take: {
    readonly file: string;
    readonly player: string | null;
    readonly date: string | null;
    readonly instrument?: string;
  };
  readonly score: { readonly file: string };
  readonly outcome: string;
}

let root = '';

const review = (out: string, ...rest: string[]): Ended =>
  takesheet(root, 'review', '--json-only', '--out', out, ...rest);
const ofPart = ['--score', 'part.musicxml', 'takes'];
const take = (out: string, name: string): Take => readJson<Take>(join(root, out, 'takes', `${name}.json`));
const files = (out: string): Record<string, string> => everyFile(join(root, out));
const rows = (path: string): Record<string, string>[] =>
  parse(readFileSync(join(root, path)), { bom: true, columns: true });
const kept = (ended: Ended): string[] =>
  lines(ended.stderr).flatMap((line) => /^\d+\/\d+ (\S+): .*as before$/.exec(line)?.[1] ?? []);

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'section-week-'));
  put(root, {
    'part.musicxml': SHORT_PART,
    'scores/flute.musicxml': SHORT_PART,
    'scores/other.musicxml': OTHER_PART,
    'takes/Ada.wav': goodTake({ seed: 1 }),
    'takes/Ben.wav': goodTake({ seed: 2 }),
    'takes/song.mp3': 'ID3',
    'both/one.wav': goodTake({ seed: 1 }),
    'both/two.wav': otherTake(),
  });
});

afterAll(() => {
  rmSync(root, { recursive: true });
});

describe('week after week', () => {
  it('listens only to what is new or changed, and to everything when it is told to', () => {
    const out = 'weeks';
    expect(kept(review(out, ...ofPart))).toEqual([]);
    const first = files(out);
    const again = review(out, ...ofPart);
    expect(kept(again).sort()).toEqual(['Ada', 'Ben']);
    expect(lines(again.stdout)).toHaveLength(3);
    expect(files(out)).toEqual(first);
    expect(kept(review(out, ...ofPart, '--again'))).toEqual([]);
    expect(files(out)).toEqual(first);

    put(root, { 'takes/Ben.wav': goodTake({ seed: 9 }), 'takes/Cy.wav': goodTake({ seed: 3 }) });
    expect(kept(review(out, ...ofPart))).toEqual(['Ada']);

    put(root, { 'part.brief.yaml': 'tempo: 90\n' });
    expect(kept(review(out, ...ofPart, '--brief', 'part.brief.yaml'))).toEqual([]);
    put(root, { 'takes/Ben.wav': goodTake({ seed: 2 }) });
    rmSync(join(root, 'takes', 'Cy.wav'));
  });

  it('leaves results of takes that are gone alone, says so, and does not count them', () => {
    const out = 'gone';
    put(root, { 'takes/Cy.wav': goodTake({ seed: 3 }) });
    review(out, ...ofPart);
    rmSync(join(root, 'takes', 'Cy.wav'));
    const ended = review(out, ...ofPart);
    expect(ended.stderr).toMatch(/left alone and not counted.*: takes\/Cy\.json\n/);
    expect(existsSync(join(root, out, 'takes', 'Cy.json'))).toBe(true);
    expect(rows(`${out}/section.csv`).map((row) => row.take)).toEqual(['Ada', 'Ben', 'song']);
  });
});

describe('a roster', () => {
  it('says who played what and when', () => {
    put(root, {
      'roster.csv': '\uFEFFplayer;file;date;instrument\r\nÁda Lindqvist;Ada.wav;2026-03-02;flute\r\n;Cy.wav;;\r\n',
    });
    const ended = review('roster', ...ofPart, '--roster', 'roster.csv');
    expect(ended.stderr).toContain('the roster names takes that were not given: line 3\n');
    expect(ended.stderr).toMatch(/^1 of 3 recordings recognised; these 2 not: Ben\.wav, song\.mp3\n/);
    expect(take('roster', 'Ada').take).toMatchObject({
      player: 'Áda Lindqvist',
      date: '2026-03-02',
      instrument: 'flute',
    });
    expect(take('roster', 'Ben').take).toMatchObject({ player: null, date: null });
    expect(rows('roster/section.csv')[0]).toMatchObject({ player: 'Áda Lindqvist', instrument: 'flute' });
  });

  it('with a mistake is answered by the line, and nothing is written', () => {
    put(root, { 'wrong.csv': 'file,date\nAda.wav,2026-03-02\nBen.wav,2026-2-30\n' });
    const ended = review('wrong', ...ofPart, '--roster', 'wrong.csv');
    expect(ended).toMatchObject({ status: 2, stdout: '' });
    expect(ended.stderr).toMatch(/^takesheet: wrong\.csv: line 3: the cell under “date” is no day; .*\n$/);
    expect(existsSync(join(root, 'wrong'))).toBe(false);
  });
});

describe('a pattern of names', () => {
  it('says who played and when, and how many it does not fit', () => {
    put(root, { 'named/horn.Ben_Ito.20260302.wav': goodTake({ seed: 2 }), 'named/tuba.wav': goodTake({ seed: 1 }) });
    const ended = review('named-out', '--score', 'part.musicxml', 'named', '--names', '{instrument}.{player}.{date}');
    expect(take('named-out', 'horn.Ben_Ito.20260302').take).toMatchObject({
      player: 'Ben Ito',
      date: '2026-03-02',
      instrument: 'horn',
    });
    expect(ended.stderr).toContain('1 of 2 recordings recognised; this one not: tuba.wav\n');
  });
});

describe('several scores', () => {
  it('are told apart by what was played, and each result says which', () => {
    expect(review('scores-out', '--scores', 'scores', 'both').status).toBe(0);
    expect(take('scores-out', 'one')).toMatchObject({ outcome: 'reviewed', score: { file: 'flute.musicxml' } });
    expect(take('scores-out', 'two')).toMatchObject({ outcome: 'reviewed', score: { file: 'other.musicxml' } });
    expect(rows('scores-out/section.csv').map((row) => row.score)).toEqual(['flute.musicxml', 'other.musicxml']);
  });

  it('are told apart by the roster where it speaks', () => {
    put(root, { 'parts.csv': 'file,part\none.wav,other\ntwo,Étude: Four Bars\n' });
    review('parts-out', '--scores', 'scores', 'both', '--roster', 'parts.csv');
    expect(take('parts-out', 'one')).toMatchObject({ score: { file: 'other.musicxml' } });
    expect(take('parts-out', 'two')).toMatchObject({ score: { file: 'flute.musicxml' } });
    put(root, { 'parts.csv': 'file,part\none.wav,oboe\n' });
    const ended = review('oboe-out', '--scores', 'scores', 'both', '--roster', 'parts.csv');
    expect(ended.stderr).toMatch(
      /parts\.csv: line 2: the cell under “part” names no score; there are flute\.musicxml, other\.musicxml\n$/,
    );
  });

  it('share a section sheet', () => {
    const ended = takesheet(root, 'review', '--out', 'sheet', '--scores', 'scores', 'both');
    expect(ended.status).toBe(0);
    expect(Object.keys(files('sheet'))).toContain('section.pdf');
  });

  it.each([
    [
      ['--scores', 'scores', '--score', 'part.musicxml'],
      /give the part with --score, or a folder of parts with --scores/,
    ],
    [[], /give the part with --score, or a folder of parts with --scores/],
    [['--scores', 'part.musicxml'], /part\.musicxml: this is a file; --scores needs a folder/],
    [['--scores', 'both'], /both: no score is in this folder/],
    [['--scores', 'nowhere'], /nowhere: there is no such file/],
    [['--scores', 'scores', '--brief', 'x.yaml'], /--brief is for one score/],
  ])('%j is a wrong request', (words, message) => {
    const ended = review('never', 'both', ...words);
    expect(ended.status).toBe(2);
    expect(ended.stderr).toMatch(message);
    expect(existsSync(join(root, 'never'))).toBe(false);
  });
});

/** What a file says to a reader; of a PDF the words on its pages and the facts about it. */
function textOf(path: string): string {
  if (!path.endsWith('.pdf')) return readFileSync(path, 'utf8');
  const said = [
    ['pdftotext', path, '-'],
    ['pdfinfo', path],
  ] as const;
  return said.map(([program, ...words]) => spawnSync(program, words, { encoding: 'utf8' }).stdout).join('\n');
}

describe('--blind', () => {
  const names = /\b(?:Ada|Ben|song|Lindqvist)\b/;

  it('shows numbers instead of names everywhere but in the key', () => {
    put(root, { 'blind.csv': 'file,player,date\nAda.wav,Ada Lindqvist,2026-03-02\nNora.wav,Nora Benitez,\n' });
    const ended = takesheet(root, 'review', '--out', 'blind', ...ofPart, '--roster', 'blind.csv', '--blind');
    expect(ended.status).toBe(1);
    expect(ended.stdout + ended.stderr).not.toMatch(/Ada|Ben|Nora|song|lindqvist/i);
    for (const file of Object.keys(files('blind')).filter((name) => name !== 'blind-key.csv')) {
      expect(file).not.toMatch(names);
      expect([file, textOf(join(root, 'blind', file))]).toEqual([file, expect.not.stringMatching(names)]);
    }
    for (const line of lines(ended.stdout)) expect(line).toMatch(/^\d\d(\.mp3)?\t/);
  });

  it('tells the director in the key who is who, and the key is right', () => {
    const key = rows('blind/blind-key.csv');
    expect(key.map(({ file }) => file).sort()).toEqual(['Ada.wav', 'Ben.wav', 'song.mp3']);
    const ada = key.find(({ file }) => file === 'Ada.wav');
    expect(ada).toMatchObject({ player: 'Ada Lindqvist', date: '2026-03-02' });
    // The hash of what was heard shows which file a number really stands for; it stands where the owner alone can read it.
    const heard = readJson<{ take: { sha256: string } }>(join(root, 'blind', 'takes', `${ada?.take}.json`));
    expect(heard.take.sha256).toBe('');
    const records = readdirSync(join(root, 'blind', 'records')).map((file) =>
      readJson<{ name: string; end: { takeSha256?: string } }>(join(root, 'blind', 'records', file)),
    );
    const ofAda = records.find(({ name }) => name === ada?.take);
    expect(ofAda?.end.takeSha256).toBe(everyFile(join(root, 'takes'))['Ada.wav']);
    expect(take('blind', ada?.take ?? '').take).toMatchObject({ player: ada?.number, date: '2026-03-02' });
  });

  it('keeps the numbers when takes are added', () => {
    const before = rows('blind/blind-key.csv');
    put(root, { 'takes/Aaron.wav': goodTake({ seed: 5 }) });
    const ended = takesheet(root, 'review', '--out', 'blind', ...ofPart, '--roster', 'blind.csv', '--blind');
    expect(kept(ended)).toHaveLength(2);
    expect(rows('blind/blind-key.csv').slice(0, before.length)).toEqual(before);
    rmSync(join(root, 'takes', 'Aaron.wav'));
  });

  it('does not mix with results that show names', () => {
    review('open', ...ofPart);
    expect(review('open', ...ofPart, '--blind').stderr).toContain('choose another folder for --blind');
    expect(review('blind', ...ofPart).stderr).toContain('the results in this folder are blind');
  });

  it('names nobody when the request is wrong', () => {
    const ended = review('none', '--score', 'part.musicxml', 'takes/Nora.wav', '--blind');
    expect(ended.status).toBe(2);
    expect(ended.stderr).not.toContain('Nora');
  });
});

describe('shares', () => {
  it('are reviewed apart, copied together, and then are what one run makes', () => {
    put(join(root, 'many'), Object.fromEntries([1, 2, 3, 4, 5].map((i) => [`take ${i}.wav`, goodTake({ seed: i })])));
    put(root, { 'many/song.mp3': 'ID3' });
    const whole = ['--score', 'part.musicxml', 'many'];
    takesheet(root, 'review', '--out', 'one-run', ...whole);
    const counts = [1, 2, 3].map((share) => {
      const ended = takesheet(root, 'review', '--out', `share-${share}`, ...whole, '--shard', `${share}/3`);
      expect(ended.stderr).not.toContain('left alone');
      cpSync(join(root, `share-${share}`), join(root, 'merged'), { recursive: true });
      return lines(ended.stdout).length;
    });
    expect(counts.reduce((sum, count) => sum + count)).toBe(6);
    const ended = takesheet(root, 'section', 'merged');
    expect(ended.status).toBe(1);
    expect(lines(ended.stdout)).toHaveLength(6);
    expect(files('merged')).toEqual(files('one-run'));
  });

  it.each(['0/3', '4/3', '3', 'a/b', '1/0'])('%s is none', (shard) => {
    expect(review('never', ...ofPart, '--shard', shard)).toMatchObject({ status: 2, stdout: '' });
  });
});

describe('section', () => {
  it('needs results', () => {
    expect(takesheet(root, 'section', 'takes')).toMatchObject({
      status: 2,
      stderr: 'takesheet: takes: no result of a take is in this folder; give the one that review wrote to\n',
    });
    expect(readdirSync(join(root, 'takes'))).not.toContain('records');
  });

  it('lists what is no result, and goes on', () => {
    review('damaged', ...ofPart);
    writeFileSync(join(root, 'damaged', 'takes', 'Ben.json'), '{"format":"take-result"}');
    const ended = takesheet(root, 'section', 'damaged', '--json-only');
    expect(ended.status).toBe(1);
    expect(lines(ended.stdout).map((line) => line.split('\t').slice(0, 2))).toEqual([
      ['Ada', 'reviewed'],
      ['Ben', 'failed'],
      ['song', 'failed'],
    ]);
  });
});

describe('where results go', () => {
  it('may be a folder among the takes', () => {
    const before = Object.keys(files('takes'));
    review('takes', ...ofPart);
    const again = review('takes', ...ofPart);
    expect(kept(again).sort()).toEqual(['Ada', 'Ben']);
    expect(
      Object.keys(files('takes'))
        .filter((file) => !before.includes(file))
        .every((file) => /^(takes|records)\/|^section\./.test(file)),
    ).toBe(true);
    for (const made of ['takes', 'records']) rmSync(join(root, 'takes', made), { recursive: true });
    for (const made of ['section.csv', 'section.json']) rmSync(join(root, 'takes', made));
  });

  it('is nowhere else, whatever takes are called', () => {
    const odd = [
      `a'b"c.wav`,
      '$(touch x).wav',
      '-rf.wav',
      'a;b&c|d.wav',
      '..wav.wav',
      '%2e%2e%2f.wav',
      '=cmd.wav',
      'ä\u0308\u{1F3BA}.wav',
      'a\nb\tc.wav',
      '..\\..\\up.wav',
      ' .wav',
    ];
    mkdirSync(join(root, 'odd', 'takes'), { recursive: true });
    for (const name of odd) writeFileSync(join(root, 'odd', 'takes', name), '');
    put(root, { 'odd/takes/good.wav': goodTake(), 'odd/part.musicxml': SHORT_PART });
    const before = Object.keys(files('odd'));
    const ended = takesheet(
      join(root, 'odd'),
      'review',
      '--json-only',
      '--score',
      'part.musicxml',
      '--out',
      'out',
      'takes',
    );
    expect(ended.status).toBe(1);
    // A leading dot hides a file (POSIX ls), so two of them are passed over.
    const visible = odd.filter((name) => !name.startsWith('.')).length + 1;
    expect(lines(ended.stdout)).toHaveLength(visible);
    expect(lines(ended.stderr)).toHaveLength(visible);
    const added = Object.keys(files('odd')).filter((file) => !before.includes(file));
    for (const file of added)
      expect(file).toMatch(/^out\/(takes\/good\.json|records\/[0-9a-f]{32}\.json|section\.(csv|json))$/);
    expect(rows('odd/out/section.csv')).toHaveLength(visible);
  });

  it('is not where a link in it leads', () => {
    mkdirSync(join(root, 'elsewhere'));
    mkdirSync(join(root, 'linked'));
    symlinkSync(join(root, 'elsewhere'), join(root, 'linked', 'takes'));
    expect(review('linked', ...ofPart)).toMatchObject({ status: 2, stdout: '' });
    expect(readdirSync(join(root, 'elsewhere'))).toEqual([]);
  });
});

describe('links', () => {
  it('to takes and folders are followed, those that lead back or nowhere end', () => {
    mkdirSync(join(root, 'links', 'loop'), { recursive: true });
    symlinkSync(join(root, 'takes', 'Ada.wav'), join(root, 'links', 'ada-by-link.wav'));
    symlinkSync(join(root, 'links'), join(root, 'links', 'loop', 'back'));
    symlinkSync('self.wav', join(root, 'links', 'self.wav'));
    symlinkSync('nowhere.wav', join(root, 'links', 'lost.wav'));
    const ended = review('links-out', '--score', 'part.musicxml', 'links');
    expect(lines(ended.stdout).map((line) => line.split('\t').slice(0, 2))).toEqual([
      ['ada-by-link', 'reviewed'],
      ['lost', 'failed'],
      ['self', 'failed'],
    ]);
  });
});
