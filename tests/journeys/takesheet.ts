import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';

/** The folder of the project. */
export const PROJECT = resolve(import.meta.dirname, '../..');

/** What a command has left behind. */
export interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/**
 * Runs the compiled program as a user does.
 *
 * @param folder the working folder
 * @param words the command line without the program
 * @returns exit status and what was printed
 */
export function takesheet(folder: string, ...words: string[]): Ended {
  refuseStaleBuild();
  const program = join(PROJECT, 'bin', 'takesheet.js');
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], {
    cwd: folder,
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

/** A command that is running. */
export interface Running {
  readonly process: ChildProcess;
  /** resolves when so many lines have come on standard error, or the command has ended */
  readonly hasSaid: (lines: number) => Promise<void>;
  readonly ended: Promise<Ended>;
}

/**
 * Starts the compiled program and lets it run, so that something can be done to it meanwhile.
 *
 * @param folder the working folder
 * @param words the command line without the program
 * @returns the running command
 */
export function startTakesheet(folder: string, ...words: string[]): Running {
  refuseStaleBuild();
  const program = join(PROJECT, 'bin', 'takesheet.js');
  const child = spawn(process.execPath, [program, ...words], { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'] });
  let [stdout, stderr] = ['', ''];
  let look = (): void => {};
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    stdout += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    stderr += text;
    look();
  });
  const ended = new Promise<Ended>((resolve) => {
    child.on('close', (status) => resolve({ status, stdout, stderr }));
  });
  const hasSaid = async (count: number): Promise<void> => {
    const said = new Promise<void>((resolve) => {
      look = () => (lines(stderr).length >= count ? resolve() : undefined);
      look();
    });
    await Promise.race([said, ended]);
  };
  return { process: child, hasSaid, ended };
}

/** @returns the lines of a text, without the empty one after the last line break */
export function lines(text: string): string[] {
  return text.split('\n').filter((line) => line !== '');
}

/** Writes files below a folder, making folders as needed. */
export function put(folder: string, files: Readonly<Record<string, Uint8Array | string>>): void {
  for (const [file, content] of Object.entries(files)) {
    mkdirSync(join(folder, dirname(file)), { recursive: true });
    writeFileSync(join(folder, file), content);
  }
}

/** @returns every file below a folder with the SHA-256 of its bytes, in order of names */
export function everyFile(folder: string): Record<string, string> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const paths = entries.map((entry) => join(entry.parentPath, entry.name)).sort();
  return Object.fromEntries(paths.map((path) => [relative(folder, path), fingerprint(path)]));
}

function fingerprint(path: string): string {
  return createHash('sha256').update(readFileSync(path)).digest('hex');
}

/** @returns the document in a JSON file */
export function readJson<T = Record<string, unknown>>(path: string): T {
  return JSON.parse(readFileSync(path, 'utf8'));
}

function refuseStaleBuild(): void {
  const newest = (folder: string): number => {
    const files = readdirSync(join(PROJECT, folder), { recursive: true, encoding: 'utf8' });
    return Math.max(0, ...files.map((file) => statSync(join(PROJECT, folder, file)).mtimeMs));
  };
  if (newest('src') > newest('dist')) throw new Error('dist is older than src: run `npm run build` first');
}
