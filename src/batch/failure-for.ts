import { type Failure, kindOf } from '../base/index.js';
import type { TakeFailure } from './types.js';

/**
 * @param file the take as the user knows it
 * @param fault why it could not be reviewed
 * @returns the failure to list
 */
export function failureFor(file: string, fault: Failure): TakeFailure {
  return { file, code: kindOf(fault), fault };
}
