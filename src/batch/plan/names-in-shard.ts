import { byCodePoint, sha256 } from '../../base/index.js';
import type { Shard } from '../types.js';

/**
 * Which takes belong to one share of several. Takes are put in the order of a hash of their names, which mixes schools and
 * days, and the line is cut in stretches of the same length. So every machine that is given the same takes comes to the same
 * shares, each take is in exactly one, and no share has more than one take more than another. A take that comes or goes moves
 * each cut by less than one take: at most one take at every cut changes its share.
 *
 * @param names of all takes, in any order; a name that comes twice counts once
 * @param shard which share, undefined when there is only one
 * @returns the names that belong to it
 *
 * Source: definition: in the order of SHA-256 (FIPS 180-4) of the name in NFC, the take at place i of n, from 0, belongs to
 * share ⌊i · shares / n⌋ + 1.
 */
export function namesInShard(names: readonly string[], shard: Shard | undefined): ReadonlySet<string> {
  if (shard === undefined) return new Set(names);
  const placed = [...new Set(names)].map((name) => ({ name, hash: hashOf(name) }));
  placed.sort((a, b) => byCodePoint(a.hash, b.hash) || byCodePoint(a.name, b.name));
  const shareAt = (place: number): number => Math.floor((place * shard.of) / placed.length) + 1;
  return new Set(placed.flatMap(({ name }, place) => (shareAt(place) === shard.share ? [name] : [])));
}

function hashOf(name: string): string {
  return sha256(new TextEncoder().encode(name.normalize('NFC')));
}
