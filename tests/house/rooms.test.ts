import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { cruise, type ICruiseResult } from 'dependency-cruiser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { OPTIONS, RULES } from './directions.js';
import { folderCircles, roomOf, SHARED_FLOORS } from './folder-circles.js';

const project = resolve(import.meta.dirname, '../..');

interface Looked {
  readonly modules: number;
  readonly rules: string[];
  /** circles of folders, also of a folder and one inside it */
  readonly circles: string[];
  /** circles of folders beside each other */
  readonly besides: string[];
}

async function broken(baseDir: string): Promise<Looked> {
  const options = { ...OPTIONS, validate: true, baseDir, ruleSet: RULES };
  const { output } = await cruise(['src'], options);
  const { modules, summary } = output as ICruiseResult;
  return {
    modules: modules.filter((module) => module.source.startsWith('src/')).length,
    circles: folderCircles(modules),
    besides: folderCircles(modules, false),
    rules: summary.violations.map((violation) => `${violation.rule.name}: ${violation.from} -> ${violation.to}`),
  };
}

describe('the rooms', () => {
  it('keep the directions of imports, their doors, their packages and the disk', async () => {
    const files = readdirSync(join(project, 'src'), { recursive: true, encoding: 'utf8' });
    const { modules, rules, circles, besides } = await broken(project);
    expect(rules).toEqual([]);
    expect(besides).toEqual([]);
    expect(circles.filter((circle) => !SHARED_FLOORS.includes(roomOf(circle)))).toEqual([]);
    expect(SHARED_FLOORS.filter((room) => !circles.some((circle) => roomOf(circle) === room))).toEqual([]);
    expect(modules).toBe(files.filter((file) => file.endsWith('.ts')).length);
  });
});

describe('the rules, tried on a house that breaks them', () => {
  let root = '';
  let rules: string[] = [];
  let circles: string[] = [];

  const HOUSE: Readonly<Record<string, string>> = {
    'src/base/index.ts': "import type { Part } from '../score/index.js';\nexport type B = Part;\n",
    'src/score/index.ts':
      "import '../features/index.js';\nexport type { Part } from './part.js';\nexport * from './loop.js';\n",
    'src/score/part.ts':
      "import { readFileSync } from 'node:fs';\nexport type Part = string;\nexport const f = readFileSync;\n",
    'src/score/loop.ts': "import { b } from './back.js';\nexport const a = () => b;\n",
    'src/score/back.ts': "import { a } from './loop.js';\nexport const b = () => a;\n",
    'src/features/index.ts': "import type { Part } from '../score/part.js';\nexport type F = Part;\n",
    'src/align/index.ts': "import type { Part } from '../score/part.js';\nimport 'commander';\nexport type A = Part;\n",
    'src/judge/index.ts': "import net from 'node:net';\nexport const n = net;\nexport * from './gone.js';\n",
    'src/page/index.ts': "import type { Part } from '../score/index.js';\nexport type P = Part;\n",
    'src/report/index.ts': "export * from './take/pages.js';\n",
    'src/report/take/pages.ts': "import type { Clip } from '../listen/clip.js';\nexport type Pages = Clip;\n",
    'src/report/listen/clip.ts': "import type { Curve } from '../curves/curve.js';\nexport type Clip = Curve;\n",
    'src/report/curves/curve.ts': "import type { Title } from '../take/title.js';\nexport type Curve = Title;\n",
    'src/report/take/title.ts': 'export type Title = string;\n',
    // a folder and the one in it that need each other
    'src/study/plan.ts': "import type { Trap } from './traps/trap.js';\nexport type Plan = Trap;\n",
    'src/study/traps/trap.ts': "import type { Fact } from '../fact.js';\nexport type Trap = Fact;\n",
    'src/study/fact.ts': 'export type Fact = string;\n',
    // no circles: the door hands on, and all folders share the types above them
    'src/weeks/index.ts': "export * from './days/day.js';\nexport * from './weeks.js';\n",
    'src/weeks/weeks.ts': "import type { Day } from './days/day.js';\nexport type Weeks = Day;\n",
    'src/weeks/days/day.ts': "import type { Date } from '../types.js';\nexport type Day = Date;\n",
    'src/weeks/types.ts': 'export type Date = string;\n',
    'src/attic/index.ts': 'export const old = 1;\n',
    'src/cli/index.ts':
      "import { old } from '../attic/index.js';\nimport 'unknown-thing';\nimport 'node:child_process';\nexport const c = old;\n",
    'node_modules/commander/package.json': '{ "name": "commander", "version": "1.0.0", "main": "index.js" }',
    'node_modules/commander/index.js': '',
    'node_modules/unknown-thing/package.json': '{ "name": "unknown-thing", "version": "1.0.0", "main": "index.js" }',
    'node_modules/unknown-thing/index.js': '',
    'package.json': '{ "name": "house", "dependencies": { "commander": "1", "unknown-thing": "1" } }',
  };

  beforeAll(async () => {
    root = mkdtempSync(join(tmpdir(), 'house-'));
    for (const [file, text] of Object.entries(HOUSE)) {
      mkdirSync(join(root, dirname(file)), { recursive: true });
      writeFileSync(join(root, file), text);
    }
    ({ rules, circles } = await broken(root));
  });

  afterAll(() => {
    rmSync(root, { recursive: true });
  });

  it.each([
    ['base-only-uses-rooms-above-it', 'src/base/index.ts -> src/score/index.ts'],
    ['only-through-the-door', 'src/align/index.ts -> src/score/part.ts'],
    ['features-only-uses-rooms-above-it', 'src/features/index.ts -> src/score/part.ts'],
    ['every-file-lives-in-a-known-room', 'src/cli/index.ts -> src/attic/index.ts'],
    ['package-commander-stays-in-cli', 'src/align/index.ts -> node_modules/commander/index.js'],
    ['no-package-without-a-home', 'src/cli/index.ts -> node_modules/unknown-thing/index.js'],
    ['score-is-a-stranger-to-decode-encode-features', 'src/score/index.ts -> src/features/index.ts'],
    [
      'page-is-a-stranger-to-standards-decode-encode-features-score-brief-align-measure-judge-study-words',
      'src/page/index.ts -> src/score/index.ts',
    ],
    ['report-sheets-do-not-know-each-other', 'src/report/take/pages.ts -> src/report/listen/clip.ts'],
    ['report-shared-knows-no-sheet', 'src/report/curves/curve.ts -> src/report/take/title.ts'],
    ['only-batch-touches-the-disk', 'src/score/part.ts -> fs'],
    ['no-network', 'src/judge/index.ts -> net'],
    ['no-other-program', 'src/cli/index.ts -> child_process'],
    ['no-circle', 'src/score/back.ts -> src/score/loop.ts'],
    ['resolvable', 'src/judge/index.ts -> ./gone.js'],
  ])('%s', (rule, where) => {
    expect(rules).toContain(`${rule}: ${where}`);
  });

  it('finds circles of folders, beside each other and in each other, and no others', () => {
    expect(circles).toEqual([
      'src/report/curves <-> src/report/take: src/report/curves/curve.ts -> src/report/take/title.ts',
      'src/report/listen <-> src/report/curves: src/report/listen/clip.ts -> src/report/curves/curve.ts',
      'src/report/take <-> src/report/listen: src/report/take/pages.ts -> src/report/listen/clip.ts',
      'src/study <-> src/study/traps: src/study/plan.ts -> src/study/traps/trap.ts',
      'src/study/traps <-> src/study: src/study/traps/trap.ts -> src/study/fact.ts',
    ]);
  });
});
