import { z } from 'zod';
import { CRITERIA } from '../brief/index.js';
import type { FindingKind, Weight } from '../judge/index.js';
import type { MisreadingKind } from '../score/index.js';
import { bar, codeSchema, maybeNumber, noteIndex, notMeasured, pass, share } from './common-schema.js';
import { languageSchema } from './language-schema.js';
import { courseSchema, playingSchema } from './playing-schema.js';

const FINDING_KINDS = [
  'accidental',
  'wrong-note',
  'missed-note',
  'added-note',
  'skipped-bars',
  'restart',
  'hesitation',
  'late-entry',
  'early-entry',
  'uneven-group',
  'rushing',
  'dragging',
  'off-tempo',
  'weak-contrast',
  'reversed-contrast',
  'weak-hairpin',
  'reversed-hairpin',
  'fermata-long',
  'fermata-short',
  'slur-broken',
  'staccato-long',
  'accent-weak',
  'breath-unmarked',
  'breath-late',
  'note-out-of-tune',
  'tuning-off',
  'went-well',
] as const satisfies readonly FindingKind[];

const WEIGHTS = ['fix', 'watch', 'well'] as const satisfies readonly Weight[];

const MISREADINGS = [
  'key-signature-forgotten',
  'accidental-forgotten',
  'dropped-within-bar',
  'carried-past-barline',
  'wrong-octave-applied',
] as const satisfies readonly MisreadingKind[];

/** The criteria of judgement, in the order of every table. */
export const criterionSchema = z.enum(CRITERIA);

/** The kinds of finding a document may hold. */
export const findingKindSchema = z.enum(FINDING_KINDS);

/** A number, or an object that says why there is none. */
export const maybeNumberSchema = maybeNumber;

/** Name and version of the program that wrote a document. */
export const toolSchema = z.object({ name: z.string(), version: z.string() });

/** How a take came out. */
export const outcomeSchema = z.enum(['reviewed', 'not-this-score', 'too-poor']).meta({
  description:
    'not-this-score: something is played but it is not this part; too-poor: silence, noise or damage hides the playing.',
});

/** The score a take was reviewed against. */
export const scoreSchema = z.object({
  file: z.string(),
  sha256: z.string(),
  title: z.string(),
  part: z.string(),
  transposeSemitones: z.int().meta({ description: 'added to written pitch to get sounding pitch' }),
  bars: z.int().meta({ description: 'bars as printed' }),
  notes: z.int().meta({ description: 'sounding notes in performed order, repeats unfolded, ties merged' }),
});

const takeScoreSchema = scoreSchema.extend({
  barNumbers: z
    .array(z.string())
    .optional()
    .meta({ description: 'the bars as printed, in order, also those without a note' }),
});

const takeSchema = z.object({
  file: z.string().meta({ description: 'file name only, never a path of the machine' }),
  sha256: z.string(),
  player: z.string().nullable(),
  date: z.string().nullable().meta({ description: 'ISO 8601 day the take was recorded' }),
  instrument: z.string().nullable().optional().meta({ description: 'as the roster or the file name has it' }),
  blind: z.boolean().optional().meta({ description: 'true when player and file are numbers that stand for names' }),
  durationSeconds: z.number(),
  sampleRateHz: z.number(),
  channels: z.int(),
});

const recordingSchema = z.object({
  peakDbfs: z.number(),
  clippedShare: share.meta({ description: 'share of samples inside flat tops' }),
  signalToNoiseDb: maybeNumber,
  reverberationSeconds: maybeNumber
    .optional()
    .meta({ description: 'time in which sound dies away by 60 dB, at the rate at which it begins to' }),
  levelRiding: z
    .boolean()
    .meta({ description: 'the recorder seems to have moved its gain, so dynamics are not judged' }),
  cautions: z.array(z.string()),
  cautionCodes: z
    .array(codeSchema)
    .optional()
    .meta({ description: 'the same cautions, in the same order, as codes; missing in older results' }),
});

const tempoSchema = z.object({
  markedQuarterBpm: z.number().nullable(),
  playedQuarterBpm: z.number(),
  bars: z
    .array(z.object({ bar, pass, startQuarters: z.number(), quarterBpm: z.number() }))
    .meta({ description: 'performed bars whose tempo could be measured, in performed order' }),
});

const noteSchema = z.object({
  index: noteIndex,
  bar,
  pass,
  beat: z.number(),
  grace: z.boolean(),
  writtenMidi: z.int(),
  soundingMidi: z.int(),
  status: z.enum(['as-written', 'other-pitch', 'left-out', 'unclear']),
  playedMidi: z.int().optional().meta({ description: 'present unless left-out' }),
  onset: z.number().optional(),
  offset: z.number().optional(),
  confidence: share,
  cents: maybeNumber.optional(),
  centsFromOwnTuning: maybeNumber.optional(),
  levelDb: maybeNumber.optional(),
});

const groupSchema = z.object({
  index: noteIndex,
  toIndex: noteIndex,
  bar,
  pass,
  shares: z.array(z.number()).meta({ description: 'of the group’s time, one a note' }),
  written: z.array(z.number()).meta({ description: 'the same as written' }),
});

const entrySchema = z.object({
  index: noteIndex,
  bar,
  pass,
  lateSeconds: z.number().meta({ description: 'positive is late' }),
  secondsAQuarter: z.number(),
});

const transitionSchema = z.object({
  index: noteIndex,
  toIndex: noteIndex,
  asked: z.enum(['slur', 'staccato', 'breath']).meta({ description: 'what the part asks for between the two notes' }),
  gapSeconds: z.number(),
  soundedShare: z.number().meta({ description: 'of the time between the onsets' }),
});

const findingSchema = z.object({
  kind: findingKindSchema,
  criterion: criterionSchema,
  weight: z.enum(WEIGHTS),
  misreading: z.enum(MISREADINGS).optional(),
  bar,
  toBar: bar.optional(),
  pass,
  beat: z.number().optional(),
  index: noteIndex.optional(),
  toIndex: noteIndex.optional(),
  onset: z.number().optional(),
  measured: z
    .object({
      value: z.number(),
      unit: z.string(),
      expected: z.string().optional(),
      shares: z
        .array(share)
        .optional()
        .meta({ description: 'of an uneven group: the share of its time each note took' }),
      writtenShares: z.array(share).optional().meta({ description: 'the same as written' }),
    })
    .optional(),
  text: z.string().meta({ description: 'one or two plain sentences to the player' }),
  ledByBar: bar.optional().meta({ description: 'bar of another finding of this kind that speaks for this one too' }),
  ownWeight: z
    .enum(WEIGHTS)
    .optional()
    .meta({ description: 'what it would weigh if it stood alone, where others go before it' }),
  practice: z.string().meta({ description: 'one plain sentence on how to practise it; empty for praise' }),
});

/**
 * One document a take: what was heard, what was measured, what is told to the player.
 *
 * Source: definition.
 */
export const takeResultSchema = z
  .object({
    format: z.literal('take-result'),
    version: z.literal(1),
    tool: toolSchema,
    take: takeSchema,
    score: takeScoreSchema,
    language: languageSchema.optional(),
    outcome: outcomeSchema,
    fit: z.object({ share, offsetSemitones: z.int() }).meta({
      description: 'share of the notes found as written; semitones by which the whole take sounds above the part',
    }),
    recording: recordingSchema,
    tuning: z.union([notMeasured, z.object({ centsFromA440: z.number(), a4Hz: z.number() })]),
    tempo: z.union([notMeasured, tempoSchema]),
    notes: z.array(noteSchema).meta({
      description: 'every sounding note of the part in performed order; empty when the take was not reviewed',
    }),
    added: z.array(z.object({ onset: z.number(), offset: z.number(), midi: z.int(), afterIndex: z.int().min(-1) })),
    restarts: z.array(z.object({ stoppedAtBar: bar, resumedAtBar: bar, onset: z.number() })),
    skips: z.array(z.object({ fromBar: bar, toBar: bar, fromIndex: noteIndex, toIndex: noteIndex, onset: z.number() })),
    levels: z.array(
      z.object({ mark: z.string(), index: noteIndex, toIndex: noteIndex, bar, pass, levelDb: maybeNumber }),
    ),
    contrasts: z.array(
      z.object({
        from: z.string(),
        to: z.string(),
        index: noteIndex,
        bar,
        pass,
        differenceDb: maybeNumber,
        registerAdjustedDb: maybeNumber,
        intervalDb: z.array(z.number()).length(2).optional().meta({ description: '95 % interval' }),
      }),
    ),
    hairpins: z.array(
      z.object({
        kind: z.enum(['crescendo', 'diminuendo']),
        index: noteIndex,
        toIndex: noteIndex,
        bar,
        toBar: bar,
        pass,
        riseDb: maybeNumber,
        registerAdjustedRiseDb: maybeNumber.optional(),
        slopeDbPerBar: maybeNumber,
        slopeDbPerSecond: maybeNumber,
        errorDb: z.number().optional().meta({ description: 'standard error of riseDb' }),
        course: courseSchema.optional(),
      }),
    ),
    fermatas: z.array(
      z.object({
        index: noteIndex,
        bar,
        pass,
        writtenSeconds: maybeNumber,
        heldSeconds: maybeNumber,
        ratio: maybeNumber,
      }),
    ),
    groups: z.array(groupSchema).optional().meta({ description: 'tuplets, and beats of three notes or more' }),
    entries: z.array(entrySchema).optional().meta({ description: 'notes after rests' }),
    transitions: z.array(transitionSchema).optional().meta({ description: 'from one note to the next' }),
    ...playingSchema.shape,
    criteria: z.array(
      z.object({
        criterion: criterionSchema,
        judged: z
          .boolean()
          .optional()
          .meta({ description: 'false: nothing could be said, so that fix and watch are 0 for want of evidence' }),
        fix: z.int().min(0),
        watch: z.int().min(0),
        summary: z.string(),
        reason: codeSchema.optional().meta({ description: 'of a summary that says why there is nothing to tell' }),
        of: z.int().min(0).optional().meta({ description: 'places measured: notes, groups and entries, bars …' }),
        met: z.int().min(0).optional().meta({ description: 'those of them that are as asked for' }),
        points: z
          .object({ possible: z.number().min(0), given: z.number().min(0).nullable() })
          .optional()
          .meta({ description: 'by the brief: possible × met ÷ of, to a tenth; null where nothing was measured' }),
      }),
    ),
    findings: z.array(findingSchema).meta({ description: 'what the report tells the player, most useful first' }),
  })
  .meta({
    title: 'Result of reviewing one take against one part',
    description:
      'Times are seconds from the first sample of the file; levels are dB relative to full scale (RMS); pitch deviations are cents, positive = sharp; bars carry the measure number printed in the score; beats are 1-based in units of the time signature’s denominator and may be fractional; pass counts how often the bar has been reached through repeats. A quality that cannot be measured is an object with notMeasured and a reason.',
  });

/** The result of one take, as written to disk. */
export type TakeResult = z.infer<typeof takeResultSchema>;

/** One finding as a result document holds it. */
export type ResultFinding = TakeResult['findings'][number];
