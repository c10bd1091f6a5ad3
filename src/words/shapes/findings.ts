import type { Facts, FindingKind } from '../../judge/index.js';
import type { MisreadingKind } from '../../score/index.js';

/** A sentence, or what makes one from facts. */
export type Said<F> = string | ((facts: F) => string);

/** All that is said of one kind of finding, in plain words. */
export interface FindingWords<F> {
  /** a short heading */
  readonly headline: string;
  /** one or two plain sentences to the player: what was heard */
  readonly text: Said<F>;
  /** why it matters; empty for praise */
  readonly why: string;
  /** one plain sentence on how to practise it; empty for praise */
  readonly practice: Said<F>;
  /** what the pencil marks in its excerpt mean; null for kinds that are not shown in notes */
  readonly caption: string | null;
}

/** Words for every kind of finding. */
export type FindingsWords = { readonly [K in FindingKind]: FindingWords<Facts[K]> };

/** What is said of each way to misread an accidental; the caption is the accidental's. */
export type MisreadingsWords = Readonly<Record<MisreadingKind, Omit<FindingWords<Facts['accidental']>, 'caption'>>>;

/** Sentences that name other bars in which the same shows. */
export interface OtherBarsWords {
  readonly also: (bars: readonly string[]) => string;
  /** bars in which it may show */
  readonly perhaps: (bars: readonly string[]) => string;
}
