/**
 * From numbers to what is told to the player, as data: kinds, codes and facts. Words are looked up elsewhere.
 *
 * Conventions: weights are `fix` (sure, and it matters), `watch` (worth a listen) and `well` (praise); findings come most
 * useful first; facts hold plain numbers in the units of the house, notes as their letter with its signs (`B♭`).
 */
export type * from './criterion-sayings.js';
export type { Expected, ExpectedCode, ExpectedFacts } from './expected.js';
export {
  type Criterion,
  FINDING_KINDS,
  type FindingKind,
  UNITS,
  type Unit,
  WEIGHTS,
  type Weight,
} from './finding-kinds.js';
export { judgeTake } from './judge-take.js';
export { playedName } from './observed/note-name.js';
export type { Facts, MeasuredValue, Praise } from './observed/observation.js';
export { standardsFor } from './standards-for.js';
export { surelyOutOfTune } from './surely-out-of-tune.js';
export type * from './types.js';
