import { InputError } from '../../base/index.js';

const FAULTS: Readonly<Record<string, 'file-missing' | 'file-forbidden' | 'link-in-circle' | 'files-open'>> = {
  ENOENT: 'file-missing',
  ENOTDIR: 'file-missing',
  EACCES: 'file-forbidden',
  EPERM: 'file-forbidden',
  ELOOP: 'link-in-circle',
  EMFILE: 'files-open',
  ENFILE: 'files-open',
};

/** Stands in a name for bytes that are no UTF-8; nothing has that name. Source: Unicode Standard, chapter 23.8. */
const REPLACED = '\ufffd';

/**
 * @param error what reading a file has thrown
 * @returns the fault when the user can put it right, null otherwise
 *
 * Source: error names of POSIX.1-2017, section 2.3.
 */
export function diskFault(error: unknown): InputError | null {
  if (!(error instanceof Error) || !('code' in error)) return null;
  const fault = FAULTS[String(error.code)];
  const path = 'path' in error ? String(error.path) : '';
  if (fault === 'file-missing' && path.includes(REPLACED)) return new InputError('name-not-utf8');
  return fault === undefined ? null : new InputError(fault);
}
