import fc from 'fast-check';
import { anywhere } from './how-much.js';

/** One thing that happens to a file: its bytes in, the damaged bytes out. */
type Damage = (bytes: Uint8Array) => Uint8Array;

/** Values at which counters and sizes turn over, in both orders of bytes. */
const AWKWARD = [
  [0],
  [0xff],
  [0x7f, 0xff],
  [0xff, 0xff],
  [0, 0, 0, 0],
  [0xff, 0xff, 0xff, 0xff],
  [0xff, 0xff, 0xff, 0x7f],
  [0x7f, 0xff, 0xff, 0xff],
  [0, 0, 0, 0x80],
  [1, 0, 0, 0],
  [0, 0, 0xc0, 0x7f],
];

const placeIn = (bytes: Uint8Array, at: number): number => Math.floor(at * bytes.length);

function joined(...pieces: readonly Uint8Array[]): Uint8Array {
  return Uint8Array.from(Buffer.concat(pieces));
}

/** Heads matter most: places are drawn from the first bytes as often as from all. */
const place = fc.tuple(anywhere, fc.boolean()).map(([at, early]) => (early ? at ** 3 : at));

const bitFlips = fc.array(fc.tuple(place, fc.nat(7)), { minLength: 1, maxLength: 12 }).map(
  (flips): Damage =>
    (bytes) => {
      const out = bytes.slice();
      for (const [at, bit] of flips) if (out.length > 0) out[placeIn(out, at)]! ^= 1 << bit;
      return out;
    },
);

const overwritten = fc.tuple(place, fc.constantFrom(...AWKWARD)).map(
  ([at, value]): Damage =>
    (bytes) => {
      const out = bytes.slice();
      out.set(value.slice(0, out.length - placeIn(out, at)), placeIn(out, at));
      return out;
    },
);

const cutOff = anywhere.map(
  (at): Damage =>
    (bytes) =>
      bytes.slice(0, placeIn(bytes, at)),
);

const cutOut = fc.tuple(place, fc.nat(64)).map(
  ([at, length]): Damage =>
    (bytes) =>
      joined(bytes.subarray(0, placeIn(bytes, at)), bytes.subarray(placeIn(bytes, at) + length)),
);

const repeated = fc.tuple(place, fc.nat(400), fc.integer({ min: 1, max: 40 })).map(
  ([at, length, times]): Damage =>
    (bytes) => {
      const from = placeIn(bytes, at);
      const piece = bytes.subarray(from, from + length);
      return joined(bytes.subarray(0, from), ...Array.from({ length: times }, () => piece), bytes.subarray(from));
    },
);

const putIn = fc.tuple(place, fc.uint8Array({ maxLength: 40 })).map(
  ([at, piece]): Damage =>
    (bytes) =>
      joined(bytes.subarray(0, placeIn(bytes, at)), piece, bytes.subarray(placeIn(bytes, at))),
);

const moved = fc.tuple(place, place, fc.nat(200)).map(
  ([from, to, length]): Damage =>
    (bytes) => {
      const out = bytes.slice();
      out.copyWithin(placeIn(out, to), placeIn(out, from), placeIn(out, from) + length);
      return out;
    },
);

/**
 * @param valid files that can be read
 * @returns one of them, damaged in one to five ways: bits flipped, sizes overwritten, cut off, pieces cut out, repeated, put
 *   in or moved
 */
export function damagedBytes(valid: readonly Uint8Array[]): fc.Arbitrary<Uint8Array> {
  const damage = fc.oneof(bitFlips, overwritten, cutOff, cutOut, repeated, putIn, moved);
  return fc
    .tuple(fc.constantFrom(...valid), fc.array(damage, { minLength: 1, maxLength: 5 }))
    .map(([file, damages]) => damages.reduce((bytes, one) => one(bytes), file));
}
