import { printable } from './printable.js';

/** Short machine-readable names of what can be wrong with a user's input. */
export type InputErrorCode =
  | 'no-such-file'
  | 'not-readable'
  | 'empty-file'
  | 'not-a-wav'
  | 'wav-damaged'
  | 'wav-unsupported'
  | 'not-a-recording'
  | 'sound-not-read'
  | 'recording-damaged'
  | 'recording-too-short'
  | 'recording-too-long'
  | 'sound-library-missing'
  | 'decoder-died'
  | 'decoder-too-slow'
  | 'decoder-too-large'
  | 'not-musicxml'
  | 'score-refused'
  | 'score-without-notes'
  | 'no-takes'
  | 'changed-while-read'
  | 'bad-roster'
  | 'cannot-write'
  | 'bad-brief'
  | 'bad-result'
  | 'no-results'
  | 'bad-option';

/**
 * Something the user can put right. The message is one line in plain words: what was found and what is needed.
 * It never holds a path; whoever knows the file adds its name in front. Messages may quote what stands in a file, so what
 * cannot be printed on one line is replaced.
 *
 * Source: definition.
 */
export class InputError extends Error {
  readonly code: InputErrorCode;

  /**
   * @param code short name, stable across versions, for scripts
   * @param message one line: what was found, what is needed
   */
  constructor(code: InputErrorCode, message: string) {
    super(printable(message));
    this.name = 'InputError';
    this.code = code;
  }
}
