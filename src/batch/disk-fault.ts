import { InputError } from '../base/index.js';

const MISSING = ['no-such-file', 'there is no such file; check the name'] as const;
const FORBIDDEN = ['not-readable', 'this may not be read; ask its owner for leave to read it'] as const;

const FAULTS: Readonly<Record<string, readonly ['no-such-file' | 'not-readable', string]>> = {
  ENOENT: MISSING,
  ENOTDIR: MISSING,
  EACCES: FORBIDDEN,
  EPERM: FORBIDDEN,
  ELOOP: ['not-readable', 'this is a link that leads back to itself; give the file it should lead to'],
};

/**
 * @param error what reading a file has thrown
 * @returns the same in plain words when the user can put it right, null otherwise
 *
 * Source: error names of POSIX.1-2017, section 2.3.
 */
export function diskFault(error: unknown): InputError | null {
  const fault = error instanceof Error && 'code' in error ? FAULTS[String(error.code)] : undefined;
  return fault === undefined ? null : new InputError(...fault);
}
