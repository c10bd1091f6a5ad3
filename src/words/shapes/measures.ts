/** How one measure is spoken of over the weeks. */
export interface MeasureWords {
  readonly name: string;
  /** what the number counts, under the name */
  readonly unit: string;
  /** a number with what it counts */
  readonly value: (number: string) => string;
  readonly better: string;
  readonly worse: string;
  readonly different: string;
  /** what the next lesson is for when it became worse */
  readonly goal: string;
}
