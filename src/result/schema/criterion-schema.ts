import { z } from 'zod';
import { CRITERIA } from '../../brief/index.js';
import { points } from '../quantities.js';
import { codeSchema } from './common-schema.js';

/** The criteria of judgement, in the order of every table. */
export const criterionSchema = z.enum(CRITERIA);

/** Criteria that were there from the beginning: in tables for programs their columns keep their places. */
export const FIRST_CRITERIA = CRITERIA.filter((criterion) => criterion !== 'sound');

/** Criteria whose columns come after all that were there before. */
export const LATER_CRITERIA = CRITERIA.filter((criterion) => criterion === 'sound');

/** One criterion in one line for tables. */
export const criterionLineSchema = z.object({
  criterion: criterionSchema,
  judged: z
    .boolean()
    .optional()
    .meta({ description: 'false: nothing could be said, so that fix and watch are 0 for want of evidence' }),
  fix: z.int().min(0),
  watch: z.int().min(0),
  summary: z.string(),
  reason: codeSchema
    .optional()
    .meta({ description: 'present where nothing could be said: the reason that stands in the summary' }),
  of: z.int().min(0).optional().meta({
    description: 'places measured, and places that were not played: notes, groups and entries, bars …',
  }),
  met: z.int().min(0).optional().meta({ description: 'those of them that are as asked for' }),
  notPlayed: z
    .int()
    .min(0)
    .optional()
    .meta({ description: 'places that were not played; where they are all of them, nothing of it was' }),
  points: z
    .object({ possible: z.number().min(0).meta({ description: 'points' }), given: points().nullable() })
    .optional()
    .meta({
      description:
        'by the brief: possible × met ÷ of, to a tenth; null where nothing was measured, or the take was cut off',
    }),
});
