import type { StandingSentences, TroubleKind, TroubleWords } from '../shapes/weeks-standing.js';
import { barsIn } from './bars-in.js';
import { listed } from './lists.js';

/** How kinds of findings are spoken of in passing. */
export const TROUBLES: Readonly<Record<TroubleKind, TroubleWords>> = {
  accidental: {
    topic: ['the accidental', 'the accidentals'],
    aim: 'the right note at the accidental, three times in a row',
  },
  'wrong-note': { topic: ['the wrong note', 'the wrong notes'], aim: 'the notes as written, three times in a row' },
  'missed-note': { topic: ['the missing note', 'the missing notes'], aim: 'every note speaks' },
  'added-note': { topic: ['the extra note', 'the extra notes'], aim: 'only the notes that are written' },
  'skipped-bars': { topic: ['the bars left out', 'the bars left out'], aim: 'play it all, with nothing left out' },
  restart: { topic: ['the stop', 'the stops'], aim: 'play on through it without stopping' },
  hesitation: { topic: ['the wait', 'the waits'], aim: 'keep the beat going, with no wait' },
  'late-entry': { topic: ['the late entry', 'the late entries'], aim: 'count the rest and come in on time' },
  'early-entry': { topic: ['the early entry', 'the early entries'], aim: 'count the rest to its end, then come in' },
  'uneven-group': { topic: ['the uneven beat', 'the uneven beats'], aim: 'all notes of the beat equally long' },
  rushing: {
    topic: ['the tempo that runs ahead', 'the tempo that runs ahead'],
    aim: 'hold the tempo with the metronome',
  },
  dragging: {
    topic: ['the tempo that falls back', 'the tempo that falls back'],
    aim: 'keep the tempo going with the metronome',
  },
  'off-tempo': { topic: ['the tempo', 'the tempo'], aim: 'play it at the marked tempo' },
  'weak-contrast': {
    topic: ['loud and soft too alike', 'loud and soft too alike'],
    aim: 'loud and soft plainly different',
  },
  'reversed-contrast': {
    topic: ['soft louder than loud', 'soft louder than loud'],
    aim: 'the soft mark softer than the loud one',
  },
  'weak-hairpin': { topic: ['the flat hairpin', 'the flat hairpins'], aim: 'a hairpin that everybody can hear' },
  'reversed-hairpin': {
    topic: ['the hairpin the wrong way round', 'the hairpins the wrong way round'],
    aim: 'the hairpin in the direction in which it is printed',
  },
  'fermata-long': { topic: ['the long fermata', 'the long fermatas'], aim: 'let go of the fermata earlier' },
  'fermata-short': { topic: ['the short fermata', 'the short fermatas'], aim: 'let the fermata rest longer' },
  'slur-broken': { topic: ['the broken slur', 'the broken slurs'], aim: 'keep the air going through the slur' },
  'staccato-long': { topic: ['the long staccato', 'the long staccato'], aim: 'short notes with silence after them' },
  'accent-weak': { topic: ['the weak accent', 'the weak accents'], aim: 'an accent that stands out' },
  'breath-unmarked': {
    topic: ['the breath where none is marked', 'the breaths where none is marked'],
    aim: 'play on to the marked breath',
  },
  'breath-late': { topic: ['the slow breath', 'the slow breaths'], aim: 'a quick breath, and the next note on time' },
  'breath-missed': {
    topic: ['the missing breath', 'the missing breaths'],
    aim: 'take the breath the teacher asks for',
  },
  'breath-short': {
    topic: ['the short breath', 'the short breaths'],
    aim: 'a full breath, with the time it needs',
  },
  'note-out-of-tune': {
    topic: ['the note out of tune', 'the notes out of tune'],
    aim: 'bring the note in tune with its neighbours',
  },
  'unsteady-note': {
    topic: ['the long note that shakes', 'the long notes that shake'],
    aim: 'the long note on steady air',
  },
  'air-gives-way': {
    topic: ['the air that gives way', 'the air that gives way'],
    aim: 'air to the end of the note before the breath',
  },
  'cracked-start': { topic: ['the note that cracks', 'the notes that crack'], aim: 'a clean start' },
  'speaks-late': {
    topic: ['the note that speaks late', 'the notes that speak late'],
    aim: 'a note that speaks at once',
  },
  'hit-start': {
    topic: ['the note that is hit', 'the notes that are hit'],
    aim: 'a light tongue, and air through the note',
  },
  'tuning-off': { topic: ['the tuning to A', 'the tuning to A'], aim: 'tune to A before playing' },
};

const all = (things: readonly string[]) => things.join('; ');

/** How a player stands. */
export const WEEKS_STANDING: StandingSentences = {
  topicIn: (topic, bars) => (bars.length === 0 ? topic : `${topic} in ${barsIn(bars)}`),
  firstDay: (topics) =>
    topics.length === 0 ? 'The first take, with nothing to mend.' : `The first take. To work on: ${all(topics)}.`,
  mended: (topics) => `Mended: ${all(topics)}.`,
  better: (names) => `Better: ${all(names)}.`,
  nearlyThere: (topics) => `Nearly there: ${all(topics)}.`,
  stillOpen: (topics) => `Still open: ${all(topics)}.`,
  cameBack: (topics) => `Back again: ${all(topics)}.`,
  cameNew: (topics) => `New: ${all(topics)}.`,
  slippedBack: (names) => `Slipped back: ${all(names)}.`,
  notHeard: (topics) => `Could not be judged this time: ${all(topics)}.`,
  nothingOpen: 'Nothing is open.',
  noTake: 'No take could be judged yet.',
  goalInBars: (bars, aim) => `${bars.length === 1 ? 'Bar' : 'Bars'} ${listed(bars)}: ${aim}.`,
  goalThroughout: (aim) => `${aim.charAt(0).toUpperCase()}${aim.slice(1)}.`,
  goalHearAgain: (bars) => `Play ${barsIn(bars)} again, so that it can be heard.`,
  goalListen: (topic) => `Listen together: ${topic}.`,
  goalKeep: 'Play it through once, as at the audition.',
};
