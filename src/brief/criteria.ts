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
  'sound',
] as const;

/** What is judged and worth nothing until a brief gives it points: it is told as worth a listen at most. */
export const WITHOUT_POINTS: ReadonlySet<BriefCriterion> = new Set(['sound']);

/** What a take is judged on, and a brief can give points for. */
export type BriefCriterion = (typeof CRITERIA)[number];
