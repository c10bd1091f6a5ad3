import { spawnSync } from 'node:child_process';
import { appendFileSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodeWav } from '../../src/decode/index.js';
import { goodTake, SHORT_PART } from './short-part.js';
import { type Ended, everyFile, lines, PROJECT, put, readJson, startTakesheet, takesheet } from './takesheet.js';

const NAMES = ['ada', 'ben', 'cy', 'dov'];

interface Section {
  readonly takes: readonly { readonly name: string }[];
  readonly failures: readonly { readonly name: string; readonly code: string }[];
}

let root = '';
let undisturbed: Record<string, string> = {};

const words = (out: string, ...rest: string[]): string[] => [
  ...['review', '--score', 'part.musicxml', '--out', out, 'takes', '--jobs', '2', ...rest],
];
const files = (out: string): Record<string, string> => everyFile(join(root, out));
const section = (out: string): Section => readJson<Section>(join(root, out, 'section.json'));
/** What lies in a folder is part of what an undisturbed run leaves, so nothing in it is half written. */
const expectOnlyWhole = (out: string): void => {
  const whole = Object.entries(files(out)).filter(([file]) => !/(^|\/)\.writing-/.test(file));
  expect(whole).toEqual(whole.map(([file]) => [file, undisturbed[file]]));
};

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'fault-drill-'));
  put(root, { 'part.musicxml': SHORT_PART });
  put(join(root, 'takes'), Object.fromEntries(NAMES.map((name, i) => [`${name}.wav`, goodTake({ seed: i + 1 })])));
  expect(takesheet(root, ...words('undisturbed')).status).toBe(0);
  undisturbed = files('undisturbed');
});

afterAll(() => {
  rmSync(root, { recursive: true });
});

describe('the whole run is killed', () => {
  // Lines on standard error before the kill, and milliseconds after the last of them: before anything is written, between
  // takes, while a take is written, and while the section's files are.
  it.each([
    [0, 300],
    [1, 0],
    [2, 5],
    [3, 30],
    [4, 0],
  ])(
    'after %d takes and %d ms: what is there is whole, and the same command ends as if nothing had been',
    async (after, ms) => {
      const out = `killed-${after}-${ms}`;
      const run = startTakesheet(root, ...words(out));
      await run.hasSaid(after);
      await new Promise((resolve) => setTimeout(resolve, ms));
      run.process.kill('SIGKILL');
      const { stderr } = await run.ended;
      mkdirSync(join(root, out), { recursive: true });
      expectOnlyWhole(out);
      const again = takesheet(root, ...words(out));
      expect(again.status).toBe(0);
      expect(files(out)).toEqual(undisturbed);
      const finished = lines(stderr).length;
      expect(lines(again.stderr).filter((line) => line.endsWith('as before')).length).toBeGreaterThanOrEqual(finished);
    },
  );

  it('leaves files half written, and the next run clears them away', () => {
    // A process number that no system gives: Linux counts to 2^22 at most (proc(5), pid_max).
    put(join(root, 'half'), {
      'takes/.writing-4194399-x': '{',
      '.writing-4194399-y': '',
      'records/.writing-4194399-z': '',
    });
    takesheet(root, ...words('half'));
    expect(files('half')).toEqual(undisturbed);
  });
});

describe('the run is stopped', () => {
  it.each(['SIGINT', 'SIGTERM'] as const)(
    'by %s: finished results stay whole, it says how to go on, status 130',
    async (signal) => {
      const out = `stopped-${signal}`;
      const run = startTakesheet(root, ...words(out, '--jobs', '1'));
      await run.hasSaid(2);
      run.process.kill(signal);
      const ended = await run.ended;
      expect(ended.status).toBe(130);
      expect(lines(ended.stderr).at(-1)).toMatch(/^stopped: \d finished, \d to go; run the same command again/);
      const finished = lines(ended.stdout);
      expect(finished.length).toBeGreaterThanOrEqual(2);
      expect(finished.length).toBeLessThan(NAMES.length);
      expectOnlyWhole(out);
      expect(Object.keys(files(out))).not.toContain('section.json');
      const again = takesheet(root, ...words(out));
      expect(again).toMatchObject({ status: 0 });
      expect(files(out)).toEqual(undisturbed);
    },
  );
});

/** A sawtooth of 220 Hz: sound with a pitch in every frame, so all of it has to be listened to. */
function longTone({ seconds, rateHz }: { readonly seconds: number; readonly rateHz: number }): Float32Array {
  return new Float32Array(seconds * rateHz).map((_, i) => 0.2 * (((i * 220) / rateHz) % 1) - 0.1);
}

describe('a take that', () => {
  const LONG = { seconds: 3600, rateHz: 22050 };

  beforeAll(() => {
    put(root, {
      'long/ada.wav': goodTake({ seed: 1 }),
      'long/hour.wav': encodeWav(longTone(LONG), LONG.rateHz),
    });
  });

  afterAll(() => {
    rmSync(join(root, 'long'), { recursive: true });
  });

  const failures = (out: string) => section(out).failures.map(({ name, code }) => [name, code]);
  it('takes too long loses only itself', () => {
    const scores = Object.fromEntries(Array.from({ length: 12 }, (_, i) => [`scores/${i}.musicxml`, SHORT_PART]));
    put(root, { ...scores, 'roster.csv': 'file,part\nada.wav,0\n' });
    const manyTimes = ['--scores', 'scores', '--roster', 'roster.csv', '--time-limit', '20'];
    const ended = takesheet(root, 'review', '--out', 'out-long', 'long', '--json-only', ...manyTimes);
    expect(ended.status).toBe(1);
    expect(lines(ended.stdout)).toEqual([expect.stringMatching(/^ada\treviewed\t/), 'hour\tfailed\t\t\t']);
    expect(failures('out-long')).toEqual([['hour', 'took-too-long']]);
  });

  it('needs too much memory loses only itself', () => {
    // The bytes of the hour alone are 303 MB; with what is heard in them it is more than a worker and the bound together.
    put(root, {
      'large/ada.wav': goodTake({ seed: 1 }),
      'large/hour.wav': encodeWav(new Float32Array(3600 * 44100).fill(0.1), 44100),
    });
    const words = ['--json-only', '--memory-limit', '30', '--jobs', '1'];
    const ended = takesheet(root, 'review', '--score', 'part.musicxml', '--out', 'out-large', 'large', ...words);
    rmSync(join(root, 'large'), { recursive: true });
    expect(ended.status).toBe(1);
    expect(failures('out-large')).toEqual([['hour', 'too-much-memory']]);
    expect(files('out-large')['takes/ada.json']).toBe(undisturbed['takes/ada.json']);
  });
});

/** Whether the machine lets us mount a small disk of our own; root may, as a rule. */
const mounts = (() => {
  const place = mkdtempSync(join(tmpdir(), 'mount-'));
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', place]).status === 0;
  if (mounted) spawnSync('umount', [place]);
  rmSync(place, { recursive: true });
  return mounted;
})();

/** Runs the review with a bound of the shell on every file that is written. */
function reviewBounded(blocks: number, out: string): Ended {
  const program = join(PROJECT, 'bin', 'takesheet.js');
  const command = `ulimit -f ${blocks}; exec "$@"`;
  const { status, stdout, stderr } = spawnSync('sh', ['-c', command, 'sh', process.execPath, program, ...words(out)], {
    cwd: root,
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

describe('the disk', () => {
  it('takes only small files: every take has its line, nothing is half written, and it goes on when it can', () => {
    const ended = reviewBounded(8, 'bounded');
    expect(ended.status).toBe(1);
    expect(lines(ended.stdout)).toHaveLength(NAMES.length);
    expect(ended.stderr).toContain('files may not become this large here');
    expect(
      readdirSync(join(root, 'bounded'), { recursive: true, encoding: 'utf8' }).filter((file) =>
        file.includes('.writing'),
      ),
    ).toEqual([]);
    expect(takesheet(root, ...words('bounded')).status).toBe(0);
    expect(files('bounded')).toEqual(undisturbed);
  });

  it.runIf(mounts)('is full: what fits is whole, the rest has its line, and it goes on when there is room', () => {
    const place = join(root, 'full');
    mkdirSync(place);
    spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=96k', 'tmpfs', place]);
    try {
      const ended = takesheet(root, ...words('full'));
      expect(ended.status).toBe(1);
      expect(ended.stderr).toContain('the disk is full');
      expect(lines(ended.stdout)).toHaveLength(NAMES.length);
      for (const file of Object.keys(files('full')).filter((name) => name.startsWith('takes/'))) {
        expect([file, files('full')[file]]).toEqual([file, undisturbed[file]]);
      }
      spawnSync('mount', ['-o', 'remount,size=16m', place]);
      expect(takesheet(root, ...words('full')).status).toBe(0);
      expect(files('full')).toEqual(undisturbed);
    } finally {
      spawnSync('umount', [place]);
    }
  });

  it.runIf(mounts)('is read-only: one line, status 2, and the results of before stay', () => {
    const place = join(root, 'read-only');
    mkdirSync(place);
    spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=16m', 'tmpfs', place]);
    try {
      takesheet(root, ...words('read-only'));
      spawnSync('mount', ['-o', 'remount,ro', place]);
      const ended = takesheet(root, ...words('read-only', '--again'));
      expect(ended).toMatchObject({ status: 2, stdout: '' });
      expect(ended.stderr).toBe(
        'takesheet: read-only: cannot write here (the disk is read-only); choose a folder you may write to\n',
      );
      expect(files('read-only')).toEqual(undisturbed);
    } finally {
      spawnSync('umount', [place]);
    }
  });

  // Node's own recursive mkdir does not come to an end under /proc, where mkdir(2) says ENOENT.
  it('is none at all: --out under /proc ends with one line', () => {
    const ended = takesheet(root, ...words('/proc/takesheet/out'));
    expect(ended).toMatchObject({ status: 2, stdout: '' });
    expect(lines(ended.stderr)).toEqual([expect.stringMatching(/cannot write here/)]);
  });
});

describe('a take that is still being written', () => {
  it('is told so, and reviewed when it is ready', () => {
    const takes = join(root, 'growing');
    put(root, { 'growing/ada.wav': goodTake({ seed: 1 }) });
    const whole = readFileSync(join(takes, 'ada.wav'));
    writeFileSync(join(takes, 'ada.wav'), whole.subarray(0, 44));
    const request = ['--score', 'part.musicxml', '--out', 'out-growing', 'growing', '--json-only'];
    const review = (): Ended => takesheet(root, 'review', ...request);
    expect(review().status).toBe(1);
    appendFileSync(join(takes, 'ada.wav'), whole.subarray(44));
    expect(review().status).toBe(0);
    expect(section('out-growing').failures).toEqual([]);
    expect(files('out-growing')['takes/ada.json']).toBe(undisturbed['takes/ada.json']);
  });
});

describe('results that somebody has touched', () => {
  it('are made anew, and only these', () => {
    const out = join(root, 'touched');
    takesheet(root, ...words('touched'));
    writeFileSync(join(out, 'takes', 'ada.json'), '{}');
    appendFileSync(join(out, 'takes', 'ben.pdf'), ' ');
    const records = readdirSync(join(out, 'records')).map((file) => join(out, 'records', file));
    const ofDov = records.find((path) => readJson<{ name: string }>(path).name === 'dov');
    writeFileSync(ofDov ?? '', 'no record');
    const ended = takesheet(root, ...words('touched'));
    const kept = lines(ended.stderr).filter((line) => line.endsWith('as before'));
    expect(kept).toEqual([expect.stringMatching(/ cy: reviewed, as before$/)]);
    expect(files('touched')).toEqual(undisturbed);
  });
});

/** Whether the machine lets us run a command without any network; root may, as a rule. */
const isolates = spawnSync('unshare', ['-n', 'true']).status === 0;

describe('without any network', () => {
  // unshare(1), network_namespaces(7): a new network namespace has no interface but a loopback that is down.
  it.runIf(isolates)('the review is the same', () => {
    const program = join(PROJECT, 'bin', 'takesheet.js');
    const ended = spawnSync('unshare', ['-n', process.execPath, program, ...words('no-network')], {
      cwd: root,
      encoding: 'utf8',
    });
    expect(ended.status).toBe(0);
    expect(files('no-network')).toEqual(undisturbed);
  });
});
