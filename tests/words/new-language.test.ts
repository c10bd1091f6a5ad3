import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type * as Judge from '../../src/judge/index.js';
import type * as Result from '../../src/result/index.js';
import type * as Words from '../../src/words/index.js';
import { judged } from '../helpers/judged.js';
import { samplePart, sampleReview } from '../helpers/sample-review.js';

const project = resolve(import.meta.dirname, '../..');
const TAG = 'tlh';

/** The files that a change puts in the place of others, by their path from the project. */
type Overlay = ReadonlyMap<string, string>;

interface CompilerError {
  readonly file: string;
  readonly code: number;
  readonly message: string;
}

const text = (path: string): string => readFileSync(join(project, path), 'utf8');

/** A language is a tag here … */
const tag = new Map([
  [
    'src/base/language.ts',
    text('src/base/language.ts').replace("['en', 'de'] as const", `['en', 'de', '${TAG}'] as const`),
  ],
]);

/** … a folder of words, here the English ones with another word for percent … */
const folder = new Map(
  readdirSync(join(project, 'src/words/en'), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => {
      const path = file.split(sep).join('/');
      const english = text(`src/words/en/${path}`);
      return [`src/words/${TAG}/${path}`, english.replaceAll(' percent of ', ' vatlhvI’ of ')] as const;
    }),
);

/** … and a line in each table of languages, which the compiler asks for. */
function inTables(tables: readonly string[]): Overlay {
  return new Map(
    tables.map((path) => {
      const table = text(path).replace(/en: (\w+), de: (\w+) \}/, `en: $1, de: $2, ${TAG}: NEW }`);
      return [path, `import { WORDS as NEW } from './${TAG}/index.js';\n${table}`] as const;
    }),
  );
}

let copy = '';

/** Puts these files in the copy of the program, compiles it, and gives what the compiler has to say: an error begins a line. */
function compileWith(overlay: Overlay, ...options: string[]): CompilerError[] {
  for (const [path, source] of overlay) {
    mkdirSync(dirname(join(copy, path)), { recursive: true });
    writeFileSync(join(copy, path), source);
  }
  const compiler = join(project, 'node_modules/typescript-native/bin/tsc');
  const words = [compiler, '--pretty', 'false', ...options];
  const { stdout } = spawnSync(process.execPath, words, { cwd: copy, encoding: 'utf8' });
  return stdout
    .split(/\n(?=\S)/)
    .filter((said) => said.trim() !== '')
    .map((said) => {
      const [, file = '', code, message = ''] = /^(.*)\(\d+,\d+\): error TS(\d+): (.*)$/s.exec(said) ?? [];
      return { file, code: Number(code), message: message || said };
    });
}

beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), 'new-language-'));
  symlinkSync(join(project, 'node_modules'), join(copy, 'node_modules'));
  for (const path of ['package.json', 'tsconfig.json', 'src'])
    cpSync(join(project, path), join(copy, path), { recursive: true });
});

afterAll(() => rmSync(copy, { recursive: true, force: true }));

describe('another language', () => {
  let missing: CompilerError[];
  let whole: Overlay;

  beforeAll(() => {
    missing = compileWith(tag, '--noEmit');
    whole = new Map([...tag, ...folder, ...inTables(missing.map(({ file }) => file))]);
  });

  // TypeScript: 2741 is a property that is missing in a value of a type that asks for it.
  it('with its tag alone, is missing in every table of languages, and in nothing else', () => {
    expect(missing.map(({ file, code }) => [file, code])).toEqual([['src/words/words-in.ts', 2741]]);
    for (const { message } of missing) expect(message).toContain(`Property '${TAG}' is missing`);
  });

  it('with a folder of words, compiles', () => {
    expect(folder.size).toBeGreaterThan(30);
    expect(compileWith(whole, '--noEmit')).toEqual([]);
  });

  it('that leaves out a kind of finding, is told which', () => {
    const file = `src/words/${TAG}/findings/breath.ts`;
    const without = new Map([[file, (whole.get(file) ?? '').replace("'breath-late'", "'breath-later'")]]);
    const errors = compileWith(without, '--noEmit');
    expect([...new Set(errors.map((error) => error.file))].sort()).toEqual([`src/words/${TAG}/findings.ts`, file]);
    expect(errors.find((error) => error.file === `src/words/${TAG}/findings.ts`)?.message).toMatch(
      /breath-late\W+ is missing/,
    );
  });
});

describe('a take told in another language', () => {
  let result: typeof Result;
  let words: typeof Words;

  beforeAll(async () => {
    const whole = new Map([...tag, ...folder, ...inTables(['src/words/words-in.ts'])]);
    expect(compileWith(whole, '--noCheck')).toEqual([]);
    const room = (name: string) => import(pathToFileURL(join(copy, `dist/${name}/index.js`)).href);
    [result, words] = await Promise.all([room('result'), room('words')]);
  });

  it('says what was found in its words, and names its language', () => {
    const part = samplePart(8);
    const { findings, criteria } = judged(part, { measurements: { articulations: [] } });
    const staccato: Judge.CriterionLine = {
      ...criteria[4]!,
      sayings: [{ code: 'staccato-sounds', facts: { percent: 48 } }],
    };
    const language = TAG as 'en';
    const judgement = { findings, criteria: [staccato] };
    const told = result.toTakeResult({ ...sampleReview({ bars: 8 }), part, judgement, language });
    expect(told.language).toBe(TAG);
    expect(told.criteria.map(({ summary }) => summary)).toEqual([
      'staccato notes sound for 48 vatlhvI’ of their time (short: up to about 50)',
    ]);
    expect(told.findings.map(({ text: said }) => said)).toEqual(
      findings.map(({ text: english }) => english.replaceAll(' percent of ', ' vatlhvI’ of ')),
    );
    expect(told.findings.some(({ text: said }) => said.includes('vatlhvI’'))).toBe(true);
    expect(words.wordsIn(language).page.wentWell).toBe('What went well');
  });
});
