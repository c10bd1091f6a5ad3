import { SMALLEST_HEARD_CENTS } from '../../rules/sizes.js';
import type { FindingsWords } from '../../shapes/findings.js';
import { spokenNote } from '../names.js';
import { NUMBERS } from '../numbers.js';

const { whole } = NUMBERS;
/** In numbers as they are told: what rounds to nothing is in tune. */
const placed = (cents: number) =>
  Math.abs(cents) < 0.5 ? 'in tune' : `${whole(Math.abs(cents))} cents ${direction(cents)}`;
const direction = (cents: number) => (cents > 0 ? 'too high' : 'too low');
const heard = (cents: number) => `${whole(Math.abs(cents))} cents, and listeners notice ${SMALLEST_HEARD_CENTS}`;

/** What is said of intonation. */
export const INTONATION = {
  'note-out-of-tune': {
    headline: 'A note is out of tune with the rest',
    text: (f) =>
      `The ${spokenNote(f.written)} is ${direction(f.cents)} beside your other notes: ${heard(f.cents)}.${f.times > 1 ? ` It is so ${f.times} times in this take.` : ''}${f.secondCents === undefined ? '' : ` A second way of hearing puts it ${placed(f.secondCents)}, so trust a tuner here.`}`,
    why: 'One note that leans away from its neighbours is heard even in a large section.',
    practice: 'Hold this note against a drone or a tuner, then come to it from the note before and check again.',
    caption: 'The arrow shows which way the note leans.',
  },
  'tuning-off': {
    headline: 'The instrument is tuned away from A = 440 Hz',
    text: (f) =>
      `The whole take is ${direction(f.cents)}: ${heard(f.cents)}. Your notes fit each other; it is the instrument that is ${direction(f.cents)}.`,
    why: 'The section can only play in tune together from one common pitch.',
    practice: (f) => `Warm up, tune again, and ${f.cents > 0 ? 'pull out' : 'push in'} a little before you record.`,
    caption: null,
  },
} satisfies Partial<FindingsWords>;
