import { closeSync, constants, fstatSync, openSync, readFileSync, statSync } from 'node:fs';
import { InputError } from '../../base/index.js';
import { diskFault } from './disk-fault.js';

/** Half an hour of 192 kHz stereo 24 bit is 2 GB; a take is a few minutes. */
export const LONGEST_TAKE_BYTES = 2 ** 30;

/**
 * Reads a file of the user's whole, and makes sure that nobody wrote to it meanwhile. Links are followed.
 *
 * @param path the file
 * @param limitBytes a larger file is refused before anything of it is read
 * @returns its bytes
 * @throws InputError `no-such-file`, `not-readable`, or `changed-while-read` when it was written to meanwhile
 *
 * Fstat(2) in POSIX.1-2017 for what shows a change.
 */
export function readWhole(path: string, limitBytes: number): Uint8Array {
  const facts = attempted(() => statSync(path));
  if (facts.isDirectory()) throw new InputError('folder-for-file');
  if (!facts.isFile()) throw new InputError('no-ordinary-file');
  if (facts.size > limitBytes) {
    const megabytes = (bytes: number): number => Math.round(bytes / 2 ** 20);
    throw new InputError('file-too-large', { megabytes: megabytes(facts.size), most: megabytes(limitBytes) });
  }
  return attempted(() => readUnchanged(path));
}

function readUnchanged(path: string): Uint8Array {
  const file = openSync(path, constants.O_RDONLY | constants.O_NONBLOCK);
  try {
    const before = fstatSync(file, { bigint: true });
    const bytes = readFileSync(file);
    const after = fstatSync(file, { bigint: true });
    const same = before.size === after.size && before.mtimeNs === after.mtimeNs && BigInt(bytes.length) === after.size;
    if (same) return bytes;
    throw new InputError('file-changed');
  } finally {
    closeSync(file);
  }
}

function attempted<T>(read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw diskFault(error) ?? error;
  }
}
