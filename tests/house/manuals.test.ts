import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const project = resolve(import.meta.dirname, '../..');

interface Manifest {
  readonly scripts: Readonly<Record<string, string>>;
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
}

const manifest: Manifest = JSON.parse(readFileSync(join(project, 'package.json'), 'utf8'));

/** Paths of the project in a manual: code words and link targets that begin with one of its folders or are a file on top. */
function pathsIn(manual: string): string[] {
  const words = [...manual.matchAll(/`([^`\n]+)`|\]\(([^)\s]+)\)/g)].map((match) => match[1] ?? match[2] ?? '');
  const inFolder = /^(?:src|tests|fixtures|bin|\.ci|reports\/sample)\/[\w./-]*$/;
  const onTop = /^(?:package\.json|tsconfig\.json|LICENSE|\.[\w-]+\.json|[A-Z]+\.md)$/;
  return words.filter((word) => inFolder.test(word) || onTop.test(word));
}

/** Every manual: the two on top, and those that stand beside what they explain. */
const manuals = [
  'README.md',
  'DEVELOPERS.md',
  ...['src', 'tests', 'bin'].flatMap((folder) =>
    readdirSync(join(project, folder), { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('README.md'))
      .map((file) => `${folder}/${file}`)
      .sort(),
  ),
];

describe.each(manuals)('%s', (file) => {
  const manual = readFileSync(join(project, file), 'utf8');

  it('names only paths that exist', () => {
    expect(pathsIn(manual).filter((path) => !existsSync(join(project, path)))).toEqual([]);
  });

  it('names only scripts that exist', () => {
    const scripts = [...manual.matchAll(/npm run (\w+)/g)].map((match) => match[1] ?? '');
    expect(scripts.filter((script) => !(script in manifest.scripts))).toEqual([]);
  });
});

describe('DEVELOPERS.md', () => {
  const manual = readFileSync(join(project, 'DEVELOPERS.md'), 'utf8');

  it('can be read whole, and leads to every manual that stands beside the code', () => {
    expect(manual.length).toBeLessThan(16_000);
    expect(manuals.slice(2).filter((file) => !manual.includes(`\`${file}\``))).toEqual([]);
    expect(manuals.length).toBeGreaterThan(12);
  });

  it('says why each package is here', () => {
    const packages = Object.keys({ ...manifest.dependencies, ...manifest.devDependencies });
    expect(packages.filter((name) => !manual.includes(`\`${name}\``))).toEqual([]);
  });

  it('leads through every room', () => {
    const rooms = readdirSync(join(project, 'src'));
    expect(rooms.filter((room) => !manual.includes(`\`src/${room}/\``))).toEqual([]);
  });
});

describe('the check of paths', () => {
  it('finds code words and link targets', () => {
    expect(pathsIn('see `src/base/` and [this](tests/x.test.ts), `LICENSE`, `npm test`, `out/takes/`')).toEqual([
      'src/base/',
      'tests/x.test.ts',
      'LICENSE',
    ]);
  });
});
