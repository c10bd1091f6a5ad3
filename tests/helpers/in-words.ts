import { InputError } from '../../src/base/index.js';
import type { TakeFailure } from '../../src/batch/types.js';
import { failureSaid } from '../../src/words/index.js';

/**
 * @param error whatever was thrown
 * @returns the same; what a user can put right says in its message what the user reads in English
 */
export function saidOf(error: unknown): unknown {
  if (!(error instanceof InputError)) return error;
  const said = failureSaid('en', error.fault);
  error.message = error.path === null ? said : `${error.path}: ${said}`;
  return error;
}

/**
 * @param act what may refuse
 * @returns the same act, which refuses in words
 */
export function inWords<T>(act: () => T): () => T {
  return () => {
    try {
      const done = act();
      return done instanceof Promise ? (done.catch((error) => Promise.reject(saidOf(error))) as T) : done;
    } catch (error) {
      throw saidOf(error);
    }
  };
}

/**
 * @param failure as a run lists it
 * @returns what the user reads of it in English
 */
export function failureInWords({ fault }: TakeFailure): string {
  return failureSaid('en', fault);
}
