/**
 * What can be said about an étude before anyone plays it: where it is easily misread, where to breathe, how loud, how
 * tongued, and how to practise it. Codes and numbers; nothing is worded or drawn here.
 *
 * Conventions: score time is quarter notes from the first performed bar; seconds are at the tempo asked for, stretches
 * that bend count as steady; bars carry the printed number, beats are 1-based; places come in the order of the part, a
 * repeated bar once.
 */
export { studyPlan } from './study-plan.js';
export type * from './types.js';
