import { tmpdir } from 'node:os';
import { resolve } from 'node:path';
import { expect } from 'vitest';
import { InputError } from '../../src/base/index.js';
import { saidOf } from '../helpers/in-words.js';

/** Five lines of a terminal. */
const LONGEST_MESSAGE = 400;
/** What only the machine knows and no message may tell. */
const PLACES = [resolve(import.meta.dirname, '../..'), tmpdir(), 'node_modules', 'file://', '    at '];

/** The error is one the user can mend: one line that a terminal can print, no place of the machine in it. */
function expectPlain(error: unknown): void {
  if (!(error instanceof InputError)) throw error;
  const { message } = saidOf(error) as InputError;
  expect(message.length).toBeGreaterThan(10);
  expect(message.length).toBeLessThanOrEqual(LONGEST_MESSAGE);
  // no line breaks, no control characters (terminals obey some of them), no half of a surrogate pair
  expect(message).not.toMatch(/[\p{Cc}\p{Cs}\u2028\u2029]/u);
  for (const place of PLACES) expect(message).not.toContain(place);
}

/**
 * Reads something that may be wrong in any way. It is read, or refused in one plain line.
 *
 * @param read the reader with its input
 * @returns what was read, or null when it was refused
 */
export function readOrRefuse<T>(read: () => T): T | null {
  try {
    return read();
  } catch (error) {
    expectPlain(error);
    return null;
  }
}

/** @returns megabytes by which the most memory the process ever held grew while the work was done */
export async function megabytesGrown(work: () => Promise<unknown>): Promise<number> {
  const before = process.resourceUsage().maxRSS;
  await work();
  return (process.resourceUsage().maxRSS - before) / 1024;
}
