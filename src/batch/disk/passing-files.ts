import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';

/** How the names of files begin that are still being written; the process's number follows. */
export const PASSING_NAME = '.writing-';

/**
 * Clears away what a run left half written when it was killed. Files of a process that is still alive are left alone.
 *
 * @param folder where results are written
 * @param below folders in it, each searched without those below it
 *
 * Source: kill(2) with signal 0, POSIX.1-2017, tells whether a process is alive.
 */
export function clearPassingFiles(folder: string, below: readonly string[]): void {
  for (const place of ['.', ...below]) {
    for (const name of namesIn(join(folder, place))) {
      const pid = new RegExp(`^\\${PASSING_NAME}(\\d+)-`).exec(name)?.[1];
      if (pid !== undefined && !isAlive(Number(pid))) rmSync(join(folder, place, name), { force: true });
    }
  }
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
