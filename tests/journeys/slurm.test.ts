import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { needs, needsRoot } from '../outside/programs.js';
import { type OwnSlurm, startOwnSlurm } from './own-slurm.js';
import { goodTake, SHORT_PART } from './short-part.js';
import { type Ended, everyFile, PROJECT, put, takesheet } from './takesheet.js';

const RECIPE = join(PROJECT, 'bin', 'recipes', 'slurm-array.sh');
const PROGRAMS = ['munged', 'slurmctld', 'slurmd', 'sbatch'] as const;

let root = '';
let slurm: OwnSlurm | undefined;

function recipe(...words: string[]): Ended {
  const { status, stdout, stderr } = spawnSync(RECIPE, words, { cwd: root, env: slurm?.env ?? {}, encoding: 'utf8' });
  return { status, stdout, stderr };
}

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'slurm-'));
  const takes = [1, 2, 3, 4].map(
    (i) => [`my takes/2026-03-0${i}_Ada Lindqvist.wav`, goodTake({ seed: i, tempoFactor: 1.5 })] as const,
  );
  put(root, { 'part.musicxml': SHORT_PART, ...Object.fromEntries(takes) });
});

afterAll(async () => {
  await slurm?.end();
  rmSync(root, { recursive: true });
});

describe('the recipe for Slurm', () => {
  it('reviews shares in an array of jobs, merges them, and gives what one run gives', async (context) => {
    needs(context, ...PROGRAMS);
    needsRoot(context);
    slurm ??= await startOwnSlurm();
    const words = ['--score', 'part.musicxml', '--paper', 'letter', 'my takes'];
    const alone = takesheet(root, 'review', '--out', 'one run', ...words);
    const submitted = recipe('2', 'a round', ...words);
    expect(submitted).toMatchObject({
      status: 0,
      stderr: '',
      stdout: expect.stringMatching(/^shares\t\d+\nmerged\t\d+\n$/),
    });
    // Source: squeue(1), JOB STATE CODES: COMPLETED is a job of which all processes ended with 0.
    expect(await slurm.idle()).toEqual(['COMPLETED', 'COMPLETED', 'COMPLETED']);
    expect(everyFile(join(root, 'a round', 'merged'))).toEqual(everyFile(join(root, 'one run')));
    const shares = [1, 2].map(
      (i) => Object.keys(everyFile(join(root, 'a round', 'shares', `${i}-of-2`, 'takes'))).length,
    );
    expect(Math.min(...shares)).toBeGreaterThan(0);
    expect(shares[0]! + shares[1]!).toBe(8);
    expect(readFileSync(join(root, 'a round', 'log', 'merged.txt'), 'utf8')).toBe(alone.stdout);
  });

  it('merges into a folder that is followed over the weeks like any other', (context) => {
    needs(context, ...PROGRAMS);
    needsRoot(context);
    const followed = ['a round/merged', 'one run'].map((folder, i) => {
      const ended = takesheet(root, 'progress', folder, '--format', 'json', '--out', `progress-${i}.json`);
      expect(ended).toMatchObject({ status: 0, stderr: '' });
      return readFileSync(join(root, `progress-${i}.json`), 'utf8').replaceAll(folder, '');
    });
    expect(followed[0]).toContain('Ada Lindqvist');
    expect(followed[0]).toBe(followed[1]);
  });

  it('goes on with a round, counts takes that fail as reviewed, and says so in the end', async (context) => {
    needs(context, ...PROGRAMS);
    needsRoot(context);
    slurm ??= await startOwnSlurm();
    put(root, { 'my takes/song.mp3': 'ID3' });
    const words = ['--score', 'part.musicxml', '--paper', 'letter', 'my takes'];
    takesheet(root, 'review', '--out', 'one run', ...words);
    expect(recipe('2%1', 'a round', ...words).status).toBe(0);
    expect((await slurm.idle()).slice(-3).sort()).toEqual(['COMPLETED', 'COMPLETED', 'FAILED']);
    expect(everyFile(join(root, 'a round', 'merged'))).toEqual(everyFile(join(root, 'one run')));
    const said = [1, 2].map((i) => readFileSync(join(root, 'a round', 'log', `share-${i}.txt`), 'utf8')).join('');
    // a take more moves at most one of the four across the cut between two shares, where it is reviewed anew
    expect(said.match(/as before/g)?.length).toBeGreaterThanOrEqual(3);
  });

  it('merges nothing when the request is wrong', async (context) => {
    needs(context, ...PROGRAMS);
    needsRoot(context);
    slurm ??= await startOwnSlurm();
    expect(recipe('2', 'wrong', '--score', 'nowhere.musicxml', 'my takes').status).toBe(0);
    expect((await slurm.idle()).slice(-3).sort()).toEqual(['CANCELLED', 'FAILED', 'FAILED']);
    expect(Object.keys(everyFile(join(root, 'wrong')))).toEqual(['log/share-1.txt', 'log/share-2.txt']);
    expect(readFileSync(join(root, 'wrong', 'log', 'share-1.txt'), 'utf8')).toContain(
      'nowhere.musicxml: there is no such file',
    );
  });

  it.each([[], ['0', 'out', 'takes'], ['3/8', 'out', 'takes'], ['4%0', 'out', 'takes'], ['4', 'out']])(
    'refuses %j in one line, before it submits anything',
    (...words) => {
      const ended = recipe(...words);
      expect(ended).toMatchObject({ status: 2, stdout: '' });
      expect(ended.stderr).toMatch(/^[^\n]+\n$/);
    },
  );
});
