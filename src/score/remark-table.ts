import type { Coded, CodeTable } from '../base/index.js';

/** Every bar carries the number printed. */
const BAR = { bar: 'text' } as const;
/** A note as written: its letter, and 4 for the octave that begins with the middle C. */
const NOTE = { ...BAR, step: 'text', octave: 'number' } as const;
const HAIRPIN = { ...BAR, kind: ['crescendo', 'diminuendo'] } as const;

/** Everything a copyist would point out in a part, with its facts. */
export const REMARKS = {
  'other-voices': { voice: 'text', notes: 'number' },
  'repeat-within-bar': BAR,
  'bar-repeat': BAR,
  'concert-pitch': BAR,
  'bar-too-long': { ...BAR, quarters: 'number', askedQuarters: 'number' },
  'bar-too-short': { ...BAR, quarters: 'number', askedQuarters: 'number' },
  'slur-without-end': BAR,
  microtone: NOTE,
  /** signs are called as in MusicXML, `accidental-value` */
  'sign-missing': { ...NOTE, sign: 'text' },
  'sign-differs': { ...NOTE, sign: 'text' },
  'no-coda': BAR,
  'no-segno': BAR,
  'endless-repeats': {},
  'wedge-without-end': HAIRPIN,
  'hairpin-without-note': HAIRPIN,
  'unknown-dynamic': { ...BAR, mark: 'text' },
  'tempos-differ': { ...BAR, markedQuarterBpm: 'number', playedQuarterBpm: 'number' },
  'tempo-assumed': { quarterBpm: 'number' },
} as const satisfies CodeTable;

/** What a copyist would point out in a part. */
export type Remark = Coded<typeof REMARKS>;

/** What is pointed out in one bar as printed, before the bar's number is known. */
export type BarRemark = 'repeat-within-bar' | 'bar-repeat' | 'concert-pitch';
