import { FAULTS, type Fault, type FaultArguments, type InputErrorCode } from './faults.js';
import { printable } from './printable.js';

/** Facts may quote a file; a message for programmers need not hold all of it. */
const LONGEST_MESSAGE = 400;

/**
 * Something the user can put right, as a code with facts. Whoever speaks to the user looks up the words; the message is for
 * programmers.
 */
export class InputError extends Error {
  /** kind of fault, stable across versions, for scripts */
  readonly code: InputErrorCode;
  readonly fault: Fault;
  /** file or folder it is about, as the user gave it; null when nobody has said */
  readonly path: string | null;

  /** @param fault the fault's code and, where it has some, its facts */
  constructor(...fault: FaultArguments) {
    const [code, facts = {}] = fault;
    super(printable(`${code} ${JSON.stringify(facts)}`).slice(0, LONGEST_MESSAGE));
    this.name = 'InputError';
    this.code = FAULTS[code][0];
    this.fault = { code, facts } as Fault;
    this.path = null;
  }

  /**
   * @param path file or folder as the user gave it
   * @returns the same fault, said to be about it; what is known already stays
   */
  about(path: string): InputError {
    const { code, facts } = this.fault;
    const error = new InputError(...([code, facts] as FaultArguments));
    return this.path === null ? Object.assign(error, { path }) : this;
  }
}
