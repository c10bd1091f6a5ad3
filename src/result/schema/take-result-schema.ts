import { z } from 'zod';
import { FINDING_KINDS, WEIGHTS } from '../../judge/index.js';
import { MISREADINGS } from '../../score/index.js';
import {
  beats,
  cents,
  confidence,
  decibels,
  decibelsPer,
  fraction,
  hertz,
  maybe,
  measured,
  quarters,
  ratio,
  roughSeconds,
  seconds,
  semitones,
  share,
  smallShare,
  tempo,
} from '../quantities.js';
import { bar, codeSchema, noteIndex, notMeasured, pass } from './common-schema.js';
import { criterionLineSchema, criterionSchema } from './criterion-schema.js';
import { languageSchema } from './language-schema.js';
import { playedSchema } from './played-schema.js';
import { courseSchema, playingSchema } from './playing-schema.js';
import { tempoBeatSchema } from './tempo-beat-schema.js';
import { causeSchema, unevennessSchema } from './unevenness-schema.js';

/** The kinds of finding a document may hold. */
export const findingKindSchema = z.enum(FINDING_KINDS);

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

const codingSchema = z.object({
  container: z.string().meta({ description: 'what the file is: mp4, ogg, matroska, flac, amr …' }),
  codec: z.string().meta({ description: 'how its sound is coded: aac, mp3, opus, vorbis, flac, alac, pcm, amr …' }),
  lossy: z.boolean().meta({ description: 'whether the coding leaves out what it takes to be inaudible' }),
  speech: z.boolean().meta({ description: 'whether the coding is made for speech on the telephone' }),
  bitsASecond: z.int().meta({ description: 'bits a second of the whole file' }),
  bandwidthHz: hertz('nothing sounds above it'),
  onsetSpreadSeconds: seconds('by how much the coding may move an onset: 95 of 100 stay within it'),
});

const takeSchema = z.object({
  file: z.string().meta({ description: 'file name only, never a path of the machine' }),
  sha256: z.string().meta({ description: 'of the recording; empty under blind, where it would tell whose it is' }),
  player: z.string().nullable(),
  date: z.string().nullable().meta({ description: 'ISO 8601 day the take was recorded' }),
  instrument: z.string().nullable().optional().meta({ description: 'as the roster or the file name has it' }),
  blind: z.boolean().optional().meta({ description: 'true when player and file are numbers that stand for names' }),
  durationSeconds: seconds(),
  sampleRateHz: z.number().meta({ description: 'Hz' }),
  channels: z.int(),
  coding: codingSchema.optional().meta({ description: 'present where the file is no WAV file' }),
});

const recordingSchema = z.object({
  peakDbfs: decibels(),
  clippedShare: smallShare('share of samples inside flat tops'),
  signalToNoiseDb: maybe(decibels()),
  reverberationSeconds: maybe(roughSeconds())
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
  markedQuarterBpm: tempo().nullable(),
  playedQuarterBpm: tempo(),
  countedIn: tempoBeatSchema
    .optional()
    .meta({ description: 'what a metronome counts in this metre, as the pages do; missing in older results' }),
  bars: z
    .array(z.object({ bar, pass, startQuarters: quarters(), quarterBpm: tempo() }))
    .meta({ description: 'performed bars whose tempo could be measured, in performed order' }),
});

const noteSchema = z.object({
  index: noteIndex,
  bar,
  pass,
  beat: beats(),
  grace: z.boolean(),
  writtenMidi: z.int(),
  soundingMidi: z.int(),
  status: z.enum(['as-written', 'other-pitch', 'left-out', 'unclear']),
  playedMidi: z.int().optional().meta({ description: 'present unless left-out' }),
  onset: seconds().optional(),
  offset: seconds().optional(),
  confidence: confidence(),
  cents: maybe(cents()).optional(),
  centsFromOwnTuning: maybe(cents()).optional(),
  secondEarCents: maybe(cents('as another pitch tracker hears it, asked only where out of tune')).optional(),
  levelDb: maybe(decibels()).optional(),
});

const groupSchema = z.object({
  index: noteIndex,
  toIndex: noteIndex,
  bar,
  pass,
  shares: z.array(fraction()).meta({ description: 'of the group’s time, one a note' }),
  written: z.array(fraction()).meta({ description: 'the same as written' }),
});

const entrySchema = z.object({
  index: noteIndex,
  bar,
  pass,
  lateSeconds: seconds('positive is late'),
  secondsAQuarter: seconds(),
});

const transitionSchema = z.object({
  index: noteIndex,
  toIndex: noteIndex,
  asked: z.enum(['slur', 'staccato', 'breath']).meta({ description: 'what the part asks for between the two notes' }),
  gapSeconds: seconds(),
  soundedShare: fraction('of the time between the onsets'),
});

const findingSchema = z.object({
  kind: findingKindSchema,
  criterion: criterionSchema,
  weight: z.enum(WEIGHTS),
  misreading: z.enum(MISREADINGS).optional(),
  bar,
  toBar: bar.optional(),
  pass,
  beat: beats().optional(),
  index: noteIndex.optional(),
  toIndex: noteIndex.optional(),
  onset: seconds().optional(),
  measured: z
    .object({
      value: measured(),
      unit: z.string(),
      expected: z.string().optional(),
      shares: z
        .array(share())
        .optional()
        .meta({ description: 'of an uneven group: the share of its time each note took' }),
      writtenShares: z.array(share()).optional().meta({ description: 'the same as written' }),
    })
    .optional(),
  cause: causeSchema.optional(),
  text: z.string().meta({ description: 'one or two plain sentences to the player' }),
  ledByBar: bar.optional().meta({ description: 'bar of another finding of this kind that speaks for this one too' }),
  ownWeight: z
    .enum(WEIGHTS)
    .optional()
    .meta({ description: 'what it would weigh if it stood alone, where others go before it' }),
  practice: z.string().meta({ description: 'one plain sentence on how to practise it; empty for praise' }),
});

/** One document a take: what was heard, what was measured, what is told to the player. */
export const takeResultSchema = z
  .object({
    format: z.literal('take-result'),
    version: z.literal(1),
    tool: toolSchema,
    take: takeSchema,
    score: takeScoreSchema,
    language: languageSchema.optional(),
    outcome: outcomeSchema,
    fit: z.object({ share: share(), offsetSemitones: semitones() }).meta({
      description: 'share of the notes found as written; semitones by which the whole take sounds above the part',
    }),
    recording: recordingSchema,
    played: playedSchema.optional(),
    tuning: z.union([notMeasured, z.object({ centsFromA440: cents(), a4Hz: hertz() })]),
    tempo: z.union([notMeasured, tempoSchema]),
    notes: z.array(noteSchema).meta({
      description: 'every sounding note of the part in performed order; empty when the take was not reviewed',
    }),
    added: z.array(z.object({ onset: seconds(), offset: seconds(), midi: z.int(), afterIndex: z.int().min(-1) })),
    restarts: z.array(z.object({ stoppedAtBar: bar, resumedAtBar: bar, onset: seconds() })),
    skips: z.array(z.object({ fromBar: bar, toBar: bar, fromIndex: noteIndex, toIndex: noteIndex, onset: seconds() })),
    levels: z.array(
      z.object({ mark: z.string(), index: noteIndex, toIndex: noteIndex, bar, pass, levelDb: maybe(decibels()) }),
    ),
    contrasts: z.array(
      z.object({
        from: z.string(),
        to: z.string(),
        index: noteIndex,
        bar,
        pass,
        differenceDb: maybe(decibels()),
        registerAdjustedDb: maybe(decibels()),
        intervalDb: z.array(decibels()).length(2).optional().meta({ description: '95 % interval' }),
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
        riseDb: maybe(decibels()),
        registerAdjustedRiseDb: maybe(decibels()).optional(),
        slopeDbPerBar: maybe(decibelsPer('bar')),
        slopeDbPerSecond: maybe(decibelsPer('second')),
        errorDb: decibels('standard error of riseDb').optional(),
        course: courseSchema.optional(),
      }),
    ),
    fermatas: z.array(
      z.object({
        index: noteIndex,
        bar,
        pass,
        writtenSeconds: maybe(seconds()),
        heldSeconds: maybe(seconds()),
        ratio: maybe(ratio()),
      }),
    ),
    groups: z.array(groupSchema).optional().meta({ description: 'tuplets, and beats of three notes or more' }),
    entries: z.array(entrySchema).optional().meta({ description: 'notes after rests' }),
    transitions: z.array(transitionSchema).optional().meta({ description: 'from one note to the next' }),
    ...playingSchema.shape,
    unevenness: unevennessSchema.optional(),
    criteria: z.array(criterionLineSchema),
    findings: z.array(findingSchema).meta({ description: 'what the report tells the player, most useful first' }),
  })
  .meta({
    title: 'Result of reviewing one take against one part',
    description:
      'Times are seconds from the first sample of the file; levels are dB relative to full scale (RMS); pitch deviations are cents, positive = sharp; bars carry the measure number printed in the score; beats are 1-based in units of the time signature’s denominator and may be fractional; pass counts how often the bar has been reached through repeats. A quality that cannot be measured is an object with notMeasured and a reason.',
  });

/** The result of one take, as written to disk. */
export type TakeResult = z.infer<typeof takeResultSchema>;

/** The same before it is parsed: numbers as they were measured, and whatever else stands beside a field is left out. */
export type TakeDraft = DeepReadonly<z.input<typeof takeResultSchema>>;

type DeepReadonly<T> = T extends object ? { readonly [K in keyof T]: DeepReadonly<T[K]> } : T;

/** One finding as a result document holds it. */
export type ResultFinding = TakeResult['findings'][number];
