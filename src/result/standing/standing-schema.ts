import { z } from 'zod';
import { points, share } from '../quantities.js';
import { criterionSchema } from '../schema/criterion-schema.js';
import { languageSchema } from '../schema/language-schema.js';
import { endingSchema } from '../schema/played-schema.js';
import { outcomeSchema, toolSchema } from '../schema/take-result-schema.js';

const count = z.int().min(0);

const placeSchema = z
  .object({ best: count, worst: count })
  .meta({ description: 'from 1; more than one place where differences are smaller than the error of measuring' });

const panelMarksSchema = z.object({
  judges: z.array(z.object({ judge: z.string(), points: points('of all criteria this judge has marked') })),
  mean: points(),
  spread: points('standard deviation between the judges').nullable().meta({ description: 'null with one judge' }),
  place: placeSchema,
  measuredPlace: placeSchema.nullable().meta({ description: 'by points, among the takes the panel has marked' }),
});

const standingTakeSchema = z.object({
  name: z.string(),
  player: z.string().nullable(),
  date: z.string().nullable(),
  outcome: outcomeSchema,
  bars: z.object({ played: count, of: count, ending: endingSchema }).nullable(),
  criteria: z.array(z.object({ criterion: criterionSchema, given: points().nullable(), possible: points() })),
  given: points().nullable().meta({ description: 'null for a take that earns no points: not reviewed, or cut off' }),
  possible: points('what could be given; less than all where a criterion could not be measured'),
  error: points('standard error of the points given').nullable(),
  place: placeSchema.nullable(),
  chair: z.enum(['sure', 'listen-again', 'no']).nullable().meta({
    description: 'whether the take is among the chairs; listen-again: the measures do not tell; null without --chairs',
  }),
  panel: panelMarksSchema.nullable().meta({ description: 'the panel’s own marks; null where there are none' }),
  partsWays: z.boolean().meta({
    description: 'the panel’s place lies outside those the measures leave open among the takes it has marked',
  }),
});

const standingGroupSchema = z.object({
  score: z.string(),
  title: z.string(),
  part: z.string(),
  criteria: z.array(z.object({ criterion: criterionSchema, possible: points() })),
  judges: z.array(z.string()),
  agreement: share('Kendall’s W, corrected for ties, over takes that all judges have marked')
    .nullable()
    .meta({ description: 'null where fewer than two judges have marked the same two takes' }),
  takes: z.array(standingTakeSchema).meta({ description: 'most points first; those without points last' }),
});

/** The table a director needs, beside and never in place of a panel. */
export const standingSchema = z.object({
  format: z.literal('standing'),
  version: z.literal(1),
  tool: toolSchema,
  language: languageSchema,
  chairs: count.nullable(),
  groups: z.array(standingGroupSchema).meta({ description: 'one a score' }),
  unknown: z.array(z.string()).meta({ description: 'takes of the panel’s marks that are not among the results' }),
});

/** The table as a document. */
export type Standing = z.infer<typeof standingSchema>;

/** The takes of one score in it. */
export type StandingGroup = Standing['groups'][number];

/** One take in it. */
export type StandingTake = StandingGroup['takes'][number];
