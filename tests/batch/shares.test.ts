import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { namesInShard } from '../../src/batch/plan/names-in-shard.js';

const allShares = (names: readonly string[], of: number): string[][] =>
  Array.from({ length: of }, (_, i) => [...namesInShard(names, { share: i + 1, of })]);

const shareOf = (names: readonly string[], of: number): Map<string, number> =>
  new Map(allShares(names, of).flatMap((share, i) => share.map((name) => [name, i])));

const someNames = fc.uniqueArray(fc.string(), { maxLength: 60 });
const someShares = fc.integer({ min: 1, max: 40 });

describe('shares of the takes', () => {
  it('hold every take once, whatever it is called', () => {
    fc.assert(
      fc.property(someNames, someShares, (names, of) => {
        expect(allShares(names, of).flat().sort()).toEqual([...names].sort());
      }),
    );
  });

  it('differ by one take at most', () => {
    fc.assert(
      fc.property(someNames, someShares, (names, of) => {
        const sizes = allShares(names, of).map((share) => share.length);
        expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('are the same in whatever order the disk tells the names', () => {
    fc.assert(
      fc.property(
        someNames.chain((names) =>
          fc.tuple(fc.constant(names), fc.shuffledSubarray(names, { minLength: names.length })),
        ),
        someShares,
        ([names, mixed], of) => {
          expect(shareOf(mixed, of)).toEqual(shareOf(names, of));
        },
      ),
    );
  });

  it('move one take at most at every cut when a take is added', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.string(), { minLength: 1, maxLength: 60 }), someShares, ([added, ...names], of) => {
        const before = shareOf(names, of);
        const after = shareOf([...names, added as string], of);
        const moved = names.filter((name) => before.get(name) !== after.get(name));
        expect(moved.length).toBeLessThanOrEqual(of - 1);
      }),
    );
  });

  // By sha256sum: “abc” ba7816bf…, “a” ca978112…, “b” 3e23e816…, so the order is b, abc, a.
  it('are cut from the order of SHA-256', () => {
    expect(allShares(['a', 'b', 'abc'], 2)).toEqual([['b', 'abc'], ['a']]);
    expect(allShares(['a', 'b', 'abc'], 4)).toEqual([['b'], ['abc'], ['a'], []]);
  });

  // Systems spell é as one sign or as two (Unicode NFC and NFD): a take has one share on all of them.
  it('do not mind how an accent is encoded', () => {
    const placesOf = (name: string) => allShares([...'abcdefgh', name], 3).findIndex((share) => share.includes(name));
    expect(placesOf('e\u0301')).toBe(placesOf('\u00e9'));
  });

  it('count a name that comes twice once', () => {
    expect(allShares(['a', 'a', 'b'], 2)).toEqual([['b'], ['a']]);
  });

  it('are all of it when there is only one', () => {
    expect(namesInShard(['a', 'b'], undefined)).toEqual(new Set(['a', 'b']));
  });
});
