import { isMeasured, type Language, median, medianError, type NotMeasured, notMeasured } from '../base/index.js';
import { toldReason } from '../result/index.js';
import { STANDARDS } from '../standards/index.js';
import type { DayOfResults } from './bar-stories.js';
import type { BesideSlurred } from './progress-result-schema.js';
import type { Tonguing } from './types.js';

/** Fewer places, or notes, say nothing of a habit. */
const LEAST_PLACES = 8;
/** A tongue stroke is heard as so much more of a dip than a slur; less, and both takes are played alike. Source: working value. */
const STROKE_DB = 3;
/** Half the width of a 95 % interval in standard errors, for normal data. */
const NORMAL_95 = 1.96;

/** A median with its interval. */
interface Middle {
  readonly middle: number;
  readonly intervalDb: readonly [number, number];
  readonly count: number;
}

/**
 * What the tongue costs the air: the same bars slurred for practice and tongued as written, on the latest day that has both. Takes
 * of different days differ in room, recorder and reed. Of several takes of a kind the last counts.
 *
 * @param days one player's days with reviewed takes, in order
 * @param language in which reasons are told
 * @returns how far the tone sags between tongued notes beyond what it does slurred, and how much softer notes are when they are
 * tongued, the takes' own difference of level taken out by notes that are slurred in both; undefined where no day has both takes
 *
 * Source: differences of the same notes, medians with 95 % intervals (Kenney & Keeping 1962); standards tongueSag, tongueSofter.
 */
export function besideSlurred(days: readonly DayOfResults[], language: Language): BesideSlurred | undefined {
  const pairs = days.flatMap(({ date, results }) => {
    const all = results.flatMap(({ tonguing }) => tonguing ?? []);
    const [slurred, tongued] = [all.findLast((one) => one.slurred), all.findLast((one) => !one.slurred)];
    return slurred === undefined || tongued === undefined ? [] : [{ date, slurred, tongued }];
  });
  const latest = pairs.at(-1);
  if (latest === undefined) return undefined;
  const { date, slurred, tongued } = latest;
  const [sag, softer] = compare(slurred, tongued);
  return {
    date,
    sag: isMeasured<Middle>(sag) ? { ...told(sag, STANDARDS.tongueSag.value) } : toldReason(language, sag.notMeasured),
    softer: isMeasured<Middle>(softer)
      ? { ...told(softer, STANDARDS.tongueSofter.value) }
      : toldReason(language, softer.notMeasured),
  };
}

/** Whether it is surely more than the standard, or surely less. */
function told({ middle, intervalDb: [low, high], count }: Middle, most: number): BesideSlurred['sag'] {
  return { db: middle, intervalDb: [low, high], count, beside: low > most ? 'more' : high < most ? 'less' : 'unclear' };
}

function compare(slurred: Tonguing, tongued: Tonguing): readonly [Middle | NotMeasured, Middle | NotMeasured] {
  const [before, now] = [slurred.places, tongued.places];
  if (!isMeasured(before)) return [before, before];
  if (!isMeasured(now)) return [now, now];
  const pairs = now.flatMap((place) => {
    const same = before.find(({ index }) => index === place.index);
    return same === undefined
      ? []
      : [{ toIndex: place.toIndex, sag: place.sagDb - same.sagDb, dip: place.dipDb - same.dipDb }];
  });
  if (pairs.length < LEAST_PLACES) return both(notMeasured('too-few-tongued-places'));
  if (median(pairs.map(({ dip }) => dip)) < STROKE_DB) return both(notMeasured('tongued-as-slurred'));
  const change = (indices: readonly number[]): number[] =>
    indices.map((i) => tongued.levels[i]! - slurred.levels[i]!).filter(Number.isFinite);
  const places = new Set(pairs.map(({ toIndex }) => toIndex));
  const own = change([...places]);
  const others = change(tongued.slurredInto.filter((i) => !places.has(i)));
  const enough = own.length >= LEAST_PLACES && others.length >= LEAST_PLACES;
  return [middleOf(pairs.map(({ sag }) => sag)), enough ? softerOf(own, others) : notMeasured('too-few-slurred-notes')];
}

const both = (reason: NotMeasured) => [reason, reason] as const;

function middleOf(values: readonly number[]): Middle {
  return around(median(values), medianError(values), values.length);
}

/** Variances of independent errors add (JCGM 100:2008, 5.1.2). */
function softerOf(own: readonly number[], others: readonly number[]): Middle {
  return around(median(others) - median(own), Math.hypot(medianError(own), medianError(others)), own.length);
}

function around(middle: number, error: number, count: number): Middle {
  return { middle, intervalDb: [middle - NORMAL_95 * error, middle + NORMAL_95 * error], count };
}
