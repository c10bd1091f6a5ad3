/** What is followed over weeks, one number a take. */
export const MEASURE_IDS = [
  'as-written',
  'evenness',
  'entries',
  'fermatas',
  'tempo',
  'steadiness',
  'contrast',
  'hairpins',
  'slurs',
  'staccato',
  'breaths',
  'own-tuning',
  'tuning',
  'long-notes',
  'breath-noise',
  'brightness',
  'stops',
] as const;

/** Name of a measure. */
export type MeasureId = (typeof MEASURE_IDS)[number];
