import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { LANGUAGES } from '../../src/base/index.js';

const words = resolve(import.meta.dirname, '../../src/words');

const filesOf = (language: string) =>
  readdirSync(join(words, language), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .sort();

const namesIn = async (language: string, file: string) => Object.keys(await import(join(words, language, file))).sort();

describe.each(LANGUAGES)('the folder of words %s', (language) => {
  const [first] = LANGUAGES;

  it('has the files of the other languages', () => {
    expect(filesOf(language).length).toBeGreaterThan(30);
    expect(filesOf(language)).toEqual(filesOf(first));
  });

  it('gathers its words under the same name', async () => {
    expect(await namesIn(language, 'index.ts')).toEqual(['WORDS']);
    for (const file of ['findings.ts', 'sayings.ts', 'expected.ts', 'page.ts', 'section.ts', 'weeks.ts'])
      expect([file, await namesIn(language, file)]).toEqual([file, await namesIn(first, file)]);
  });
});
