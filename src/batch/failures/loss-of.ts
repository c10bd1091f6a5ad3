import { failureFor } from '../failure-for.js';
import type { LossCode } from '../pool/types.js';
import type { TakeFailure } from '../types.js';

/**
 * @param file the take as the user knows it
 * @param loss how its worker was lost
 * @returns the failure to list
 */
export function lossOf(file: string, loss: LossCode): TakeFailure {
  return failureFor(file, { code: loss, facts: {} });
}
