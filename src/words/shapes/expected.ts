import type { ExpectedCode, ExpectedFacts } from '../../judge/index.js';

/** What was expected in place of a measured value. */
export type ExpectedWords = { readonly [C in ExpectedCode]: (facts: ExpectedFacts[C]) => string };
