import type { FindingsWords } from '../../shapes/findings.js';
import { LEANING } from '../leaning.js';
import { NUMBERS } from '../numbers.js';
import { ARROW } from './captions.js';

const { hundredths, tenth, whole } = NUMBERS;
const BARS = 'The heavy bar is how long you held the note, the fine one how long it is written.';

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'];

/** Syllables that fill a rest with small values. Source: common practice. */
function counting(restQuarters: number): string {
  return restQuarters < 0.5 ? '“one-e-and-a”' : '“one and two and”';
}

/** What is said of rhythm. */
export const RHYTHM = {
  'late-entry': {
    headline: 'The entry came late',
    text: (f) => `The note after the rest comes ${hundredths(f.milliseconds)} seconds too late.`,
    why: 'A rest is played too: count it in small values and the entry falls into place.',
    practice: (f) =>
      `Count the rest in small notes: say ${counting(f.restQuarters)} aloud through it, then play on the next one.`,
    caption: ARROW,
  },
  'early-entry': {
    headline: 'The entry came early',
    text: (f) => `The note after the rest comes ${hundredths(f.milliseconds)} seconds too early.`,
    why: 'A rest is played too: count it to its very end before you come in.',
    practice: (f) => `Give the rest its full length: say ${counting(f.restQuarters)} aloud through it, then play.`,
    caption: ARROW,
  },
  'uneven-group': {
    headline: 'The notes of the beat are not equal',
    text: (f) =>
      `The ${f.notes} notes of this ${f.tuplet && f.notes === 3 ? 'triplet' : 'group'} are uneven: the ${ORDINALS[f.which] ?? 'last'} is too ${f.share > f.written ? 'long' : 'short'}. It takes ${whole(100 * f.share)} percent of the time instead of ${whole(100 * f.written)}.${LEANING.sentence(f.cause)}`,
    why: 'The parts of a beat stay equal across leaps and changes of articulation.',
    practice:
      'Tap the beat and say the group on one syllable each. Play it on one note first, then as written, slurred, then tongued.',
    caption: 'The upper bracket is the beat as you played it, the lower one as it is written.',
  },
  'fermata-long': {
    headline: 'The fermata is very long',
    text: (f) =>
      f.asked
        ? `The fermata lasts ${tenth(f.ratio)} times its written length. Your teacher asks for no more than ${tenth(f.most)} times.`
        : `The fermata lasts ${tenth(f.ratio)} times its written length. About twice is usual; more than ${tenth(f.most)} times stops the music.`,
    why: 'A fermata lets the music rest. When it lasts too long the line is lost.',
    practice: (f) =>
      f.asked
        ? 'Count the beats of the hold inside, and let go sooner than you did.'
        : 'Count the written beats once more inside, then let go.',
    caption: BARS,
  },
  'fermata-short': {
    headline: 'The fermata is hardly held',
    text: (f) =>
      f.asked
        ? `The fermata lasts only ${tenth(f.ratio)} times its written length. Your teacher asks for ${tenth(f.least)} times or more.`
        : `The fermata lasts only ${tenth(f.ratio)} times its written length. It may rest: at least ${tenth(f.least)} times.`,
    why: 'A fermata lets the music rest before it goes on.',
    practice: (f) =>
      f.asked
        ? 'Count the written beats and go on counting: hold it longer than you did.'
        : 'Count the written beats, then wait about as long again before you go on.',
    caption: BARS,
  },
} satisfies Partial<FindingsWords>;
