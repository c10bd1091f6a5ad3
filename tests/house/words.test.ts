import { readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, join, relative, resolve, sep } from 'node:path';
import { describe, expect, it } from 'vitest';

const project = resolve(import.meta.dirname, '../..');

/** What no text of the project may hold, and something it must recognise (in pieces, so as not to be found itself). */
const FORBIDDEN: readonly (readonly [what: string, pattern: RegExp, example: string])[] = [
  [
    'a path of one machine',
    /(?<![\w.$}/-])\/(?:work|tmp|home|root|Users|mnt)\/[\w.-]/,
    ['see /ho', 'me/ada/x.wav'].join(''),
  ],
  ['a path of one machine', /\b[A-Z]:\\\\?(?:Users|Documents)/, ['C:', '\\Users\\ada'].join('')],
  [
    'the host of a package registry',
    /https?:\/\/[\w.-]*(?:registry|npmjs|pypi)[\w.-]*/,
    ['https://regi', 'stry.example.org'].join(''),
  ],
  ['work left for later', /\b(?:TO[D]O|FIX[M]E|X[X]X|HA[C]K)\b/, ['// TO', 'DO: later'].join('')],
  ['a test that does not run', /\b(?:it|test|describe)\.(?:skip|todo|only|fails)\b/, ['it.sk', "ip('x')"].join('')],
];

const MADE_BY_PROGRAMS = new Set(['.git', 'node_modules', 'dist', 'reports', 'package-lock.json']);

/** Every file that somebody wrote. */
const files = readdirSync(project)
  .filter((name) => !MADE_BY_PROGRAMS.has(name))
  .flatMap((name) => (statSync(join(project, name)).isDirectory() ? below(name) : [name]));

function below(folder: string): string[] {
  const entries = readdirSync(join(project, folder), { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(project, join(entry.parentPath, entry.name)).split(sep).join('/'));
}

describe('the words of the project', () => {
  it.each(FORBIDDEN)('hold nothing that is %s (%s)', (_what, pattern) => {
    const found = files.filter((file) => pattern.test(readFileSync(join(project, file), 'utf8')));
    expect(files).toContain('src/base/index.ts');
    expect(found).toEqual([]);
  });

  it.each(FORBIDDEN)('would be found out: %s (%s)', (_what, pattern, example) => {
    expect(example).toMatch(pattern);
  });

  it('name files after what is in them', () => {
    const vague = files.filter((file) => /^(?:utils?|helpers?|misc|common|stuff)\.\w+$/.test(basename(file)));
    expect(vague).toEqual([]);
  });
});
