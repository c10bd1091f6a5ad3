import { type Brief, secondsBetween } from '../brief/index.js';
import type { Part } from '../score/index.js';
import { STANDARDS } from '../standards/index.js';
import { firstPasses } from './first-passes.js';
import type { FermataPlan } from './types.js';

/** About twice is usual, at the player's discretion. Source: common practice, from memory. */
const USUAL_TIMES = 2;
/** A short note under a fermata stays modest. Source: common practice. */
const SHORT_TIMES = 1.5;
/** Up to this long a note is short, quarters. */
const SHORT_QUARTERS = 1;

/**
 * @param part the part, with the tempo asked for
 * @param brief the teacher's brief, which says how long fermatas may last
 * @returns each fermata on a note with a length that suits it
 *
 * Source: as at the constants.
 */
export function fermataPlan(part: Part, brief: Brief): FermataPlan[] {
  return firstPasses(part)
    .filter((note) => note.fermata)
    .map(({ bar, beat, onsetQuarters, durationQuarters }) => {
      const { leastTimes, mostTimes } = brief.fermata.bars.find((own) => own.bar === bar) ?? brief.fermata;
      const short = durationQuarters <= SHORT_QUARTERS;
      const usualTimes = short ? SHORT_TIMES : USUAL_TIMES;
      const usual = leavesRoom(leastTimes, mostTimes, usualTimes);
      // a target leaves room on both sides: a limit is nothing to aim at
      const suggestedTimes = usual ? usualTimes : (leastTimes + mostTimes) / 2;
      const writtenSeconds = secondsBetween(part.tempos, onsetQuarters, onsetQuarters + durationQuarters);
      const suggestedSeconds = suggestedTimes * writtenSeconds;
      return { bar, beat, writtenSeconds, leastTimes, mostTimes, suggestedTimes, suggestedSeconds, usual, short };
    });
}

/** Whether a length lies between the limits, by more than what is measured of one may be off. */
function leavesRoom(least: number, most: number, times: number): boolean {
  const { value } = STANDARDS.fermataMargin;
  return least * (1 + value) <= times && times <= most * (1 - value);
}
