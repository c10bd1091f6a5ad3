import type { SayingCode, SayingFacts } from '../../judge/index.js';

/** What is said of a criterion in one line, piece by piece; pieces begin with a small letter and have no full stop. */
export type SayingsWords = { readonly [C in SayingCode]: (facts: SayingFacts[C]) => string };
