import { FAILURES, type Failure, isCoded, type LooseCode } from '../../../base/index.js';
import { codeOf } from './code-of.js';
import { OLD_FAILURES } from './old-failures.js';

/** A failure as a file holds it: earlier programs kept a sentence alone. */
export interface KeptFailure {
  readonly fault?: LooseCode | undefined;
  readonly message?: string | undefined;
}

const codeOfFailure = codeOf(OLD_FAILURES, FAILURES);

/**
 * @param kept a failure that a section's document or a take's record holds
 * @returns the failure; one that nobody knows any more is told as it was
 */
export function failureTold({ fault, message = '' }: KeptFailure): Failure {
  const { code = '', facts = {} } = fault ?? codeOfFailure(message) ?? {};
  const coded = { code, facts };
  return isCoded(FAILURES, coded) ? coded : { code: 'told-before', facts: { said: message } };
}
