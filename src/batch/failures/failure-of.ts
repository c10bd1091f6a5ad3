import { InputError } from '../../base/index.js';
import { diskFault } from '../disk/disk-fault.js';
import { failureFor } from '../failure-for.js';
import type { TakeFailure } from '../types.js';
import { lossOf } from './loss-of.js';

/**
 * Why a take could not be reviewed. What the user can put right comes out as it was thrown; anything else is owned as a
 * fault of the program.
 *
 * @param path the take as the user knows it, below the folder given; never a path of the machine
 * @param error whatever was thrown
 * @returns the failure to list
 */
export function failureOf(path: string, error: unknown): TakeFailure {
  const file = oneLine(path);
  const known = error instanceof InputError ? error : diskFault(error);
  if (known !== null) return failureFor(file, known.fault);
  if (isOutOfMemory(error)) return lossOf(file, 'too-much-memory');
  return failureFor(file, { code: 'internal-error', facts: { said: oneLine(inShort(error)) } });
}

/** How the engine says that no memory can be had for a buffer. */
function isOutOfMemory(error: unknown): boolean {
  return error instanceof RangeError && /allocation failed/i.test(error.message);
}

/** The message of a fault of the system names the file with all its folders, so only its code is told. */
function inShort(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  return 'syscall' in error && 'code' in error ? String(error.code) : `${error.name}: ${error.message}`;
}

function oneLine(text: string): string {
  return text.replaceAll(/[\p{Cc}\p{Zl}\p{Zp}]+ */gu, ' ').trim();
}
