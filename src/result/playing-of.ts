import type { HairpinCourse, Measurements } from '../measure/index.js';
import type { PlayingFields } from './playing-schema.js';
import { rounded, roundedMaybe } from './rounding.js';
import type { Told } from './told-reason.js';

/**
 * @param measurements the take's measurements, reasons told; seconds, decibels, cents
 * @returns the fields of the result document that say how it was played, rounded
 *
 * Source: definition.
 */
export function playingOf(measurements: Told<Measurements>): {
  [K in keyof PlayingFields]-?: NonNullable<PlayingFields[K]>;
} {
  const { articulations, breaths, accents, intonation, markOrder } = measurements;
  const cents = <T extends { readonly cents: number; readonly intervalCents: readonly number[] }>(tendency: T) => ({
    ...tendency,
    cents: rounded(tendency.cents, 'cents'),
    intervalCents: tendency.intervalCents.map((c) => rounded(c, 'cents')),
  });
  return {
    articulations: articulations.map((a) => ({
      ...a,
      soundedShare: rounded(a.soundedShare, 'share'),
      middleHalf: a.middleHalf.map((share) => rounded(share, 'share')),
    })),
    breaths: breaths.map((b) => ({
      ...b,
      beat: rounded(b.beat, 'beats'),
      gapSeconds: roundedMaybe(b.gapSeconds, 'seconds'),
      lateSeconds: roundedMaybe(b.lateSeconds, 'seconds'),
    })),
    accents: accents.map(({ index, bar, pass, mark, overDb, fallDb }) => ({
      ...{ index, bar, pass, mark },
      overDb: rounded(overDb, 'decibels'),
      ...(fallDb === undefined ? {} : { fallDb: rounded(fallDb, 'decibels') }),
    })),
    intonation: {
      noteNames: intonation.noteNames.map(cents),
      registers: intonation.registers.map(cents),
      withLoudness: loudnessOf(intonation.withLoudness),
    },
    markOrder: {
      marks: markOrder.marks.map((m) => ({
        ...m,
        levelDb: rounded(m.levelDb, 'decibels'),
        intervalDb: m.intervalDb.map((db) => rounded(db, 'decibels')),
      })),
      reversed: markOrder.reversed.map((pair) => ({ ...pair, byDb: rounded(pair.byDb, 'decibels') })),
    },
  };
}

/**
 * @param course where a hairpin's change happens
 * @returns the same, rounded
 *
 * Source: definition.
 */
export function courseOf(course: HairpinCourse): HairpinCourse {
  return {
    halfwayShare: rounded(course.halfwayShare, 'share'),
    peakAt: rounded(course.peakAt, 'share'),
    turnedBackDb: rounded(course.turnedBackDb, 'decibels'),
    steadiness: rounded(course.steadiness, 'share'),
  };
}

function loudnessOf(
  measure: Told<Measurements>['intonation']['withLoudness'],
): NonNullable<PlayingFields['intonation']>['withLoudness'] {
  if ('notMeasured' in measure) return measure;
  return {
    centsPerDb: rounded(measure.centsPerDb, 'slope'),
    errorCentsPerDb: rounded(measure.errorCentsPerDb, 'slope'),
    reachDb: rounded(measure.reachDb, 'decibels'),
    count: measure.count,
  };
}
