import type { NoteContext } from '../context/context.js';
import { ceilingShare } from './ceiling-share.js';
import { floorInPauses } from './floor-in-pauses.js';
import { followPlan } from './follow-plan.js';
import { measureSettling } from './settling.js';
import { MOST_FOLLOWED, saysGain } from './signs-of-gain.js';

const LONG_PAUSE_SECONDS = 0.5;
const LEAST_LONG_PAUSES = 5;
const SHORT_PAUSE_SECONDS = 0.12;
const LEAST_SHORT_PAUSES = 10;

/**
 * Whether the recorder moved its gain, fast or slowly, or held loud notes under a ceiling.
 *
 * @param context the take with its notes measured
 * @returns true only when something in the recording says so
 *
 * Source: the functions called here name theirs.
 */
export function ridesLevel(context: NoteContext): boolean {
  return saysGain({
    ceiling: () => ceilingShare(context),
    plan: () => followPlan(context, MOST_FOLLOWED),
    settling: () => measureSettling(context),
    floorInLongPauses: () => floorInPauses(context, LONG_PAUSE_SECONDS, LEAST_LONG_PAUSES),
    floorInShortPauses: () => floorInPauses(context, SHORT_PAUSE_SECONDS, LEAST_SHORT_PAUSES),
  });
}
