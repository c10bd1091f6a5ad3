import type { ExcerptWords, MarkWords } from '../shapes/marks.js';

/** The few words that stand beside pencil marks. */
export const MARKS: MarkWords = {
  sounded: (name) => `(${name})`,
  octave: (name, higher) => `${name}, octave ${higher ? 'higher' : 'lower'}`,
  leftOut: 'left out',
  tooHigh: 'too high',
  tooLow: 'too low',
  late: 'late',
  early: 'early',
  waits: 'waits',
  played: 'played',
  written: 'written',
  held: 'held',
  gap: 'gap',
  again: 'again from here',
  skipped: 'not played',
  ahead: 'runs ahead',
  behind: 'falls behind',
  playedTempo: (tempo) => `= ${tempo} as played`,
  brackets: ['(', ')'],
};

/** What stands for an excerpt where it cannot be seen. */
export const EXCERPT: ExcerptWords = (bars, caption, finding) => {
  const ranges = bars.map(({ first, last }) => (first === last ? first : `${first} to ${last}`));
  const where = bars.length === 1 && bars[0]?.first === bars[0]?.last ? 'Bar' : 'Bars';
  return `${where} ${ranges.join(' and ')} of the part in notes, as written for you. ${caption} ${finding}`;
};
