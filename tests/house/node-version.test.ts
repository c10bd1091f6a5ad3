import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, it } from 'vitest';

const project = resolve(import.meta.dirname, '../..');

/** Runs the check as if Node.js had this version. */
function checked(version: string): { status: number | null; said: string } {
  const code = `Object.defineProperty(process, 'versions', { value: { node: '${version}' } });
    await import('${resolve(project, '.ci/node-version.mjs')}');`;
  const ended = spawnSync(process.execPath, ['--input-type=module', '-e', code], { encoding: 'utf8' });
  return { status: ended.status, said: ended.stdout + ended.stderr };
}

it.each(['18.20.4', '20.18.3'])('Node.js %s is too old, and that is said in one line', (version) => {
  const { status, said } = checked(version);
  expect(status).toBe(1);
  expect(said).toMatch(new RegExp(`^Node\\.js ${version} is too old: >=20\\.19 is needed[^\\n]*\\n$`));
});

it.each(['20.19.0', '22.1.0', process.versions.node])('Node.js %s will do', (version) => {
  expect(checked(version)).toEqual({ status: 0, said: '' });
});

it('is checked before anything else, by npm test and by the check of a bare machine', () => {
  const { scripts } = JSON.parse(readFileSync(resolve(project, 'package.json'), 'utf8'));
  expect(scripts.pretest).toContain('.ci/node-version.mjs');
  const [first] = readFileSync(resolve(project, '.ci/run'), 'utf8').match(/^(node|npm) .*$/m) ?? [];
  expect(first).toContain('.ci/node-version.mjs');
});
