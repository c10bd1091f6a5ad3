import type { FindingKind } from './finding-kinds.js';
import type { Observation } from './observed/observation.js';

/** What stops the beat, so that what comes after it is late. */
const STOPS: ReadonlySet<FindingKind> = new Set(['breath-unmarked', 'breath-late', 'hesitation']);
/** An entry is expected from so many notes before it: a stop among them moves it. */
const NOTES_BEFORE_ENTRY = 4;

/**
 * One slip is told once: an entry that is late because the beat was stopped right before it, and a group whose notes are uneven
 * because it was stopped in its midst, are the stop's.
 *
 * @param observations all that was noticed
 * @returns the same without what another one causes
 */
export function withoutConsequences(observations: readonly Observation[]): Observation[] {
  const stops = observations.flatMap(({ kind, index }) => (STOPS.has(kind) && index !== undefined ? [index] : []));
  return observations.filter(({ kind, index, toIndex = index }) => {
    if (index === undefined || toIndex === undefined) return true;
    if (kind === 'late-entry') return !stops.some((stop) => stop < index && index - stop <= NOTES_BEFORE_ENTRY);
    return kind !== 'uneven-group' || !stops.some((stop) => index <= stop && stop <= toIndex);
  });
}
