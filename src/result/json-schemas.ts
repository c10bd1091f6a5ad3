import { z } from 'zod';
import { takeResultSchema } from './schema/take-result-schema.js';
import { sectionResultSchema } from './section/section-result-schema.js';

const DRAFT = { target: 'draft-2020-12', io: 'input' } as const;

/**
 * @returns the JSON Schema (draft 2020-12) of a take's result document; further properties are allowed everywhere
 *
 * Source: JSON Schema 2020-12, generated from {@link takeResultSchema}.
 */
export function takeResultJsonSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(takeResultSchema, DRAFT) };
}

/**
 * @returns the JSON Schema (draft 2020-12) of the section's result document
 *
 * Source: JSON Schema 2020-12, generated from {@link sectionResultSchema}.
 */
export function sectionResultJsonSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(sectionResultSchema, DRAFT) };
}
