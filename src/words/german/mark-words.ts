import type { FindingKind } from '../../judge/index.js';
import type { TakeWords } from '../take-words.js';

/** The few words that stand beside pencil marks, in German. */
export const GERMAN_MARKS: TakeWords['marks'] = {
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

const RING = 'Ein Ring zeigt die Note; darüber steht in Klammern, was geklungen hat.';
const WEDGE = 'Unter der gedruckten Gabel ist deine: Je weiter sie aufgeht, desto mehr hat sich der Klang geändert.';
const LEVELS = 'Die zwei dicken Linien sind dein Klang vor und nach dem Wechsel: Höher ist lauter.';
const ARROW = 'Der Pfeil geht von dort, wo die Note steht, dorthin, wo sie kam.';
const TEMPOS = 'Die Zahlen sind deine Viertel in der Minute, Takt für Takt.';
const BARS = 'Der dicke Balken zeigt, wie lang du die Note gehalten hast, der feine, wie lang sie dasteht.';

/** What the marks in an excerpt mean, one sentence a kind; null for kinds that are not shown in notes. */
export const GERMAN_CAPTIONS: Record<FindingKind, string | null> = {
  accidental: RING,
  'wrong-note': RING,
  'missed-note': 'Der offene Pfeil zeigt auf die Note, die nicht zu hören war.',
  'added-note': 'Das Kreuz zeigt die Note zu viel; ihr Name steht in Klammern.',
  'skipped-bars': 'Die Klammer zeigt, was nicht gespielt wurde.',
  restart: 'Der Pfeil geht zurück zu der Note, von der an du noch einmal gespielt hast.',
  hesitation: ARROW,
  'late-entry': ARROW,
  'early-entry': ARROW,
  'uneven-group': 'Die obere Klammer ist der Schlag, wie du ihn gespielt hast, die untere, wie er dasteht.',
  rushing: `Der Pfeil geht über die Takte, in denen du eilst. ${TEMPOS}`,
  dragging: `Der Pfeil zeigt zurück über die Takte, in denen du langsamer wirst. ${TEMPOS}`,
  'off-tempo': 'Über der ersten Note steht das Tempo, das du gespielt hast.',
  'weak-contrast': LEVELS,
  'reversed-contrast': LEVELS,
  'weak-hairpin': WEDGE,
  'reversed-hairpin': WEDGE,
  'fermata-long': BARS,
  'fermata-short': BARS,
  'slur-broken': 'Zwei kurze Striche zeigen, wo der Bogen abbricht.',
  'staccato-long':
    'Der dicke Balken zeigt, wie lang du die Note gehalten hast, der feine ihre Zeit bis zur nächsten Note.',
  'accent-weak': 'Der Akzent steht noch einmal über seiner Note.',
  'breath-unmarked': 'Das Komma in Klammern zeigt, wo du geatmet hast.',
  'breath-late': ARROW,
  'note-out-of-tune': 'Der Pfeil zeigt, ob der Ton zu hoch oder zu tief ist.',
  'tuning-off': null,
  'went-well': null,
};

/**
 * @param bars printed numbers of the first and the last bar of each stretch shown
 * @param caption what the marks mean
 * @param finding what was found there, in words
 * @returns what stands for an excerpt where it cannot be seen
 *
 * Source: definition.
 */
export const germanExcerpt: TakeWords['excerpt'] = (bars, caption, finding) => {
  const ranges = bars.map(({ first, last }) => (first === last ? first : `${first} bis ${last}`));
  return `Takt ${ranges.join(' und ')} in Noten, wie sie für dich dastehen. ${caption} ${finding}`;
};
