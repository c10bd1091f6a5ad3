import { Decoder, type DecoderOptions } from '../../src/decode/apart/decoder.js';

/** The program as it is gathered: tests of the process that decodes need it built, as `npm test` does. */
const PROGRAM = new URL('../../dist/program/decoder-process.js', import.meta.url);

/** @returns a decoder whose process runs the program that is built */
export function decoderHere(options: DecoderOptions = {}): Decoder {
  return new Decoder({ entry: PROGRAM, ...options });
}
