import { z } from 'zod';
import { progressResultSchema } from './progress-result-schema.js';

/**
 * @returns the JSON Schema (draft 2020-12) of the document about players over weeks
 *
 * Source: JSON Schema 2020-12, generated from {@link progressResultSchema}.
 */
export function progressResultJsonSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(progressResultSchema, { target: 'draft-2020-12', io: 'input' }) };
}
