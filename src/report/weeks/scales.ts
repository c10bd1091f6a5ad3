import { isMeasured } from '../../base/index.js';
import type { MeasureId } from '../../standards/index.js';
import { dayNumber, type ProgressEtude, type ProgressMeasure } from '../../weeks/index.js';

/** What the small multiples of one étude share, so that players can be compared. */
export interface Scales {
  /** days since 1970 at the left and the right edge */
  readonly days: readonly [number, number];
  readonly values: Readonly<Record<MeasureId, readonly [number, number]>>;
}

/** The band of noise takes up at most this share of a scale. */
const NOISE_SHARE = 0.5;
const MARGIN = 0.08;

/**
 * @param etude an étude with its players
 * @param measures measures with their noise
 * @returns first and last day, and the range of each measure: wide enough for all takes, the usual standards and the noise;
 *   a share that cannot pass 100 and an error that cannot pass 0 stand at that edge
 */
export function scalesOf(etude: ProgressEtude, measures: readonly ProgressMeasure[]): Scales {
  const days = etude.players.flatMap((player) => player.days.map(({ date }) => dayNumber(date)));
  const values = measures.map((measure) => {
    const taken = etude.players.flatMap((player) =>
      player.measures.filter((one) => one.measure === measure.measure).flatMap((one) => one.days.flatMap(numbersOf)),
    );
    return [measure.measure, rangeOf(taken, measure)];
  });
  return {
    days: days.length === 0 ? [0, 0] : [Math.min(...days), Math.max(...days)],
    values: Object.fromEntries(values) as Scales['values'],
  };
}

function numbersOf(day: ProgressEtude['players'][number]['measures'][number]['days'][number]): number[] {
  return isMeasured<number>(day.value) ? [day.value, ...day.takes] : [];
}

function rangeOf(taken: readonly number[], { usual, noise, wanted }: ProgressMeasure): readonly [number, number] {
  const all = taken.length === 0 ? [0, 1] : [...taken, ...usual];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const span = Math.max((high - low) * (1 + 2 * MARGIN), noise.smallestChange / NOISE_SHARE);
  const middle = (low + high) / 2;
  const [most, least] = [wanted.low === 100 && wanted.high === null, wanted.high === 0 && wanted.low === null];
  if (most && middle + span / 2 > 100) return [100 - span * (1 - MARGIN), 100 + span * MARGIN];
  if (least && middle - span / 2 < 0) return [-span * MARGIN, span * (1 - MARGIN)];
  return [middle - span / 2, middle + span / 2];
}
