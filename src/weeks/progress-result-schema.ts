import { z } from 'zod';
import {
  codeSchema,
  criterionSchema,
  findingKindSchema,
  languageSchema,
  maybe,
  measured,
  notMeasured,
  outcomeSchema,
  toolSchema,
} from '../result/index.js';
import { MEASURE_IDS } from '../standards/index.js';

const count = z.int().min(0);
const day = z.string().meta({ description: 'ISO 8601 day' });
const measureId = z.enum(MEASURE_IDS);
const bound = z.number().nullable();

/** One measure, with its noise. */
export const measureSchema = z.object({
  measure: measureId,
  criterion: criterionSchema,
  unit: z.string(),
  wanted: z.object({ low: bound, high: bound }).meta({ description: 'where the number is meant to lie; null is open' }),
  usual: z.array(measured()).meta({ description: 'usual standards; a teacher’s brief may have asked for others' }),
  noise: z.object({
    standardDeviation: measured('of one take, as used'),
    smallestChange: measured('between two days of one take each'),
    working: z.object({
      measuring: measured(),
      measuringSource: z.string().meta({ description: 'where it comes from, in English' }),
      playing: measured(),
    }),
    fromTakes: z
      .object({ standardDeviation: maybe(measured()), degreesOfFreedom: count, days: count })
      .meta({ description: 'scatter of the takes of one player on one day, pooled' }),
  }),
});

const changeSchema = z.object({
  from: day,
  to: day,
  difference: measured(),
  smallest: measured('the smallest difference called a change'),
  verdict: z.enum(['none', 'better', 'worse', 'different']),
});

const followedSchema = z.object({
  measure: measureId,
  days: z
    .array(z.object({ date: day, value: maybe(measured()), takes: z.array(measured()) }))
    .meta({ description: 'one a day with a reviewed take; value is the mean of the day’s takes' }),
  sinceFirst: changeSchema.nullable(),
  sinceLast: changeSchema.nullable(),
  course: z
    .enum(['changed', 'stable', 'to-and-fro'])
    .nullable()
    .meta({ description: 'since the first day; to-and-fro: back where it began, but not all the time' }),
});

/** What is told over weeks is never praise. */
const troubleSchema = findingKindSchema.exclude(['went-well']);

/** How a place or a quality stands on the latest day. */
const storySchema = z.object({
  status: z.enum(['fixed', 'eased', 'returning', 'still', 'new', 'grown', 'not-judged', 'seen']).meta({
    description:
      'eased: only worth a listen now; returning: had been free and came back; grown: only worth a listen before; seen: there is only one day to go by',
  }),
  days: z
    .array(z.enum(['fix', 'watch', 'clear', 'not-judged']))
    .meta({ description: 'one a day, as in the list of days' }),
  since: day.nullable().meta({ description: 'first day of the present state, null when it is not judged' }),
});

const barStorySchema = z.object({
  bar: z.string(),
  criterion: criterionSchema,
  kind: troubleSchema.meta({ description: 'of the latest finding there' }),
  ...storySchema.shape,
});

const throughoutSchema = z.object({ kind: troubleSchema, criterion: criterionSchema, ...storySchema.shape });

const goalSchema = z.discriminatedUnion('about', [
  z.object({ about: z.literal('bars'), kind: troubleSchema, bars: z.array(z.string()) }),
  z.object({ about: z.literal('throughout'), kind: troubleSchema }),
  z
    .object({ about: z.literal('measure'), measure: measureId })
    .meta({ description: 'nothing is to fix, and this slipped back since the first day' }),
  z.object({ about: z.literal('hear-again'), bars: z.array(z.string()) }),
  z
    .object({ about: z.literal('listen'), kind: troubleSchema, bars: z.array(z.string()) })
    .meta({ description: 'nothing is to fix; no bars where it is about the whole' }),
  z.object({ about: z.literal('keep') }).meta({ description: 'nothing is open' }),
]);

const gapSchema = z.object({
  week: day.nullable().meta({ description: 'its Monday; null when the day is not known' }),
  date: day.nullable(),
  why: z.enum(['no-take', 'not-this-score', 'too-poor', 'failed']),
  file: z.string().nullable(),
  detail: z.string().nullable().meta({ description: 'what was said about a file that could not be read' }),
  fault: codeSchema.optional().meta({ description: 'what the detail is made of' }),
});

const costSchema = (about: string) =>
  z
    .union([
      notMeasured,
      z.object({
        db: measured('median of the differences'),
        intervalDb: z.array(measured()).length(2).meta({ description: '95 % interval' }),
        count,
        beside: z.enum(['more', 'less', 'unclear']).meta({ description: 'beside the standard, the whole interval' }),
      }),
    ])
    .meta({ description: about });

const besideSlurredSchema = z
  .object({
    date: day,
    sag: costSchema('how far the tone sags between tongued notes, beyond what it does at the same places slurred; dB'),
    softer: costSchema('how much softer tongued notes are than slurred; levels of the takes taken out; dB'),
  })
  .meta({ description: 'the same bars slurred for practice and tongued, on the latest day that has both takes' });

/** One player with one étude. */
export const playerSchema = z.object({
  player: z.string(),
  spellings: z.array(z.string()).meta({ description: 'all ways in which the name is written' }),
  days: z.array(z.object({ date: day, week: day, takes: count })),
  measures: z.array(followedSchema),
  bars: z.array(barStorySchema).meta({ description: 'bars with something to fix on some day, in printed order' }),
  throughout: z
    .array(throughoutSchema)
    .meta({ description: 'what was to fix on some day in the playing as a whole: tempo, tuning' }),
  besideSlurred: besideSlurredSchema.optional(),
  goal: goalSchema.nullable().meta({ description: 'the one goal for the next lesson; null without a reviewed take' }),
  gaps: z.array(gapSchema),
});

const sectionSchema = z.object({
  weeks: z.array(day).meta({ description: 'Mondays, weeks without any take left out' }),
  medians: z.array(
    z.object({
      measure: measureId,
      weeks: z.array(z.object({ week: day, value: measured(), players: count })),
    }),
  ),
  bars: z.array(
    z.object({
      bar: z.string(),
      criterion: criterionSchema,
      kind: findingKindSchema,
      had: z.array(z.string()).meta({ description: 'players who had it to fix on an earlier day' }),
      have: z.array(z.string()).meta({ description: 'players who have it to fix in their latest takes' }),
      open: z.array(z.string()).meta({ description: 'players who had it and for whom it is eased or not judged' }),
      mastered: z.boolean().meta({ description: 'somebody had it, and nobody has it any more' }),
    }),
  ),
});

/** One étude with all who played it. */
export const etudeSchema = z.object({
  title: z.string(),
  part: z.string(),
  bars: z.array(z.string()),
  notes: count,
  files: z.array(z.object({ file: z.string(), sha256: z.string(), firstDate: day.nullable() })),
  change: z.enum(['none', 'compared', 'apart']).meta({
    description:
      'compared: the file changed but title, bars and notes did not; apart: another version of the étude is listed by itself',
  }),
  players: z.array(playerSchema),
  section: sectionSchema,
});

/**
 * One document for players over weeks.
 */
export const progressResultSchema = z
  .object({
    format: z.literal('progress-result'),
    version: z.literal(1),
    tool: toolSchema,
    language: languageSchema.optional(),
    blind: z
      .object({ followed: z.array(z.string()), apart: z.array(z.string()) })
      .optional()
      .meta({
        description:
          'folders of results with numbers instead of names: those in which numbers stand for players, and those in which nobody can be followed',
      }),
    toolVersions: z.array(z.string()).meta({ description: 'of the programs that wrote the results' }),
    takes: count,
    measures: z.array(measureSchema),
    pieces: z.array(etudeSchema),
    unplaced: z
      .array(
        z.object({
          file: z.string(),
          player: z.string().nullable(),
          date: z.string().nullable(),
          outcome: z.union([outcomeSchema, z.literal('failed')]),
        }),
      )
      .meta({ description: 'takes without a player or without a day: not followed' }),
    repeated: z
      .array(
        z.object({ sha256: z.string(), counted: z.string(), passedOver: z.array(z.string()), differ: z.boolean() }),
      )
      .meta({ description: 'one recording with several results; counted once. differ: under different names or days' }),
    failures: z.array(
      z.object({
        file: z.string(),
        code: z.string().meta({ description: 'kind of failure, stable across versions' }),
        message: z.string(),
        fault: codeSchema.optional().meta({ description: 'what the message is made of' }),
      }),
    ),
  })
  .meta({
    title: 'Players over weeks',
    description:
      'Numbers are in the unit of their measure. A number that does not exist is an object with notMeasured and a reason. A difference is called a change only beyond the noise from take to take.',
  });

/** Players over weeks, as written to disk. */
export type ProgressResult = z.infer<typeof progressResultSchema>;

/** One étude with all who played it. */
export type ProgressEtude = ProgressResult['pieces'][number];

/** One player with one étude. */
export type ProgressPlayer = ProgressEtude['players'][number];

/** The goal for the next lesson. */
export type Goal = NonNullable<ProgressPlayer['goal']>;

/** The same bars slurred and tongued. */
export type BesideSlurred = NonNullable<ProgressPlayer['besideSlurred']>;

/** One measure of one player. */
export type Followed = ProgressPlayer['measures'][number];

/** One bar's story. */
export type BarStory = ProgressPlayer['bars'][number];

/** One measure, with its noise. */
export type ProgressMeasure = ProgressResult['measures'][number];
