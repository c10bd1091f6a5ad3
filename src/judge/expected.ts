/** What was expected in place of a measured value; facts are in the unit of the value unless they say otherwise. */
export interface ExpectedFacts {
  readonly about: { readonly value: number };
  readonly 'about-half': object;
  readonly 'at-end': object;
  /** a rise of at least so much */
  readonly 'at-least': { readonly value: number };
  /** a fall of at least so much */
  readonly 'at-least-down': { readonly value: number };
  /** a rest of at least so long, in the unit of the value */
  readonly 'at-least-as-long': { readonly value: number };
  readonly between: { readonly least: number; readonly most: number };
  readonly 'louder-than-neighbours': object;
  readonly 'next-note-on-beat': object;
  readonly 'no-breath': object;
  readonly 'no-gap': object;
  readonly 'no-other-pitch': object;
  readonly 'no-wait': object;
  readonly 'on-the-beat': object;
  readonly percent: { readonly percent: number };
  readonly 'same-tempo-throughout': object;
  readonly 'softer-after-attack': { readonly db: number };
  readonly within: { readonly value: number };
  readonly 'within-percent': { readonly percent: number };
}

/** Code of what was expected. */
export type ExpectedCode = keyof ExpectedFacts;

/** What was expected, as a code with facts. */
export type Expected = { [C in ExpectedCode]: { readonly code: C; readonly facts: ExpectedFacts[C] } }[ExpectedCode];
