import { createHash } from 'node:crypto';
import type { Shard } from '../types.js';

/**
 * Whether a take belongs to one share of several. It follows from the take's name alone, so that every machine that is
 * given the same takes comes to the same shares, and each take is in exactly one.
 *
 * @param name the take's name
 * @param shard which share, undefined when there is only one
 * @returns true when it does
 *
 * Source: definition: the first 32 bits of SHA-256 (FIPS 180-4) of the name in NFC, modulo the number of shares.
 */
export function inShard(name: string, shard: Shard | undefined): boolean {
  if (shard === undefined) return true;
  const digest = createHash('sha256').update(name.normalize('NFC')).digest();
  return digest.readUInt32BE(0) % shard.of === shard.share - 1;
}
