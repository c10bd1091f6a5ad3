import { isMeasured } from '../../base/index.js';
import type { NoteContext } from '../context/context.js';
import { ceilingShare } from './ceiling-share.js';
import { floorInPauses } from './floor-in-pauses.js';
import { followPlan } from './follow-plan.js';
import { measureSettling } from './settling.js';

/**
 * Plain signs, each enough by itself. Takes with and without automatic gain lie on both sides of them with room between: of
 * takes without, none undid more than 2.3 standard errors, a tenth of their notes at most shared one peak, and held notes took
 * back at most a quarter of a jump.
 */
const UNDONE_SURELY = 3;
const UNDONE = 0.3;
const ONE_CEILING = 0.35;
const SETTLES = -0.33;
const SETTLES_ALIKE = -0.65;
/** The floor moves by so much against the playing, in long pauses. */
const LONG_PAUSE_SECONDS = 0.5;
const LEAST_LONG_PAUSES = 5;
const FLOOR_MOVES_DB = 10;
const FLOOR_AGAINST = -0.7;
/**
 * Where hardly anything is left of what the marks ask for, one weaker sign is enough. Players without any contrast come up to
 * 2.3 standard errors by chance, and to -0.3 in the pauses.
 */
const HARDLY_FOLLOWED = 0.45;
const MOST_FOLLOWED = 0.8;
const WEAKLY_UNDONE_SURELY = 2.4;
const MOSTLY_UNDONE = 0.6;
const WEAKLY_SETTLES = -0.25;
const WEAKLY_SETTLES_ALIKE = -0.45;
const SHORT_PAUSE_SECONDS = 0.12;
const LEAST_SHORT_PAUSES = 10;
const FLOOR_WEAKLY_AGAINST = -0.45;

/**
 * Whether the recorder moved its gain, fast or slowly, or held loud notes under a ceiling.
 *
 * @param context the take with its notes measured
 * @returns true only when something in the recording says so
 *
 * Source: the functions called here name theirs; limits set on takes with known gain.
 */
export function ridesLevel(context: NoteContext): boolean {
  if (ceilingShare(context) >= ONE_CEILING) return true;
  const long = floorInPauses(context, LONG_PAUSE_SECONDS, LEAST_LONG_PAUSES);
  if (isMeasured(long) && long.moveDb >= FLOOR_MOVES_DB && long.withPlaying <= FLOOR_AGAINST) return true;
  const plan = followPlan(context, MOST_FOLLOWED);
  if (plan === null || plan.followed > MOST_FOLLOWED) return false;
  if (plan.sureness >= UNDONE_SURELY && plan.undone >= UNDONE) return true;
  const settling = measureSettling(context);
  const settles = (slope: number, alike: number) =>
    isMeasured(settling) && settling.slope <= slope && settling.correlation <= alike;
  if (settles(SETTLES, SETTLES_ALIKE)) return true;
  if (plan.followed > HARDLY_FOLLOWED) return false;
  if (plan.sureness >= WEAKLY_UNDONE_SURELY && plan.undone >= MOSTLY_UNDONE) return true;
  if (settles(WEAKLY_SETTLES, WEAKLY_SETTLES_ALIKE)) return true;
  const short = floorInPauses(context, SHORT_PAUSE_SECONDS, LEAST_SHORT_PAUSES);
  return isMeasured(short) && short.withPlaying <= FLOOR_WEAKLY_AGAINST;
}
