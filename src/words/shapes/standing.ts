/** Everything the table for a director, and the panel's blank sheet, say. */
export interface StandingWords {
  readonly several: string;
  readonly documentTitle: (title: string) => string;
  readonly foot: (title: string) => string;
  /** that it supports a panel; stands on top */
  readonly support: string;
  readonly heading: string;
  readonly notes: readonly string[];
  readonly place: string;
  readonly places: (best: number, worst: number) => string;
  readonly take: string;
  readonly bars: string;
  readonly barsOf: (played: number, of: number) => string;
  readonly points: string;
  readonly pointsOf: (given: string, possible: string, error: string) => string;
  readonly none: string;
  readonly notReviewed: (who: string) => string;
  readonly cutOff: (who: string) => string;
  readonly chair: string;
  readonly chairs: { readonly sure: string; readonly 'listen-again': string; readonly no: string };
  readonly shortList: (chairs: number) => string;
  readonly nobodySure: string;
  readonly sure: (names: readonly string[]) => string;
  /** chairs that are left for those of whom the measures do not tell */
  readonly again: (names: readonly string[], chairs: number) => string;
  readonly panel: string;
  readonly agreement: (w: string) => string;
  readonly noAgreement: string;
  readonly panelPlace: string;
  readonly mean: string;
  readonly spread: string;
  readonly measured: string;
  readonly placeByMeasure: string;
  readonly apart: string;
  readonly listenAgain: string;
  /** panel and measures put these takes at different places */
  readonly partsWays: (names: readonly string[]) => string;
  readonly unknown: (takes: readonly string[]) => string;
  readonly blankTitle: string;
  readonly judgeAndDay: string;
  readonly blankNote: string;
  readonly outOf: (criterion: string, points: string) => string;
  readonly inAll: string;
}
