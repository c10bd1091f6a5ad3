/** Words of the section sheet for takes of several scores. */
export const SECTION_WORDS = {
  severalScores: 'Several études or parts',
  /** a bar of one score among several */
  barOf: (bar: string, score: string) => `Bar ${bar} (${score})`,
  wholeTakeOf: (score: string) => `The whole take (${score})`,
  /** a take of one score among several */
  takeOf: (who: string, score: string) => `${who}, ${score}`,
} as const;
