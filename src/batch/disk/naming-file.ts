import { InputError } from '../../base/index.js';

/**
 * @param path a file or folder as the user gave it
 * @param work what is done with it
 * @returns what the work returns
 * @throws InputError that knows the name, when the work throws one
 */
export function namingFile<T>(path: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof InputError) throw error.about(path);
    throw error;
  }
}
