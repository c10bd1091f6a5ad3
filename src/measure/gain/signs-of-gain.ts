import { isMeasured, type NotMeasured } from '../../base/index.js';
import type { FloorInPauses } from './floor-in-pauses.js';
import type { PlanFollowing } from './follow-plan.js';
import type { Settling } from './settling.js';

/** What a recording shows of its gain; each sign is read only where those before it leave the question open. */
export interface GainSigns {
  /** share of the notes that peak at one height */
  ceiling(): number;
  plan(): PlanFollowing | null;
  settling(): Settling | NotMeasured;
  floorInLongPauses(): FloorInPauses | NotMeasured;
  floorInShortPauses(): FloorInPauses | NotMeasured;
}

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
const FLOOR_MOVES_DB = 10;
const FLOOR_AGAINST = -0.7;
/**
 * Where hardly anything is left of what the marks ask for, one weaker sign is enough. Players without any contrast come up to
 * 2.3 standard errors by chance, and to -0.3 in the pauses.
 */
const HARDLY_FOLLOWED = 0.45;
const WEAKLY_UNDONE_SURELY = 2.4;
const MOSTLY_UNDONE = 0.6;
const WEAKLY_SETTLES = -0.25;
const WEAKLY_SETTLES_ALIKE = -0.45;
const FLOOR_WEAKLY_AGAINST = -0.45;

/** Where more than so many dB for each dB written are played, no gain is looked for. */
export const MOST_FOLLOWED = 0.8;

/**
 * @param signs what the recording shows
 * @returns whether a gain was moved: true only when something says so
 *
 * Source: limits set on takes with known gain.
 */
export function saysGain(signs: GainSigns): boolean {
  if (signs.ceiling() >= ONE_CEILING) return true;
  const long = signs.floorInLongPauses();
  if (isMeasured(long) && long.moveDb >= FLOOR_MOVES_DB && long.withPlaying <= FLOOR_AGAINST) return true;
  const plan = signs.plan();
  if (plan === null || plan.followed > MOST_FOLLOWED) return false;
  if (plan.sureness >= UNDONE_SURELY && plan.undone >= UNDONE) return true;
  const settling = signs.settling();
  const settles = (slope: number, alike: number) =>
    isMeasured(settling) && settling.slope <= slope && settling.correlation <= alike;
  if (settles(SETTLES, SETTLES_ALIKE)) return true;
  if (plan.followed > HARDLY_FOLLOWED) return false;
  if (plan.sureness >= WEAKLY_UNDONE_SURELY && plan.undone >= MOSTLY_UNDONE) return true;
  if (settles(WEAKLY_SETTLES, WEAKLY_SETTLES_ALIKE)) return true;
  const short = signs.floorInShortPauses();
  return isMeasured(short) && short.withPlaying <= FLOOR_WEAKLY_AGAINST;
}
