import type { Take } from '../decode/index.js';
import { type HeardTake, hearTake } from './hear-take.js';
import type { Etude } from './types.js';

/** A take as heard against the étude that was played. */
export interface ChosenEtude {
  readonly etude: Etude;
  readonly heard: HeardTake;
}

/**
 * Holds a take against each étude it may be of, and keeps the one that fits best: one that was recognised before one that
 * was not, and then the one of which the greater share of notes was found as written. The first wins where two fit alike.
 *
 * @param take decoded recording
 * @param etudes one or more
 * @returns the étude, and the take as heard against it
 */
export function chooseEtude(take: Take, etudes: readonly Etude[]): ChosenEtude {
  let best: ChosenEtude | null = null;
  for (const etude of etudes) {
    const heard = hearTake(take, etude.part);
    if (best === null || fitOf(heard) > fitOf(best.heard)) best = { etude, heard };
  }
  if (best === null) throw new Error('there is no étude to hold the take against');
  return best;
}

/** Below 1 for a take that was not recognised, above 1 for one that was. */
function fitOf({ alignment }: HeardTake): number {
  return alignment.share + (alignment.fit === 'this-part' ? 1 : 0);
}
