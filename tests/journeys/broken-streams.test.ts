import { spawnSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { note, scoreOf } from '../score/score-of.js';
import { PROJECT, put, takesheet } from './takesheet.js';

const folder = mkdtempSync(join(tmpdir(), 'broken-streams-'));
afterAll(() => rmSync(folder, { recursive: true }));
const program = join(PROJECT, 'bin', 'takesheet.js');

// Full(4): writing to /dev/full fails as on a disk that is full.
describe('a stream that cannot be written to', () => {
  const full = openSync('/dev/full', 'w');
  afterAll(() => closeSync(full));

  it('is told in one line where results are lost', () => {
    const { status, stderr } = spawnSync(process.execPath, [program, 'schema'], {
      ...{ encoding: 'utf8', stdio: ['ignore', full, 'pipe'] },
    });
    expect([status, stderr]).toEqual([1, 'takesheet: standard output cannot be written to (ENOSPC)\n']);
  });

  it('ends nothing where only messages are lost', () => {
    put(folder, { 'part.musicxml': scoreOf([`<attributes><divisions>1</divisions></attributes>${note('C5', 4)}`]) });
    const words = [program, 'study', 'part.musicxml', '--brief', 'new.yaml', '--format', 'json'];
    const { status, stdout } = spawnSync(process.execPath, words, {
      ...{ cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', full] },
    });
    expect([status, stdout]).toEqual([0, 'part.study.json\n']);
  });
});

describe('a score of one kilobyte that asks for a million staves', () => {
  it('has its study sheet like any other', () => {
    const asks = '<attributes><divisions>1</divisions><staves>1000000</staves></attributes>';
    put(folder, { 'wide.musicxml': scoreOf([asks + note('C5', 4)]) });
    const { status, stdout, stderr } = takesheet(folder, 'study', 'wide.musicxml');
    expect([status, stdout, stderr]).toEqual([0, 'wide.study.pdf\n', '']);
  });
});
