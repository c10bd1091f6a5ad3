import { readFileSync, statSync } from 'node:fs';
import { InputError } from '../base/index.js';
import { diskFault } from './disk-fault.js';

/**
 * Reads a file of the user's whole.
 *
 * @param path the file
 * @param limitBytes a larger file is refused before anything of it is read
 * @returns its bytes
 * @throws InputError `no-such-file` or `not-readable`
 *
 * Source: definition.
 */
export function readWhole(path: string, limitBytes: number): Uint8Array {
  const facts = attempted(() => statSync(path));
  if (facts.isDirectory()) throw new InputError('not-readable', 'this is a folder; a file is needed');
  if (!facts.isFile()) throw new InputError('not-readable', 'this is not an ordinary file; a file on a disk is needed');
  if (facts.size > limitBytes) {
    const [size, limit] = [facts.size, limitBytes].map((bytes) => Math.round(bytes / 2 ** 20));
    throw new InputError('not-readable', `this file has ${size} MB; at most ${limit} MB are read`);
  }
  return attempted(() => readFileSync(path));
}

function attempted<T>(read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw diskFault(error) ?? error;
  }
}
