import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type KeyLine, readKey, writeKey } from '../../src/batch/plan/blind-key.js';
import { inShard } from '../../src/batch/plan/in-shard.js';
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

describe('shares of the takes', () => {
  it('hold every take once, whatever it is called', () => {
    fc.assert(
      fc.property(fc.string(), fc.integer({ min: 1, max: 40 }), (name, of) => {
        const shares = Array.from({ length: of }, (_, i) => inShard(name, { share: i + 1, of }));
        expect(shares.filter(Boolean)).toHaveLength(1);
      }),
    );
  });

  it('are about equal', () => {
    const names = Array.from({ length: 4000 }, (_, i) => `take ${i}`);
    for (let share = 1; share <= 8; share += 1) {
      const count = names.filter((name) => inShard(name, { share, of: 8 })).length;
      // 500 is expected; four standard deviations of a binomial with p = 1/8 are 84.
      expect(Math.abs(count - 500)).toBeLessThan(84);
    }
  });

  // FIPS 180-4: SHA-256("abc") begins with ba7816bf; 0xba7816bf is 3128432319, and that modulo 8 is 7.
  it('follow from the name by SHA-256', () => {
    expect(inShard('abc', { share: 8, of: 8 })).toBe(true);
  });

  it('are all of it when there is only one', () => {
    expect(inShard('a', undefined)).toBe(true);
  });
});
