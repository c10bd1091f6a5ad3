import type { ExcerptWords, MarkWords } from '../shapes/marks.js';

/** The few words that stand beside pencil marks. */
export const MARKS: MarkWords = {
  sounded: (name) => `(${name})`,
  octave: (name, higher) => `${name}, Oktave ${higher ? 'höher' : 'tiefer'}`,
  leftOut: 'ausgelassen',
  tooHigh: 'zu hoch',
  tooLow: 'zu tief',
  late: 'zu spät',
  early: 'zu früh',
  waits: 'wartet',
  played: 'gespielt',
  written: 'notiert',
  held: 'gehalten',
  gap: 'Lücke',
  again: 'ab hier noch einmal',
  skipped: 'nicht gespielt',
  ahead: 'läuft davon',
  behind: 'wird langsamer',
  playedTempo: (tempo) => `= ${tempo} gespielt`,
  brackets: ['(', ')'],
};

/** What stands for an excerpt where it cannot be seen. */
export const EXCERPT: ExcerptWords = (bars, caption, finding) => {
  const ranges = bars.map(({ first, last }) => (first === last ? first : `${first} bis ${last}`));
  return `Takt ${ranges.join(' und ')} in Noten, wie sie für dich dastehen. ${caption} ${finding}`;
};
