import { InputError } from '../../base/index.js';

const FAULTS: Readonly<Record<string, 'file-missing' | 'file-forbidden' | 'link-in-circle'>> = {
  ENOENT: 'file-missing',
  ENOTDIR: 'file-missing',
  EACCES: 'file-forbidden',
  EPERM: 'file-forbidden',
  ELOOP: 'link-in-circle',
};

/**
 * @param error what reading a file has thrown
 * @returns the fault when the user can put it right, null otherwise
 *
 * Source: error names of POSIX.1-2017, section 2.3.
 */
export function diskFault(error: unknown): InputError | null {
  const fault = error instanceof Error && 'code' in error ? FAULTS[String(error.code)] : undefined;
  return fault === undefined ? null : new InputError(fault);
}
