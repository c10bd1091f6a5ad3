import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EMPTY_PART, goodTake, SHORT_PART } from './short-part.js';
import { lines, PROJECT, put, takesheet } from './takesheet.js';

let root = '';

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'wrong-requests-'));
  put(root, {
    'part.musicxml': SHORT_PART,
    'letter.musicxml': 'Dear Ms Berg, here is the part.\n',
    'page.xml': '<html><body>no part</body></html>',
    'empty.musicxml': '',
    'silent.musicxml': EMPTY_PART,
    'good.wav': goodTake(),
    'papers/readme.txt': 'nothing to hear',
    'in-the-way': 'a file',
  });
});

afterAll(() => {
  rmSync(root, { recursive: true });
});

const review = (score: string, out: string, ...rest: string[]): string[] => [
  'review',
  '--score',
  score,
  '--out',
  out,
  ...rest,
];

describe('a wrong request', () => {
  it.each<[string, string[], RegExp]>([
    ['no such score', review('none.musicxml', 'out', 'good.wav'), /^takesheet: none\.musicxml: there is no such file/],
    ['a score that is a folder', review('papers', 'out', 'good.wav'), /^takesheet: papers: this is a folder/],
    ['an empty score', review('empty.musicxml', 'out', 'good.wav'), /^takesheet: empty\.musicxml: /],
    ['a score that is a letter', review('letter.musicxml', 'out', 'good.wav'), /^takesheet: letter\.musicxml: /],
    ['a score that is a web page', review('page.xml', 'out', 'good.wav'), /^takesheet: page\.xml: /],
    ['a score that is a recording', review('good.wav', 'out', 'good.wav'), /^takesheet: good\.wav: /],
    ['a part without notes', review('silent.musicxml', 'out', 'good.wav'), /^takesheet: silent\.musicxml: /],
    [
      'no such take',
      review('part.musicxml', 'out', 'none.wav'),
      /^takesheet: none\.wav: there is no such file or folder/,
    ],
    ['a folder without takes', review('part.musicxml', 'out', 'papers'), /^takesheet: papers: no recording was found/],
    [
      'a file where the folder should be',
      review('part.musicxml', 'in-the-way', 'good.wav'),
      /^takesheet: in-the-way: cannot write here/,
    ],
    [
      'a folder below a file',
      review('part.musicxml', 'in-the-way/out', 'good.wav'),
      /^takesheet: in-the-way\/out: cannot write here/,
    ],
    ['a demo below a file', ['demo', '--out', 'in-the-way/demo'], /^takesheet: in-the-way\/demo: cannot write here/],
    ['no takes named', review('part.musicxml', 'out'), /^takesheet: missing required argument 'takes'/],
    [
      'no score named',
      ['review', '--out', 'out', 'good.wav'],
      /^takesheet: give the part with --score, or a folder of parts with --scores/,
    ],
    [
      'no place to write',
      ['review', '--score', 'part.musicxml', 'good.wav'],
      /^takesheet: required option '--out <folder>' not specified/,
    ],
    [
      'an unknown option',
      review('part.musicxml', 'out', 'good.wav', '--jsononly'),
      /^takesheet: unknown option '--jsononly'/,
    ],
    ['no workers', review('part.musicxml', 'out', 'good.wav', '--jobs', '0'), /whole number from 1 to 64/],
    ['half a worker', review('part.musicxml', 'out', 'good.wav', '--jobs', '1.5'), /whole number from 1 to 64/],
    [
      'unknown paper',
      review('part.musicxml', 'out', 'good.wav', '--paper', 'foolscap'),
      /Allowed choices are a4, letter/,
    ],
    [
      'a language that nobody has written',
      review('part.musicxml', 'out', 'good.wav', '--language', 'xx'),
      /Allowed choices are en, de/,
    ],
    ['an unknown command', ['rate', 'good.wav'], /^takesheet: unknown command 'rate'/],
  ])('%s gets one line, exit status 2, and nothing is written', (_what, words, line) => {
    const before = readdirSync(root, { recursive: true });
    const ended = takesheet(root, ...words);
    expect(ended.stdout).toBe('');
    expect(lines(ended.stderr)).toEqual([expect.stringMatching(line)]);
    expect(ended.status).toBe(2);
    expect(readdirSync(root, { recursive: true })).toEqual(before);
  });

  it('without any words shows the help, on standard error', () => {
    const ended = takesheet(root);
    expect(ended).toMatchObject({ status: 2, stdout: '' });
    expect(ended.stderr).toContain('Usage: takesheet [options] [command]');
  });

  it('before the program is built gets one line that says what to do', () => {
    put(root, { 'unbuilt/bin/takesheet.js': readFileSync(join(PROJECT, 'bin', 'takesheet.js')) });
    put(root, { 'unbuilt/package.json': '{ "type": "module" }' });
    const program = join(root, 'unbuilt', 'bin', 'takesheet.js');
    const ended = spawnSync(process.execPath, [program, '--version'], { encoding: 'utf8' });
    expect(ended.status).toBe(2);
    expect(ended.stderr).toBe('takesheet: the program is not built yet; run npm install in its folder\n');
  });
});
