import { z } from 'zod';

/** Facts that are told along with a code. */
const facts = z.record(z.string(), z.unknown()).optional().meta({
  description: 'what is told along with the code: numbers, texts, lists of them; left out where there is nothing',
});
/** A code with the facts that belong to it: what a sentence beside it is made of. */
export const codeSchema = z.object({
  code: z.string().meta({ description: 'short name, the same in every language' }),
  facts,
});
/** Why there is no number. */
export const notMeasured = z.object({
  notMeasured: z.string().min(3).meta({ description: 'the reason in words, in the language of the document' }),
  code: z
    .string()
    .optional()
    .meta({ description: 'of the reason, the same in every language; missing in older results' }),
  facts,
});
/** Place of a note in the part as performed, from 0. */
export const noteIndex = z.int().min(0);
/** How often the bar has been reached, from 1. */
export const pass = z.int().min(1);
/** A bar as printed. */
export const bar = z.string();
