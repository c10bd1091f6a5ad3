import type { FindingKind } from '../../judge/index.js';

/** The few words that stand beside pencil marks. */
export const MARK_NOTES = {
  sounded: (name: string) => `(${name})`,
  octave: (name: string, higher: boolean) => `${name}, octave ${higher ? 'higher' : 'lower'}`,
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
  playedTempo: (tempo: string) => `= ${tempo} as played`,
  brackets: ['(', ')'],
} as const;

const RING = 'A ring marks the note; above it in brackets is what sounded.';
const WEDGE = 'Under the printed wedge is yours: the wider it opens, the more the sound changed.';
const LEVELS = 'The two heavy lines are your sound before and after the change: higher is louder.';
const ARROW = 'The arrow goes from where the note is written to where it came.';
const TEMPOS = 'The numbers are your quarter notes a minute, bar by bar.';
const BARS = 'The heavy bar is how long you held the note, the fine one how long it is written.';

/** What the marks in an excerpt mean, one sentence a kind; null for kinds that are not shown in notes. */
const CAPTIONS: Record<FindingKind, string | null> = {
  accidental: RING,
  'wrong-note': RING,
  'missed-note': 'The open arrow points to the note that was not heard.',
  'added-note': 'The cross marks the extra note; its name is in brackets.',
  'skipped-bars': 'The bracket covers what was not played.',
  restart: 'The arrow goes back to the note from which you played again.',
  hesitation: ARROW,
  'late-entry': ARROW,
  'early-entry': ARROW,
  'uneven-group': 'The upper bracket is the beat as you played it, the lower one as it is written.',
  rushing: `The arrow runs over the bars in which you hurry. ${TEMPOS}`,
  dragging: `The arrow points back over the bars in which you slow down. ${TEMPOS}`,
  'off-tempo': 'Over the first note stands the tempo you played, as a metronome mark.',
  'weak-contrast': LEVELS,
  'reversed-contrast': LEVELS,
  'weak-hairpin': WEDGE,
  'reversed-hairpin': WEDGE,
  'fermata-long': BARS,
  'fermata-short': BARS,
  'slur-broken': 'Two short strokes show where the slur broke.',
  'staccato-long': 'The heavy bar is how long you held the note, the fine one its time until the next note.',
  'accent-weak': 'The accent is drawn again over its note.',
  'breath-unmarked': 'The comma in brackets shows where you took a breath.',
  'breath-late': ARROW,
  'note-out-of-tune': 'The arrow shows which way the note leans.',
  'tuning-off': null,
  'went-well': null,
};

/**
 * @param kind of a finding
 * @returns what the pencil marks mean; null when findings of this kind are not shown in notes
 *
 * Source: definition.
 */
export function captionOf(kind: FindingKind): string | null {
  return CAPTIONS[kind];
}

/**
 * @param bars printed numbers of the first and the last bar of each stretch shown
 * @param caption what the marks mean
 * @param finding what was found there, in words
 * @returns what stands for an excerpt where it cannot be seen
 *
 * Source: definition.
 */
export function excerptInWords(
  bars: readonly { readonly first: string; readonly last: string }[],
  caption: string,
  finding: string,
): string {
  const ranges = bars.map(({ first, last }) => (first === last ? first : `${first} to ${last}`));
  const where = bars.length === 1 && bars[0]?.first === bars[0]?.last ? 'Bar' : 'Bars';
  return `${where} ${ranges.join(' and ')} of the part in notes, as written for you. ${caption} ${finding}`;
}
