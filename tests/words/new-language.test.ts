import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type * as Judge from '../../src/judge/index.js';
import type * as Result from '../../src/result/index.js';
import type * as Words from '../../src/words/index.js';
import { judged } from '../helpers/judged.js';
import { samplePart, sampleReview } from '../helpers/sample-review.js';

vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

const project = resolve(import.meta.dirname, '../..');
const TAG = 'tlh';

/** The files that a change puts in the place of others, by their path from the project. */
type Overlay = ReadonlyMap<string, string>;

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
  ts.sys.readDirectory(join(project, 'src/words/en'), ['.ts']).map((file) => {
    const path = relative(project, file).split(sep).join('/');
    return [
      path.replace('words/en/', `words/${TAG}/`),
      text(path).replaceAll(' percent of ', ' vatlhvI’ of '),
    ] as const;
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

/** Files that no change touches are read once. */
const read = new Map<string, ts.SourceFile>();

/**
 * What the compiler says about the program with these files in place, or about these files alone: file, number and message
 * of each error.
 */
function errorsWith(
  overlay: Overlay,
  where: 'everywhere' | 'in these files',
): { readonly file: string; readonly code: number; readonly message: string }[] {
  const { config } = ts.readConfigFile(join(project, 'tsconfig.json'), ts.sys.readFile);
  const { options, fileNames } = ts.parseJsonConfigFileContent(config, ts.sys, project);
  const host = ts.createCompilerHost(options);
  const paths = new Map([...overlay].map(([path, source]) => [join(project, path).split(sep).join('/'), source]));
  const { readFile, fileExists, getSourceFile } = host;
  host.readFile = (path) => paths.get(path) ?? readFile(path);
  host.fileExists = (path) => paths.has(path) || fileExists(path);
  delete host.directoryExists;
  host.getSourceFile = (path, version) => {
    const changed = paths.get(path);
    if (changed !== undefined) return ts.createSourceFile(path, changed, version);
    const known = read.get(path) ?? getSourceFile(path, version);
    if (known !== undefined) read.set(path, known);
    return known;
  };
  const program = ts.createProgram({ rootNames: [...new Set([...fileNames, ...paths.keys()])], options, host });
  const checked = where === 'everywhere' ? [undefined] : [...paths.keys()].map((path) => program.getSourceFile(path));
  return checked
    .flatMap((one) => ts.getPreEmitDiagnostics(program, one))
    .map(({ file, code, messageText }) => ({
      file: file === undefined ? '' : relative(project, file.fileName).split(sep).join('/'),
      code,
      message: ts.flattenDiagnosticMessageText(messageText, '\n'),
    }));
}

describe('another language', () => {
  let missing: ReturnType<typeof errorsWith>;
  let whole: Overlay;

  beforeAll(() => {
    missing = errorsWith(tag, 'everywhere');
    whole = new Map([...tag, ...folder, ...inTables(missing.map(({ file }) => file))]);
  });

  // TypeScript: 2741 is a property that is missing in a value of a type that asks for it.
  it('with its tag alone, is missing in every table of languages, and in nothing else', () => {
    expect(missing.map(({ file, code }) => [file, code])).toEqual([['src/words/words-in.ts', 2741]]);
    for (const { message } of missing) expect(message).toContain(`Property '${TAG}' is missing`);
  });

  // No other file sees a difference to the tag alone, with which it compiled.
  it('with a folder of words, compiles', () => {
    expect(folder.size).toBeGreaterThan(30);
    expect(errorsWith(whole, 'in these files')).toEqual([]);
  });

  it('that leaves out a kind of finding, is told which', () => {
    const file = `src/words/${TAG}/findings/breath.ts`;
    const without = new Map(whole).set(file, (whole.get(file) ?? '').replace("'breath-late'", "'breath-later'"));
    const errors = errorsWith(without, 'in these files').map(({ file: where, message }) => [where, message]);
    expect([...new Set(errors.map(([where]) => where))].sort()).toEqual([
      `src/words/${TAG}/findings.ts`,
      `src/words/${TAG}/findings/breath.ts`,
    ]);
    expect(errors.find(([where]) => where === `src/words/${TAG}/findings.ts`)?.[1]).toMatch(
      /breath-late\W+ is missing/,
    );
  });
});

describe('a take told in another language', () => {
  let copy = '';
  let result: typeof Result;
  let words: typeof Words;

  beforeAll(async () => {
    copy = mkdtempSync(join(tmpdir(), 'new-language-'));
    symlinkSync(join(project, 'node_modules'), join(copy, 'node_modules'));
    cpSync(join(project, 'package.json'), join(copy, 'package.json'));
    const overlay = new Map([...tag, ...folder, ...inTables(['src/words/words-in.ts'])]);
    const sources = ts.sys.readDirectory(join(project, 'src'), ['.ts']).map((file) => relative(project, file));
    for (const path of new Set([...sources.map((one) => one.split(sep).join('/')), ...overlay.keys()])) {
      const target = join(copy, path.replace(/\.ts$/, '.js'));
      mkdirSync(dirname(target), { recursive: true });
      const compilerOptions = {
        module: ts.ModuleKind.ESNext,
        target: ts.ScriptTarget.ES2023,
        verbatimModuleSyntax: true,
      };
      writeFileSync(target, ts.transpileModule(overlay.get(path) ?? text(path), { compilerOptions }).outputText);
    }
    const room = (name: string) => import(pathToFileURL(join(copy, `src/${name}/index.js`)).href);
    [result, words] = await Promise.all([room('result'), room('words')]);
  });

  afterAll(() => rmSync(copy, { recursive: true, force: true }));

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
