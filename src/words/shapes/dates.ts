/** How days are written in one language. */
export interface DateWords {
  /** names of the twelve months */
  readonly months: readonly string[];
  readonly date: (day: number, month: string, year: string) => string;
  /** the year stands elsewhere on the page */
  readonly day: (day: number, month: string) => string;
  /** for narrow places; the month by its name and by its number, 1 for the first */
  readonly shortDay: (day: number, month: string, number: number) => string;
}

/** What writes days, given as ISO 8601 calendar days; a text that is no such day comes back as it is. */
export interface Dates {
  readonly date: (day: string) => string;
  readonly day: (day: string) => string;
  readonly shortDay: (day: string) => string;
}
