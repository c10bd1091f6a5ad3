import type { Translated } from './translated.js';

/** Why a take has no number to follow, in plain words. */
export const NO_FIGURE = {
  notKept: 'this result was written before the number was kept; review the take again to have it',
  notReviewed: 'the take was not reviewed',
  /** in a result of another language */
  told: 'the reason stands on the page of the take',
  noSameDay: 'no player has two takes of one day with this number',
  notes: 'the part has no notes to count',
  groups: 'no beat with several notes to measure',
  entries: 'no entry after a rest to measure',
  fermatas: 'no fermata to measure',
  noTempoMark: 'no tempo is marked',
  bars: 'too few bars to measure',
  contrasts: 'no change of level to measure',
  hairpins: 'no crescendo or diminuendo to measure',
  slurs: 'no slur to measure',
  staccato: 'no dotted note to measure',
  breaths: 'no breath is marked',
  heldNotes: 'too few held notes to measure',
} as const;

/** Why a take has no number to follow, in one language. */
export type NoFigureWords = Translated<typeof NO_FIGURE>;
