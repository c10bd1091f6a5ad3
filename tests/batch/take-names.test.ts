import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nameTakes } from '../../src/batch/plan/take-names.js';

const named = (...paths: string[]): string[] =>
  nameTakes(paths.map((path) => ({ path, file: path.split('/').at(-1) ?? '' }))).map((take) => take.name);

describe('the name of a take', () => {
  it('is the name of the file without its ending', () => {
    expect(named('/s/2026-03-02_Ada-Lindqvist.wav', '/s/op. 12 no. 3.wave', '/s/plain')).toEqual([
      '2026-03-02_Ada-Lindqvist',
      'op. 12 no. 3',
      'plain',
    ]);
  });

  it('is told apart by the folder when two takes share it, and only then', () => {
    expect(named('/s/week1/ada.wav', '/s/week2/ada.wav', '/s/week2/ben.wav')).toEqual([
      'week1--ada',
      'week2--ada',
      'ben',
    ]);
  });

  it('takes in as many folders as are needed', () => {
    expect(named('/s/1/x/ada.wav', '/s/2/x/ada.wav')).toEqual(['1--x--ada', '2--x--ada']);
  });

  it('stays clear of a take that is called like that already', () => {
    expect(named('/s/1/ada.wav', '/s/2/ada.wav', '/s/1--ada.wav')).toEqual(['s--1--ada', '2--ada', 's--1--ada--2']);
  });

  it('keeps the ending where two takes in one folder differ in nothing else, and names no folder of the machine', () => {
    expect(named('/deep/school/ada.wav', '/deep/school/ada.wave')).toEqual(['ada-wav', 'ada-wave']);
  });

  // Some disks fold letter case (APFS and NTFS by default), and one visible name has two encodings (Unicode NFC, NFD).
  it('counts names as shared that some disks cannot keep apart', () => {
    expect(named('/s/1/Ada.wav', '/s/2/ada.wav')).toEqual(['1--Ada', '2--ada']);
    expect(named('/s/1/\u00e9.wav', '/s/2/e\u0301.wav')).toEqual(['1--\u00e9', '2--e\u0301']);
    expect(named('/s/Ada.wav', '/s/ada.wav')).toEqual(['Ada-wav', 'ada-wav--2']);
  });

  it('holds nothing that would break a line of results or leave the folder', () => {
    expect(named('/s/a\tb\nc.wav', '/s/..\\..\\d.wav')).toEqual(['a_b_c', '.._.._d']);
  });

  // 255 bytes is NAME_MAX on the usual disks (POSIX.1-2017 limits.h names it; Linux, APFS and NTFS set 255).
  it('leaves room for the longest ending', () => {
    const [name = ''] = named(`/s/${'é'.repeat(125)}.wav`);
    expect(Buffer.byteLength(`${name}.json`)).toBeLessThanOrEqual(255);
    expect(named(`/s/${'a'.repeat(240)}1.wav`, `/s/${'a'.repeat(240)}2.wav`).map((n) => n.length)).toEqual([200, 203]);
  });

  it('is different for every take, whatever the files are called', () => {
    const folder = fc.array(fc.constantFrom('a', 'A', 'b', 'a--b', '..'), { maxLength: 3 });
    const file = fc.constantFrom('a.wav', 'A.wav', 'a.WAV', 'a--a.wav', 'a.wav.wav', 'b--a.wave', '.wav', 'a');
    const path = fc.tuple(folder, file).map(([folders, name]) => ['', ...folders, name].join('/'));
    fc.assert(
      fc.property(fc.uniqueArray(path, { maxLength: 12 }), (paths) => {
        const names = named(...paths);
        expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(paths.length);
        for (const name of names) expect(name).not.toMatch(/[/\\]/);
      }),
    );
  });
});
