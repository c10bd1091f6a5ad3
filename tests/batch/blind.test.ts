import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type KeyLine, readKey, writeKey } from '../../src/batch/plan/blind-key.js';
import { numberTakes } from '../../src/batch/plan/number-takes.js';
import { inWords } from '../helpers/in-words.js';

let root = '';

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'blind-'));
});

afterEach(() => {
  rmSync(root, { recursive: true });
});

const who = (player: string | null) => ({ player, date: null, instrument: null });
const take = (file: string, player: string | null) => ({ file, path: `/${file}`, who: who(player) });
const shortOf = (key: readonly KeyLine[]) => key.map(({ number, take: name, file }) => [file, number, name]);

describe('blind numbers', () => {
  const takes = [take('a1.wav', 'Ada'), take('a2.wav', 'Ada'), take('b.wav', 'Ben'), take('c.wav', null)];

  it('follow the lots, not the names; a player has one number', () => {
    const lots: Record<string, string> = { 'a1.wav': '9', 'a2.wav': '5', 'b.wav': '1', 'c.wav': '7' };
    expect(shortOf(numberTakes(takes, [], ({ file }) => lots[file] ?? ''))).toEqual([
      ['b.wav', '01', '01'],
      ['a2.wav', '02', '02'],
      ['c.wav', '03', '03'],
      ['a1.wav', '02', '02-2'],
    ]);
  });

  it('stay as they are when takes are added', () => {
    const before = numberTakes(takes.slice(1), [], ({ file }) => file);
    const after = numberTakes([take('0.wav', 'Cy'), ...takes], before, ({ file }) => file);
    expect(after.slice(0, 3)).toEqual(before);
    expect(shortOf(after.slice(3))).toEqual([
      ['0.wav', '04', '04'],
      ['a1.wav', '01', '01-2'],
    ]);
  });

  it('are different for every take', () => {
    const any = fc.array(fc.tuple(fc.string(), fc.option(fc.constantFrom('Ada', 'Ben', 'Cy'))), { maxLength: 120 });
    fc.assert(
      fc.property(any, any, (first, second) => {
        const takesOf = (list: typeof first) => list.map(([file, player]) => take(file, player));
        const unique = new Map([...takesOf(first), ...takesOf(second)].map((one) => [one.file, one]));
        const key = numberTakes(
          [...unique.values()],
          numberTakes(
            takesOf(first).filter((one) => unique.get(one.file) === one),
            [],
            ({ file }) => file,
          ),
          ({ file }) => file,
        );
        expect(new Set(key.map((line) => line.take)).size).toBe(unique.size);
      }),
    );
  });
});

describe('the key', () => {
  it('is read as it was written, whatever people and files are called', () => {
    const text = fc.string({ unit: 'grapheme' });
    fc.assert(
      fc.property(fc.array(fc.tuple(text, text)), (names) => {
        const key = names.map(([file, player], i) => ({
          number: `${i}`,
          take: `${i}-2`,
          file,
          who: who(player || null),
        }));
        writeFileSync(join(root, 'key.csv'), writeKey(key));
        expect(readKey(join(root, 'key.csv'))).toEqual(key);
      }),
    );
  });

  it('may be missing, but not be something else', () => {
    expect(readKey(join(root, 'key.csv'))).toBeNull();
    writeFileSync(join(root, 'key.csv'), 'number,name\n1,Ada\n');
    expect(inWords(() => readKey(join(root, 'key.csv')))).toThrow('not as it was written');
  });
});
