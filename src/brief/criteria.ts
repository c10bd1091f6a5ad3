/** What a take is judged on, in the order in which it is listed. */
export const CRITERIA = [
  'notes',
  'rhythm',
  'tempo',
  'dynamics',
  'articulation',
  'breath',
  'intonation',
  'continuity',
] as const;

/** What a take is judged on, and a brief can give points for. */
export type BriefCriterion = (typeof CRITERIA)[number];
