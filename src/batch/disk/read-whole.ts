import { closeSync, constants, fstatSync, openSync, readSync, type Stats, statSync } from 'node:fs';
import { InputError } from '../../base/index.js';
import { diskFault } from './disk-fault.js';

/** Half an hour of 192 kHz stereo 24 bit is 2 GB; a take is a few minutes. */
export const LONGEST_TAKE_BYTES = 2 ** 30;
/** A take's document is well below a megabyte. */
export const LARGEST_RESULT_BYTES = 64 * 2 ** 20;
/** Larger than any file that is written for a take. */
export const LARGEST_DOCUMENT_BYTES = 2 ** 28;
/** Of one call to the system. */
const PIECE_BYTES = 2 ** 26;
/** Enough to find how long a recording is. */
const HEAD_BYTES = 2 ** 16;

/**
 * Reads a file whole, and makes sure that nobody wrote to it meanwhile. Links are followed; what is no ordinary file, such as
 * a pipe or a device, is not waited for. Never more is read than the file said it holds.
 *
 * @param path the file
 * @param limitBytes a larger file is refused before more than its head is read
 * @param onHead told the file's first bytes and its size before the rest is read; what it throws ends the reading
 * @param memory gives room for so many bytes, new room where it is left out
 * @returns its bytes
 * @throws InputError `no-such-file`, `not-readable`, or `changed-while-read` when it was written to meanwhile
 *
 * Fstat(2) in POSIX.1-2017 for what shows a change.
 */
export function readWhole(
  path: string,
  limitBytes: number,
  onHead: (head: Uint8Array, fileBytes: number) => void = () => {},
  memory: (length: number) => Uint8Array = (length) => Buffer.allocUnsafeSlow(length),
): Uint8Array {
  return attempted(() => {
    refuseUnfit(statSync(path));
    return readUnchanged(path, limitBytes, onHead, memory);
  });
}

function refuseUnfit(facts: Stats): void {
  if (facts.isDirectory()) throw new InputError('folder-for-file');
  if (!facts.isFile()) throw new InputError('no-ordinary-file');
}

function refuseLarge({ size }: Stats, limitBytes: number): void {
  if (size <= limitBytes) return;
  const megabytes = (bytes: number): number => Math.ceil(bytes / 2 ** 20);
  throw new InputError('file-too-large', { megabytes: megabytes(size), most: Math.floor(limitBytes / 2 ** 20) });
}

function readUnchanged(
  path: string,
  limitBytes: number,
  onHead: (head: Uint8Array, fileBytes: number) => void,
  memory: (length: number) => Uint8Array,
): Uint8Array {
  const file = openSync(path, constants.O_RDONLY | constants.O_NONBLOCK);
  try {
    // Another file may have come to this name since it was looked at.
    const facts = fstatSync(file);
    refuseUnfit(facts);
    const head = new Uint8Array(Math.min(HEAD_BYTES, facts.size));
    onHead(head.subarray(0, readSync(file, head, 0, head.length, 0)), facts.size);
    refuseLarge(facts, limitBytes);
    const before = fstatSync(file, { bigint: true });
    const bytes = memory(Number(before.size));
    let length = 0;
    for (let read = -1; read !== 0 && length < bytes.length; length += read) {
      read = readSync(file, bytes, length, Math.min(PIECE_BYTES, bytes.length - length), length);
    }
    const endsHere = readSync(file, new Uint8Array(1), 0, 1, length) === 0;
    const after = fstatSync(file, { bigint: true });
    const same = before.size === after.size && before.mtimeNs === after.mtimeNs && length === bytes.length;
    if (same && endsHere) return bytes;
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
