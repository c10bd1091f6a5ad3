import { createHash } from 'node:crypto';

/**
 * @param bytes any bytes
 * @returns SHA-256 in lower-case hexadecimal, 64 characters
 *
 * Source: FIPS 180-4.
 */
export function sha256(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
