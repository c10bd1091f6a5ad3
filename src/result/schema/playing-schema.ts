import { z } from 'zod';
import {
  beats,
  cents,
  centsPerDb,
  correlation,
  decibels,
  fraction,
  harmonics,
  harmonicsPerDb,
  hertz,
  maybe,
  seconds,
  semitones,
  share,
} from '../quantities.js';
import { bar, noteIndex, notMeasured, pass } from './common-schema.js';

const count = z.int().min(1);
const interval = <T extends z.ZodType>(bound: T) => z.array(bound).length(2).meta({ description: '95 % interval' });
const dipSchema = z.object({ dipDb: decibels(), intervalDb: interval(decibels()), count });
/** A median with its interval. */
const middleOf = <T extends z.ZodType>(of: T) => z.object({ middle: of, interval: interval(of) });
const place = { index: noteIndex, bar, pass };
const tonguedPlaceSchema = z.object({
  ...{ index: noteIndex, toIndex: noteIndex, bar, pass },
  sagDb: decibels('level of what lies between the notes below that of the notes, a pause with its length'),
  dipDb: decibels('how far the level falls between them below the softer of the two'),
});
const crackSchema = z.object({
  semitones: z.number().meta({ description: 'from the note, upwards positive' }),
  seconds: seconds(),
});

/**
 * What is kept of how a take was played, beyond its single notes. Every field may be missing from documents of earlier
 * versions of the program.
 */
export const playingSchema = z.object({
  articulations: z
    .array(
      z.object({
        way: z.enum(['staccatissimo', 'staccato', 'slur-end-short', 'detached-legato', 'tongued', 'tenuto', 'slurred']),
        count,
        soundedShare: share('median sounding share of the time to the next onset'),
        middleHalf: z.array(share()).length(2).meta({ description: 'first and third quartile' }),
        spread: z
          .object({ share: fraction('robust standard deviation'), interval: interval(fraction()) })
          .optional()
          .meta({ description: 'how far these notes differ among themselves' }),
      }),
    )
    .optional(),
  breaths: z
    .array(z.object({ ...place, beat: beats(), gapSeconds: maybe(seconds()), lateSeconds: maybe(seconds()) }))
    .optional()
    .meta({ description: 'one a breath asked for; late is positive' }),
  accents: z
    .array(
      z.object({
        ...place,
        mark: z.string(),
        overDb: decibels('attack over the unaccented notes around it'),
        fallDb: decibels('from its attack to its last third').optional(),
        soundedShare: share('sounding share of the time to the next note').optional(),
      }),
    )
    .optional()
    .meta({ description: 'accents, sf, fp and their like' }),
  intonation: z
    .object({
      noteNames: z.array(z.object({ name: z.string(), cents: cents(), count, intervalCents: interval(cents()) })),
      registers: z.array(
        z.object({
          register: z.enum(['low', 'middle', 'high']),
          fromMidi: z.int(),
          toMidi: z.int(),
          cents: cents(),
          count,
          intervalCents: interval(cents()),
        }),
      ),
      withLoudness: z.union([
        notMeasured,
        z.object({ centsPerDb: centsPerDb(), errorCentsPerDb: centsPerDb(), reachDb: decibels(), count }),
      ]),
    })
    .optional()
    .meta({ description: 'where the pitch leans, from the player’s own tuning; written pitch' }),
  markOrder: z
    .object({
      marks: z.array(z.object({ mark: z.string(), levelDb: decibels(), count, intervalDb: interval(decibels()) })),
      reversed: z.array(z.object({ softer: z.string(), louder: z.string(), byDb: decibels() })),
    })
    .optional()
    .meta({ description: 'all passages under one mark together, the notes’ own loudness taken out' }),
  heldNotes: z
    .array(
      z.object({
        ...place,
        seconds: seconds('what was looked at, without beginning and end'),
        wobbleCents: cents('how far the pitch strays from its own slow course, vibrato taken out; robust spread'),
        wobbleDb: maybe(decibels('the same of the level')),
        vibrato: z.object({ rateHz: hertz(), depthCents: cents() }).optional(),
        endCents: cents('the end of the note over its middle'),
        endDb: decibels('the end of the note over its middle'),
        beforeBreath: z.boolean().meta({ description: 'whether a breath, a rest or the end of the part follows' }),
      }),
    )
    .optional()
    .meta({ description: 'notes held for about half a second or more' }),
  cracks: z
    .array(z.object({ ...place, ...crackSchema.shape }))
    .optional()
    .meta({ description: 'notes that speak at another pitch before they come to their own' }),
  starts: z
    .array(
      z.object({
        ...place,
        pitchSeconds: seconds('from the first sound until the note is at its pitch'),
        levelSeconds: seconds('from the first sound until it is near its level'),
        crack: crackSchema.optional().meta({ description: 'present where another pitch sounds before it' }),
      }),
    )
    .optional()
    .meta({ description: 'notes that begin out of silence' }),
  tonguedAir: z
    .union([notMeasured, z.array(tonguedPlaceSchema)])
    .optional()
    .meta({
      description: 'places that the part asks to be tongued and nothing else, to be held beside the same slurred',
    }),
  attacks: z
    .array(z.object({ ...place, overDb: decibels('loudest moment of its beginning over the level it comes to') }))
    .optional()
    .meta({ description: 'notes begun with the tongue, without accent' }),
  noteShapes: z
    .union([
      notMeasured,
      z.array(
        z.object({
          sign: z.enum(['staccatissimo', 'staccato', 'detached-legato', 'tenuto', 'accent', 'none']),
          count,
          riseSeconds: middleOf(seconds('from 15 to 3 dB below the loudest moment of its beginning')),
          lengthSeconds: middleOf(seconds('how long the note sounds')),
          decayDb: middleOf(decibels('from its first third to its last; negative rises')),
        }),
      ),
    ])
    .optional()
    .meta({ description: 'the shape of tongued notes, sign by sign' }),
  releases: z
    .union([
      notMeasured,
      z.array(
        z.object({
          ...place,
          fallSeconds: seconds('from 3 to 20 dB below what it was at, tone and room together'),
          pitchCents: cents('where its pitch has gone meanwhile').optional(),
        }),
      ),
    ])
    .optional()
    .meta({ description: 'how notes before a silence are let go' }),
  risingLines: z
    .union([
      notMeasured,
      z.array(
        z.object({
          ...place,
          toIndex: noteIndex,
          toBar: bar,
          semitones: semitones(),
          slurred: z.boolean(),
          changeDb: decibels('its last two notes over its first two, own loudness taken out; negative thins out'),
        }),
      ),
    ])
    .optional()
    .meta({ description: 'rising lines of a fifth or more without a mark of their own' }),
  slurredAir: z
    .union([notMeasured, dipSchema.extend({ steps: dipSchema.optional(), leaps: dipSchema.optional() })])
    .optional()
    .meta({ description: 'how far the level usually dips from one slurred note to the next; leaps: a fourth or more' }),
  breathNoise: z
    .union([
      notMeasured,
      z.object({
        harmonicsToNoiseDb: decibels('median of the held notes without vibrato'),
        intervalDb: interval(decibels()),
        count,
        notes: z.array(
          z.object({ ...place, harmonicsToNoiseDb: decibels(), noiseDb: decibels('level of the noise, dBFS') }),
        ),
      }),
    ])
    .optional()
    .meta({ description: 'harmonics over noise below 4 kHz (Boersma 1993) on the steady part of long notes' }),
  toneColour: z
    .union([
      notMeasured,
      z.object({
        notes: z.array(
          z.object({
            ...place,
            levelDb: decibels(),
            centroidHarmonics: harmonics('mean number of the harmonics by amplitude; more is brighter'),
            oddOverEvenDb: decibels('energy of the odd harmonics over that of the even ones'),
            tristimulus: z
              .array(share())
              .length(3)
              .meta({ description: 'shares of the first harmonic, of the second to fourth, and of all above' }),
          }),
        ),
        withLoudness: z.union([
          notMeasured,
          z.object({
            harmonicsPerDb: harmonicsPerDb('pitch allowed for'),
            errorHarmonicsPerDb: harmonicsPerDb('standard error'),
            reachDb: decibels(),
            count,
          }),
        ]),
      }),
    ])
    .optional()
    .meta({ description: 'how bright long notes are; only where a brief gives the sound points' }),
  steadiness: z
    .union([
      notMeasured,
      z.object({
        wobbleCents: cents('median of the held notes without vibrato'),
        intervalCents: interval(cents()),
        count,
        vibratoCount: z.int().min(0).meta({ description: 'held notes that move as regularly as vibrato' }),
      }),
    ])
    .optional()
    .meta({ description: 'how steadily long notes are usually held' }),
});

/**
 * Where within a crescendo or diminuendo the change happens.
 */
export const courseSchema = z.object({
  halfwayShare: share('share of the change that is there halfway'),
  peakAt: share('where its furthest moment lies, 1 at the end'),
  turnedBackDb: decibels(),
  steadiness: correlation('Kendall’s tau of level and time'),
});

/** One place that is tongued. */
export type TonguedPlace = z.infer<typeof tonguedPlaceSchema>;

/** What is kept of how a take was played. */
export type PlayingFields = z.infer<typeof playingSchema>;
