import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestContext } from 'vitest';

/** Programs of others that serve as yardsticks, and the Debian package each comes in. */
const PACKAGES = {
  praat: 'praat',
  aubiopitch: 'aubio-tools',
  aubioonset: 'aubio-tools',
  ffmpeg: 'ffmpeg',
  fluidsynth: 'fluidsynth',
  chromium: 'chromium',
  munged: 'munge',
  slurmctld: 'slurm-wlm',
  slurmd: 'slurm-wlm',
  sbatch: 'slurm-wlm',
  kubectl: 'kubernetes-client',
} as const;

export type Yardstick = keyof typeof PACKAGES;

/** Sound banks of Debian (fluid-soundfont-gm, MIT; timgm6mb-soundfont, GPL-2), by a name for the test. */
const BANKS = { 'Fluid R3': 'FluidR3_GM.sf2', 'TimGM 6 MB': 'TimGM6mb.sf2' } as const;

/** What has been left out, said once. */
const SAID = new Set<string>();

/**
 * A check that needs a program which is not there is left out, and says so. Where every program has to be there, as in
 * `.ci/run`, it fails instead.
 */
function leaveOut(context: TestContext, what: string): never {
  const said = `left out: ${what}`;
  if (process.env.EVERY_YARDSTICK) throw new Error(said);
  if (!SAID.has(said)) console.warn(said);
  SAID.add(said);
  return context.skip(said);
}

/** Goes on only where these programs are installed. */
export function needs(context: TestContext, ...programs: readonly Yardstick[]): void {
  const missing = programs.find((program) => spawnSync(program, ['--help'], { stdio: 'ignore' }).error !== undefined);
  if (missing !== undefined) leaveOut(context, `${missing} is not installed (Debian package ${PACKAGES[missing]})`);
}

/** Goes on only where the tests are run by root, who may start what runs programs for others. */
export function needsRoot(context: TestContext): void {
  if (process.getuid?.() !== 0) leaveOut(context, 'only root may start a Slurm of its own');
}

/** @returns the sound banks that are installed, with their files; goes on only where there is one */
export function soundBanks(context: TestContext): { name: string; file: string }[] {
  const banks = Object.entries(BANKS).map(([name, file]) => ({ name, file: join('/usr/share/sounds/sf2', file) }));
  const there = banks.filter(({ file }) => existsSync(file));
  return there.length > 0
    ? there
    : leaveOut(context, 'a sound bank is not installed (Debian package timgm6mb-soundfont)');
}

/** @returns what a program prints on standard output; throws when it fails */
export function printedBy(program: Yardstick | 'which', words: readonly string[]): string {
  return execFileSync(program, words, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'], maxBuffer: 2 ** 28 });
}

/** A folder that is there while the work is done. */
export function inFolder<T>(work: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'takesheet-outside-'));
  try {
    return work(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
