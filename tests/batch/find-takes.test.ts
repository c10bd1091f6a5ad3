import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findTakes } from '../../src/batch/plan/find-takes.js';

let root = '';

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'takes-'));
});

afterEach(() => {
  rmSync(root, { recursive: true });
});

function put(...files: string[]): void {
  for (const file of files) {
    mkdirSync(join(root, dirname(file)), { recursive: true });
    writeFileSync(join(root, file), 'x');
  }
}

const filesOf = (found: ReturnType<typeof findTakes>): string[] => found.takes.map((take) => take.file);

describe('in a folder', () => {
  it('finds WAV files at any depth, in any letter case of the ending', () => {
    put('a.wav', 'week 1/b.WAV', 'week 1/deep/c.Wave', 'notes.txt', 'cover.png');
    expect(filesOf(findTakes([root]))).toEqual(['a.wav', 'week 1/b.WAV', 'week 1/deep/c.Wave']);
  });

  // AppleDouble companions: Apple, "AppleSingle/AppleDouble formats", RFC 1740; a leading dot hides a file (POSIX ls).
  it('passes over hidden files and folders and the companions that some systems write', () => {
    put('a.wav', '._a.wav', '.hidden.wav', '.trash/b.wav', '__MACOSX/._c.wav');
    expect(filesOf(findTakes([root]))).toEqual(['a.wav']);
  });

  // Code points: Z U+005A, a U+0061, é U+00E9, U+FF21 fullwidth A, U+1D49C script A (a surrogate pair in UTF-16).
  it('orders by code point, not by language nor by UTF-16 unit', () => {
    put('\u{1D49C}.wav', '\uFF21.wav', 'é.wav', 'a.wav', 'Z.wav');
    expect(filesOf(findTakes([root]))).toEqual(['Z.wav', 'a.wav', 'é.wav', '\uFF21.wav', '\u{1D49C}.wav']);
  });

  it('finds recordings of every kind by their endings', () => {
    put('a.wav', 'b.mp3', 'c/d.FLAC', 'e.m4a', 'f.aif', 'g.ogg', 'h.wma', 'i.opus', 'j.3gp', 'k.mov', 'l.webm');
    const found = findTakes([root]);
    expect(filesOf(found)).toHaveLength(11);
    expect(found.failures).toEqual([]);
  });

  // First bytes: ISO/IEC 14496-12 (ftyp), RFC 3533 (OggS), ISO/IEC 23008-12 (a still picture in the same boxes).
  it('finds recordings without a telling name by their first bytes', () => {
    put('notes', 'part.musicxml');
    writeFileSync(join(root, 'Recording 7'), '\0\0\0\x20ftypM4A \0\0\0\0');
    writeFileSync(join(root, 'voice.dat'), 'OggS\0\x02');
    writeFileSync(join(root, 'photo.heic'), '\0\0\0\x20ftypheic\0\0\0\0');
    writeFileSync(join(root, 'empty'), '');
    expect(filesOf(findTakes([root]))).toEqual(['Recording 7', 'voice.dat']);
  });

  it('searches a folder whose name ends like a take', () => {
    put('week1.wav/a.wav');
    expect(filesOf(findTakes([root]))).toEqual(['week1.wav/a.wav']);
  });

  it('comes to an end where a link leads back; a take behind a broken link is left to the reading', () => {
    put('week 1/a.wav');
    symlinkSync(root, join(root, 'week 1', 'back'));
    symlinkSync(join(root, 'nowhere'), join(root, 'lost.wav'));
    symlinkSync('loop', join(root, 'loop'));
    const found = findTakes([root]);
    expect(filesOf(found)).toEqual(['lost.wav', 'week 1/a.wav']);
    expect(found.failures).toEqual([]);
  });
});

describe('what is named', () => {
  it('takes a file whatever it is called', () => {
    put('a.mp3', '.hidden.wav', 'no ending');
    const found = findTakes(['.hidden.wav', 'a.mp3', 'no ending'].map((file) => join(root, file)));
    expect(filesOf(found)).toEqual(['.hidden.wav', 'a.mp3', 'no ending']);
    expect(found.failures).toEqual([]);
  });

  it('takes nothing twice', () => {
    put('a.wav', 'b.mp3', 'week 1/c.wav');
    const found = findTakes([join(root, 'a.wav'), root, join(root, 'week 1'), `${root}/.`]);
    expect(filesOf(found)).toEqual(['a.wav', 'b.mp3', 'week 1/c.wav']);
  });

  it('lists what does not exist and goes on', () => {
    put('a.wav');
    const found = findTakes([join(root, 'typo.wav'), join(root, 'a.wav')]);
    expect(filesOf(found)).toEqual(['a.wav']);
    expect(found.failures.map(({ failure }) => failure)).toEqual([
      { file: 'typo.wav', code: 'no-such-file', fault: { code: 'file-missing', facts: {} } },
    ]);
  });

  it('gives the same takes in whatever order they are named', () => {
    put('1/a.wav', '2/b.wav', 'c.wav');
    const inputs = ['1', '2', 'c.wav'].map((file) => join(root, file));
    expect(findTakes(inputs)).toEqual(findTakes(inputs.reverse()));
  });
});
