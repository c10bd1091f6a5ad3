import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, statSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { InputError } from '../../src/base/index.js';
import { fittingName } from '../../src/batch/disk/fitting-name.js';
import { readWhole } from '../../src/batch/disk/read-whole.js';
import { writeWhole } from '../../src/batch/disk/write-whole.js';
import { refuseUnbounded } from '../../src/batch/history/refuse-unbounded.js';
import { blindPlan } from '../../src/batch/plan/blind-plan.js';
import type { Plan } from '../../src/batch/plan/plan-takes.js';
import { playerAndDate } from '../../src/batch/plan/player-and-date.js';
import { readRoster } from '../../src/batch/plan/read-roster.js';
import { nameTakes } from '../../src/batch/plan/take-names.js';
import { keptResult } from '../../src/batch/results/kept-result.js';
import { readTake } from '../../src/batch/results/read-result.js';
import { readRecord, recordPath } from '../../src/batch/results/take-record.js';

const folder = mkdtempSync(join(tmpdir(), 'hostile-'));
afterAll(() => rmSync(folder, { recursive: true }));

function faultOf(work: () => unknown): string {
  try {
    work();
  } catch (error) {
    if (error instanceof InputError) return error.fault.code;
    throw error;
  }
  return 'none';
}

/** Nothing here waits: a second is a thousand times what it takes. */
function soon(work: () => void): void {
  const began = performance.now();
  work();
  expect(performance.now() - began).toBeLessThan(1000);
}

// POSIX.1-2017: opening a pipe for reading waits for a writer; /dev/zero never ends. Proc(5): files there hold more than they
// say they do.
describe('what is no ordinary file', () => {
  const pipe = join(folder, 'pipe');
  execFileSync('mkfifo', [pipe]);

  it.each([
    [pipe, 'no-ordinary-file'],
    ['/dev/zero', 'no-ordinary-file'],
    ['/proc/self/status', 'file-changed'],
    [folder, 'folder-for-file'],
  ])('is not read: %s', (path, fault) => {
    expect(faultOf(() => readWhole(path, 2 ** 20))).toBe(fault);
  });

  it('is neither a record nor a kept result', () => {
    const out = join(folder, 'out');
    for (const below of ['takes', 'records']) mkdirSync(join(out, below), { recursive: true });
    execFileSync('mkfifo', [join(out, 'takes', 'ada.json'), recordPath(out, 'ada')]);
    symlinkSync('/dev/zero', join(out, 'takes', 'ben.json'));
    symlinkSync('/dev/zero', recordPath(out, 'ben'));
    for (const name of ['ada', 'ben']) {
      expect(readRecord(recordPath(out, name))).toBeNull();
      expect(keptResult(name, { outFolder: out, dependsOn: '', jsonOnly: true, paper: 'a4' })).toBeNull();
      expect(faultOf(() => readTake(out, name))).toBe('no-ordinary-file');
    }
  });

  it('is told with its true limit', () => {
    const large = join(folder, 'large');
    writeFileSync(large, '');
    truncateSync(large, 2 ** 21 + 1);
    expect(() => readWhole(large, 2 ** 21)).toThrow(
      expect.objectContaining({ fault: { code: 'file-too-large', facts: { megabytes: 3, most: 2 } } }),
    );
  });

  it('has a name in UTF-8, or is told that it has none', () => {
    expect(faultOf(() => readWhole(join(folder, 'ad\ufffd.wav'), 1))).toBe('name-not-utf8');
    expect(faultOf(() => readWhole(join(folder, 'ada.wav'), 1))).toBe('file-missing');
  });
});

describe('blind', () => {
  const planOf = (file: string): Plan => ({
    takes: [
      {
        ...{ path: join(folder, file), file, name: file, shownAs: file, etudes: [0] },
        who: { player: 'Ada', date: null, instrument: null },
      },
    ],
    ...{ lost: [], rosterLinesUnused: [], unrecognised: [file] },
  });

  it('shows what stands after a dot only where it is the ending of recordings', () => {
    const shown = (file: string) => {
      const { plan } = blindPlan(planOf(file), []);
      return [plan.takes[0]?.file, plan.takes[0]?.shownAs, ...(plan.unrecognised ?? [])];
    };
    expect(shown('2026-03-02_First.Last')).toEqual(['01', '01', '01']);
    expect(shown('First.Last.WAV')).toEqual(['01.wav', '01.wav', '01.wav']);
  });

  // chmod(2), POSIX.1-2017: 0600 is for the owner alone.
  it('keeps its key for the owner', () => {
    const before = process.umask(0o022);
    try {
      writeWhole(join(folder, 'key'), '', 'owner');
      writeWhole(join(folder, 'result'), '');
      expect(statSync(join(folder, 'key')).mode & 0o777).toBe(0o600);
      expect(statSync(join(folder, 'result')).mode & 0o777).toBe(0o644);
    } finally {
      process.umask(before);
    }
  });
});

// Microsoft, "Naming Files, Paths, and Namespaces".
describe('names that some disk cannot have', () => {
  it.each([
    ['CON', '_CON'],
    ['con.txt', '_con.txt'],
    ['Com1', '_Com1'],
    ['Connie', 'Connie'],
    ['a:b', 'a_b'],
    ['ends with a dot.', 'ends with a dot_'],
    ['ends with a space ', 'ends with a space_'],
    ['line\nbreak\u001b[2J', 'line_break_[2J'],
    ['turned\u202evaw', 'turned_vaw'],
    ['', '_'],
    ['Ada-Lindqvist', 'Ada-Lindqvist'],
  ])('are made fit: %j', (name, fit) => {
    expect(fittingName(name, 200)).toBe(fit);
  });

  it('stay different', () => {
    const files = ['a:b.wav', 'a?b.wav', 'CON.wav', '_CON.wav'];
    const names = nameTakes(files.map((file) => ({ path: `/takes/${file}`, file }))).map(({ name }) => name);
    expect(new Set(names).size).toBe(files.length);
  });
});

describe('what is longer than anything that is written', () => {
  it('is not read out of a result', () => {
    const take = { player: 'x'.repeat(2 * 2 ** 20) };
    expect(() => refuseUnbounded({ take })).toThrow(
      expect.objectContaining({ fault: { code: 'result-against-schema', facts: { place: 'take.player' } } }),
    );
    expect(faultOf(() => refuseUnbounded({ findings: Array(30_000).fill({}) }))).toBe('result-against-schema');
    expect(faultOf(() => refuseUnbounded({ findings: Array(4000).fill({}), notes: Array(20_000).fill({}) }))).toBe(
      'none',
    );
  });

  it('is not read out of a roster', () => {
    const roster = `file,player,date\nada.wav,${'x'.repeat(1001)},2026-03-02\n`;
    expect(() => readRoster(new TextEncoder().encode(roster))).toThrow(
      expect.objectContaining({ fault: { code: 'roster-long-cell', facts: { line: 2, most: 1000 } } }),
    );
  });

  it('is no name of a player', () => {
    soon(() => expect(playerAndDate(`2026-03-02_${'-'.repeat(60_000)}`)).toEqual({ player: null, date: null }));
  });
});
