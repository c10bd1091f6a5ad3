import type { NotMeasured } from '../base/index.js';
import { reasonOf, type TakeResult } from '../result/index.js';
import type { Tonguing } from './types.js';

/**
 * What a take tells of tongue and air, to be held beside another one of the same day.
 *
 * @param result a take that was reviewed
 * @returns whether it is slurred for practice, its tongued places, and the level of each note
 */
export function tonguingOf({ criteria, tonguedAir, notes, transitions, language = 'en' }: TakeResult): Tonguing {
  const slurred = criteria.some(({ reason }) => reason?.code === 'brief-all-slurred');
  return {
    slurred,
    places:
      tonguedAir === undefined
        ? NOT_KEPT
        : 'notMeasured' in tonguedAir
          ? { notMeasured: reasonOf(tonguedAir, language) }
          : tonguedAir,
    levels: Float32Array.from(notes, ({ levelDb }) => (typeof levelDb === 'number' ? levelDb : Number.NaN)),
    slurredInto: transitions?.filter(({ asked }) => asked === 'slur').map(({ toIndex }) => toIndex) ?? [],
  };
}

const NOT_KEPT: NotMeasured = { notMeasured: { code: 'number-not-kept', facts: {} } };
