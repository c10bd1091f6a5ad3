import { z } from 'zod';
import { takeResultSchema } from './take-result-schema.js';

let compiled: typeof takeResultSchema | undefined;

/**
 * A long take has tens of thousands of numbers, and all of them are looked at and rounded: compiled, that takes a third of the
 * time. Compiling takes as long as ten takes, so a thread that reads none does without.
 *
 * @returns the schema of a take's result, compiled on first use
 */
export function compiledTakeResult(): typeof takeResultSchema {
  compiled ??= z.compile(takeResultSchema);
  return compiled;
}
