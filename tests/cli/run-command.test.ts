import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../../src/cli/index.js';

async function run(...words: string[]): Promise<{ status: number; stdout: string; stderr: string }> {
  let stdout = '';
  let stderr = '';
  const streams = {
    stdout: { write: (text: string) => (stdout += text) },
    stderr: { write: (text: string) => (stderr += text) },
  };
  const status = await runCommand(words, streams);
  return { status, stdout, stderr };
}

describe('the command line', () => {
  it('prints the version of package.json', async () => {
    const manifest = JSON.parse(readFileSync(join(resolve(import.meta.dirname, '../..'), 'package.json'), 'utf8'));
    expect(await run('--version')).toEqual({ status: 0, stdout: `${manifest.version}\n`, stderr: '' });
  });

  it.each([['--help'], ['study', '--help'], ['review', '--help'], ['demo', '--help'], ['schema', '--help']])(
    'explains itself: %s',
    async (...words) => {
      const ended = await run(...words);
      expect(ended).toMatchObject({ status: 0, stderr: '' });
      expect(ended.stdout).toContain('Usage: takesheet');
    },
  );

  it('answers what it does not understand with one line and status 2', async () => {
    expect(await run('demo', '--ouch', 'x')).toEqual({
      status: 2,
      stdout: '',
      stderr: "takesheet: unknown option '--ouch' (Did you mean --out?); takesheet --help shows what there is\n",
    });
  });

  // The identifier of the dialect: JSON Schema 2020-12, section 8.1.1.
  it.each([['schema'], ['schema', '--section']])('prints a schema of the 2020-12 dialect: %s', async (...words) => {
    const { status, stdout } = await run(...words);
    expect(status).toBe(0);
    expect(JSON.parse(stdout).$schema).toBe('https://json-schema.org/draft/2020-12/schema');
  });

  it('owns a fault of its own in one line', async () => {
    let stderr = '';
    const broken = {
      stdout: {
        write: () => {
          throw new TypeError('broken\nstream');
        },
      },
      stderr: { write: (text: string) => (stderr += text) },
    };
    expect(await runCommand(['schema'], broken)).toBe(1);
    expect(stderr).toBe('takesheet: a fault in the program, not in your files; please report it (broken stream)\n');
  });
});
