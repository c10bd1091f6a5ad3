import type { BriefCriterion } from '../brief/index.js';

/** What a take is judged on. */
export type Criterion = BriefCriterion;

/** Every kind of finding, as documents name them and in their order there. */
export const FINDING_KINDS = [
  'accidental',
  'wrong-note',
  'missed-note',
  'added-note',
  'skipped-bars',
  'restart',
  'hesitation',
  'late-entry',
  'early-entry',
  'uneven-group',
  'rushing',
  'dragging',
  'off-tempo',
  'weak-contrast',
  'reversed-contrast',
  'weak-hairpin',
  'reversed-hairpin',
  'fermata-long',
  'fermata-short',
  'slur-broken',
  'staccato-long',
  'accent-weak',
  'breath-unmarked',
  'breath-late',
  'breath-missed',
  'breath-short',
  'note-out-of-tune',
  'tuning-off',
  'unsteady-note',
  'air-gives-way',
  'cracked-start',
  'speaks-late',
  'hit-start',
  'went-well',
] as const;

/** What a finding is about. */
export type FindingKind = (typeof FINDING_KINDS)[number];

/** `fix`: sure and it matters; `watch`: worth a listen; `well`: praise. */
export const WEIGHTS = ['fix', 'watch', 'well'] as const;

/** How much a finding matters. */
export type Weight = (typeof WEIGHTS)[number];

/** Units of measured values, as documents name them. */
export const UNITS = [
  'dB',
  's',
  '%',
  'cents',
  'semitones',
  'times the written length',
  'quarter notes a minute',
  'dotted quarters a minute',
  'half notes a minute',
] as const;

/** Unit of a measured value. */
export type Unit = (typeof UNITS)[number];
