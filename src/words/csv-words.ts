/** What stands in a table where there is no number. */
export const CSV_WORDS = {
  notMeasured: 'not measured',
  notJudged: 'not judged',
  notPlayed: 'not played',
} as const;
