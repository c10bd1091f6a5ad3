import type { Criterion } from './finding-kinds.js';
import type { JudgeInput } from './observed/judge-input.js';
import type { Observation } from './observed/observation.js';

/** What is told from where exactly a note begins and ends. */
const BY_PLACE: ReadonlySet<Criterion> = new Set(['rhythm', 'articulation', 'intonation']);
/** So many notes before a place where the player began again have been played haltingly, or more than once. */
const NOTES_BEFORE_RESTART = 12;
/** Among these a note has to be so sure; notes elsewhere are heard at 0.97 and more on rendered takes. */
const SURE_BEFORE_RESTART = 0.9;

/**
 * Right before a stop, which of two attempts a sound belongs to is not always plain: what was not surely heard there is not
 * worth a listen either, because it would send a player to look for what is not there.
 *
 * @param input one take
 * @param observations all that was noticed
 * @returns the same without watches on notes that are not sure and stand before a restart
 */
export function withoutDoubtful(input: JudgeInput, observations: readonly Observation[]): Observation[] {
  const { notes, restarts } = input.alignment;
  const isUnsure = (index: number): boolean =>
    (notes[index]?.confidence ?? 1) < SURE_BEFORE_RESTART &&
    restarts.some(({ resumedAtIndex: at }) => index < at && at - index <= NOTES_BEFORE_RESTART);
  return observations.filter(({ criterion, weight, index, toIndex = index }) => {
    if (weight !== 'watch' || index === undefined || toIndex === undefined || !BY_PLACE.has(criterion)) return true;
    return !notes.slice(index, toIndex + 1).some((note) => isUnsure(note.index));
  });
}
