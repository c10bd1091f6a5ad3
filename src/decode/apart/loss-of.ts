import { InputError } from '../../base/index.js';

/** How a decoder may be lost over a file. */
export type LossCode = 'decoder-died' | 'decoder-too-slow' | 'decoder-too-large';

/**
 * @param name what the file is, with its article
 * @param code how the decoder was lost
 * @returns what the user is told: what was found, what is needed
 *
 * Source: definition.
 */
export function lossOf(name: string, code: LossCode): InputError {
  if (code === 'decoder-too-slow') {
    return new InputError(
      code,
      `this is ${name} whose decoding does not end, so it is damaged; copy or record the take again`,
    );
  }
  if (code === 'decoder-too-large') {
    return new InputError(
      code,
      `this is ${name} that needs more memory than a take should; cut it to the take, or record it again`,
    );
  }
  return new InputError(
    code,
    `this is ${name} at which the decoder broke down, so it is damaged; copy or record the take again`,
  );
}
