import type { LossCode } from './pool/types.js';
import type { TakeFailure } from './types.js';

const MESSAGES: Readonly<Record<LossCode, string>> = {
  'took-too-long':
    'listening to this took longer than a take of its length should; review it by itself with a larger --time-limit, or cut it to the étude',
  'too-much-memory':
    'listening to this needed more memory than a take of its length should; cut it to the étude, or review it by itself with a larger --memory-limit',
  'worker-died': 'the program broke down over this take and went on with the others; please report it',
};

/**
 * @param file the take as the user knows it
 * @param loss how its worker was lost
 * @returns the failure to list
 *
 * Source: definition.
 */
export function lossOf(file: string, loss: LossCode): TakeFailure {
  return { file, code: loss, message: MESSAGES[loss] };
}
