import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { InputError, sha256 } from '../../src/base/index.js';
import { makeFolder } from '../../src/batch/disk/make-folder.js';
import { clearPassingFiles } from '../../src/batch/disk/passing-files.js';
import { readWhole } from '../../src/batch/disk/read-whole.js';
import { tryToWrite } from '../../src/batch/disk/try-to-write.js';
import { failureFor } from '../../src/batch/failure-for.js';
import { failureOf } from '../../src/batch/failures/failure-of.js';
import { exitCode, writeWhole } from '../../src/batch/index.js';
import { pageDate } from '../../src/review/page-date.js';
import { failureInWords, inWords } from '../helpers/in-words.js';

let root = '';

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'disk-'));
});

afterEach(() => {
  rmSync(root, { recursive: true });
});

describe('writing', () => {
  it('makes the folder, replaces what was there and leaves nothing else', () => {
    const path = join(root, 'a', 'b', 'x.json');
    writeWhole(path, 'first');
    writeWhole(path, new Uint8Array([0x32]));
    expect(readFileSync(path, 'utf8')).toBe('2');
    expect(readdirSync(join(root, 'a', 'b'))).toEqual(['x.json']);
  });

  it('writes pieces one after the other, however many there are', () => {
    const pieces = Array.from({ length: 3000 }, (_, i) => `${i} é`.repeat(100));
    writeWhole(join(root, 'x.json'), pieces.values());
    expect(readFileSync(join(root, 'x.json'), 'utf8')).toBe(pieces.join(''));
  });

  it('leaves what was there when pieces cannot be made, and says why', () => {
    writeWhole(join(root, 'x.json'), 'first');
    const broken = function* (): Generator<string> {
      yield 'new';
      throw new TypeError('no more');
    };
    expect(() => writeWhole(join(root, 'x.json'), broken())).toThrow('no more');
    expect(readFileSync(join(root, 'x.json'), 'utf8')).toBe('first');
    expect(readdirSync(root)).toEqual(['x.json']);
  });

  it('leaves what was there, and nothing half written, when the disk refuses', () => {
    mkdirSync(join(root, 'x.json', 'kept'), { recursive: true });
    expect(() => writeWhole(join(root, 'x.json'), 'new')).toThrow(InputError);
    expect(readdirSync(root)).toEqual(['x.json']);
    expect(readdirSync(join(root, 'x.json'))).toEqual(['kept']);
  });

  it('says in one line which folder cannot be written to', () => {
    writeFileSync(join(root, 'file'), '');
    const folder = join(root, 'file', 'out');
    expect(inWords(() => tryToWrite(folder))).toThrow(
      `${folder}: cannot write here (a file is in the way of the folder)`,
    );
  });

  it('leaves no trace of having tried', () => {
    tryToWrite(join(root, 'out'));
    expect(readdirSync(join(root, 'out', 'takes'))).toEqual([]);
  });
});

describe('reading', () => {
  it('gives the bytes of the file', () => {
    writeFileSync(join(root, 'x'), new Uint8Array([1, 2, 255]));
    expect([...readWhole(join(root, 'x'), 3)]).toEqual([1, 2, 255]);
  });

  it('refuses a folder, a missing file, a file that is too large and what never ends', () => {
    writeFileSync(join(root, 'x'), new Uint8Array(2 ** 20 + 1));
    expect(inWords(() => readWhole(root, 9))).toThrow('this is a folder');
    expect(inWords(() => readWhole(join(root, 'y'), 9))).toThrow('there is no such file');
    expect(inWords(() => readWhole(join(root, 'x', 'y'), 9))).toThrow('there is no such file');
    expect(inWords(() => readWhole(join(root, 'x'), 2 ** 20))).toThrow('at most 1 MB are read');
    expect(statSync('/dev/zero').isCharacterDevice()).toBe(true);
    expect(inWords(() => readWhole('/dev/zero', 9))).toThrow('not an ordinary file');
  });
});

describe('reading what is being written', () => {
  it('says that the file changed', async () => {
    const path = join(root, 'growing.wav');
    writeFileSync(path, new Uint8Array(64 * 2 ** 20));
    // Another process adds to the file without a pause, for as long as it is read.
    const writer = spawn(process.execPath, [
      '-e',
      'for (;;) require("node:fs").appendFileSync(process.argv[1], "x")',
      path,
    ]);
    try {
      await vi.waitUntil(() => statSync(path).size > 64 * 2 ** 20, { timeout: 120_000 });
      expect(inWords(() => readWhole(path, 2 ** 30))).toThrow('this file changed while it was read');
    } finally {
      writer.kill('SIGKILL');
    }
  });
});

describe('making folders', () => {
  it('makes those that are missing, and is content with those that are there', () => {
    makeFolder(join(root, 'a', 'b', 'c'));
    makeFolder(join(root, 'a', 'b', 'c'));
    expect(statSync(join(root, 'a', 'b', 'c')).isDirectory()).toBe(true);
  });

  it('comes to an end where none can be made, and where a file is in the way', () => {
    expect(() => makeFolder('/proc/takesheet/out')).toThrow();
    writeFileSync(join(root, 'file'), '');
    expect(() => makeFolder(join(root, 'file', 'below'))).toThrow();
  });
});

describe('what was left half written', () => {
  it('is cleared away when its process is gone, and left alone when it lives', () => {
    // Linux counts processes to 2^22 at most (proc(5), pid_max), so there is none of this number.
    mkdirSync(join(root, 'takes'));
    for (const pid of [4194399, process.pid]) writeFileSync(join(root, 'takes', `.writing-${pid}-x`), '');
    writeFileSync(join(root, 'takes', '.writing-letters'), '');
    clearPassingFiles(root, ['takes', 'nowhere']);
    expect(readdirSync(join(root, 'takes')).sort()).toEqual([`.writing-${process.pid}-x`, '.writing-letters'].sort());
  });
});

describe('how a run ends', () => {
  const failure = failureFor('a.wav', { code: 'recording-empty', facts: {} });

  // 0, 1 and 2 as the help of the command promises them; 130 is 128 + SIGINT (2), as shells count (POSIX.1-2017, 2.8.2).
  it('is 0 when all takes were reviewed, 1 when some failed, 2 when the request is wrong, 130 when it was stopped', () => {
    const whole = { ends: [], notReached: 0, remarks: { leftAlone: [], rosterLinesUnused: [] } };
    expect(exitCode({ ...whole, failures: [] })).toBe(0);
    expect(exitCode({ ...whole, failures: [failure] })).toBe(1);
    const ended = (outcome: string) => [{ row: { take: { outcome } } }] as unknown as typeof whole.ends;
    expect(exitCode({ ...whole, failures: [], ends: ended('reviewed') })).toBe(0);
    expect(exitCode({ ...whole, failures: [], ends: ended('too-poor') })).toBe(1);
    expect(exitCode({ ...whole, failures: [], ends: ended('not-this-score') })).toBe(1);
    expect(exitCode({ ...whole, failures: [failure], notReached: 3 })).toBe(130);
    expect(exitCode(new InputError('no-recording-found', { inputs: ['there'] }))).toBe(2);
    expect(exitCode(new TypeError('a fault'))).toBe(1);
  });

  // POSIX.1-2017, section 2.3: too many files of this process, or of the whole system, are open.
  it.each(['EMFILE', 'ENFILE'])('%s is told as what is to be allowed', (code) => {
    const system = Object.assign(new Error(`${code}, open '/deep/a.wav'`), { code, syscall: 'open' });
    const failure = failureOf('a.wav', system);
    expect(failure.code).toBe('not-readable');
    expect(failureInWords(failure)).toMatch(/too many files are open.*ulimit -n/);
  });

  it('tells what the user can mend from a fault of the program', () => {
    expect(failureOf('a.wav', new InputError('recording-empty'))).toEqual({
      file: 'a.wav',
      code: 'empty-file',
      fault: { code: 'recording-empty', facts: {} },
    });
    const fault = failureOf('a.wav', new TypeError('x is\n  undefined'));
    expect(fault.code).toBe('internal-error');
    expect(failureInWords(fault)).toContain('(TypeError: x is undefined)');
    expect(failureOf('a\tb\n\u001b[2Kc.wav', 'thrown text').file).toBe('a b [2Kc.wav');
    const system = Object.assign(new Error("EIO: i/o error, open '/deep/school/a.wav'"), {
      code: 'EIO',
      syscall: 'open',
    });
    expect(failureInWords(failureOf('a.wav', system))).toContain('(EIO)');
    expect(failureInWords(failureOf('a.wav', 'thrown text'))).toContain('(thrown text)');
  });
});

describe('what stands in for the clock and the file', () => {
  it('dates pages by the latest take, and by a fixed day when none is known', () => {
    expect(pageDate(['2026-03-09', null, '2026-03-16', '2026-03-02'])).toEqual(new Date(Date.UTC(2026, 2, 16)));
    expect(pageDate([null])).toEqual(pageDate([]));
  });

  // FIPS 180-4 example: SHA-256("abc").
  it('takes the fingerprint of a file by SHA-256', () => {
    expect(sha256(new TextEncoder().encode('abc'))).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
  });
});
