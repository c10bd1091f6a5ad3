import { z } from 'zod';
import { beats, cents, maybe, points, tempo } from '../quantities.js';
import { codeSchema } from '../schema/common-schema.js';
import { criterionSchema } from '../schema/criterion-schema.js';
import { languageSchema } from '../schema/language-schema.js';
import { endingSchema } from '../schema/played-schema.js';
import { findingKindSchema, outcomeSchema, scoreSchema, toolSchema } from '../schema/take-result-schema.js';
import { tempoBeatSchema } from '../schema/tempo-beat-schema.js';

const count = z.int().min(0);

const roster = z
  .record(z.string(), z.string())
  .optional()
  .meta({ description: 'what a roster says in further columns, by head as written' });

const sectionTakeSchema = z.object({
  name: z.string().meta({ description: 'the name the take’s own documents are written under' }),
  file: z.string(),
  player: z.string().nullable(),
  date: z.string().nullable(),
  instrument: z.string().nullable(),
  score: z.string().meta({ description: 'file of the score the take was reviewed against' }),
  outcome: outcomeSchema,
  notesInPart: count,
  notesAsWritten: maybe(z.number()),
  playedQuarterBpm: maybe(tempo()),
  countedIn: tempoBeatSchema
    .optional()
    .meta({ description: 'what a metronome counts in this metre; quarters where it is missing' }),
  centsFromA440: maybe(cents()),
  criteria: z
    .array(z.object({ criterion: criterionSchema, fix: count, watch: count }))
    .meta({ description: 'only criteria that were judged; empty when the take was not reviewed' }),
  latest: z.boolean().optional().meta({ description: 'false: a later take of this score by the same player is there' }),
  played: z
    .object({ played: count, of: count, ending: endingSchema })
    .optional()
    .meta({ description: 'bars played, of those of the part as performed; only in takes that were reviewed' }),
  notPlayed: z.array(criterionSchema).optional().meta({ description: 'criteria of which nothing was played' }),
  points: z
    .object({ given: points(), possible: points() })
    .optional()
    .meta({ description: 'by the brief, over all criteria that could be measured; support for a panel' }),
  first: z.array(z.string()).max(3).meta({ description: 'the first things to work on' }),
  barTroubles: z
    .array(z.object({ bar: z.string(), fix: count, watch: count }))
    .meta({ description: 'bars with at least one finding, in printed order' }),
  roster,
});

const troubleSchema = z.object({
  score: z.string().meta({ description: 'file of the score the bar is in' }),
  bar: z.string().nullable().meta({ description: 'null: the whole take' }),
  beat: beats().optional().meta({ description: 'where it is about one note' }),
  alsoBars: z
    .array(z.string())
    .optional()
    .meta({ description: 'further bars in which the same shows, for some of the same players and no other' }),
  kind: findingKindSchema,
  criterion: criterionSchema,
  players: count,
  of: count.optional().meta({ description: 'players whose latest take of this score was reviewed' }),
  fix: count.meta({ description: 'players for whom it is a fix' }),
  who: z.array(z.string()).meta({ description: 'the players, or the takes’ files where a player is unknown' }),
});

const failureSchema = z.object({
  name: z.string().optional().meta({ description: 'the take, as on standard output' }),
  file: z.string(),
  code: z.string().meta({ description: 'kind of failure, stable across versions' }),
  message: z.string().meta({ description: 'what was found and what is needed, in the language of the document' }),
  fault: codeSchema.optional().meta({ description: 'what the message is made of; missing in older documents' }),
  player: z.string().nullable().optional(),
  date: z.string().nullable().optional(),
  instrument: z.string().nullable().optional(),
  roster,
});

/**
 * One document for all takes of a review.
 */
export const sectionResultSchema = z
  .object({
    format: z.literal('section-result'),
    version: z.literal(1),
    tool: toolSchema,
    language: languageSchema.optional(),
    score: scoreSchema.nullable().meta({ description: 'null when the takes are of several scores' }),
    scores: z
      .array(
        scoreSchema.extend({
          barNumbers: z
            .array(z.string())
            .optional()
            .meta({ description: 'bars as printed, in order; only with several scores' }),
        }),
      )
      .meta({ description: 'every score the takes were reviewed against' }),
    players: count,
    bars: z.array(z.string()).meta({ description: 'bars as printed, in order; empty with several scores' }),
    takes: z.array(sectionTakeSchema),
    troubles: z
      .array(troubleSchema)
      .meta({ description: 'of the latest take of each player; what is to be fixed first, then most players first' }),
    failures: z.array(failureSchema),
    same: z
      .array(z.array(z.string()))
      .optional()
      .meta({ description: 'names of takes of different players that are the same recording, byte by byte' }),
  })
  .meta({ title: 'Result of reviewing a section’s takes against one part' });

/**
 * What is read of a section's document later: the takes that were lost. Documents of every version so far have it.
 */
export const sectionRecordSchema = sectionResultSchema.pick({
  format: true,
  version: true,
  language: true,
  score: true,
  failures: true,
});

/** What is read of a section's document later. */
export type SectionRecord = z.infer<typeof sectionRecordSchema>;

/** The section's result, as written to disk. */
export type SectionResult = z.infer<typeof sectionResultSchema>;

/** One take's line in the section's result. */
export type SectionTake = SectionResult['takes'][number];

/** A take that got no document, as the section's result lists it. */
export type SectionFailure = SectionResult['failures'][number];

/** A score as the section's result names it. */
export type SectionScore = SectionResult['scores'][number];
