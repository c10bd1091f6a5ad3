import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';

const { whole } = NUMBERS;
const direction = (cents: number) => (cents > 0 ? 'sharp' : 'flat');
/** In numbers as they are told: what rounds to nothing is in tune. */
const placed = (cents: number) =>
  Math.abs(cents) < 0.5 ? 'in tune' : `${whole(Math.abs(cents))} cents ${direction(cents)}`;

/** What is said of intonation. */
export const INTONATION = {
  'note-out-of-tune': {
    headline: 'A note is out of tune with the rest',
    text: (f) =>
      `The ${f.written} is ${whole(Math.abs(f.cents))} cents ${direction(f.cents)} of your own tuning${f.times > 1 ? `, and so it is ${f.times} times in this take` : ''}.${f.secondCents === undefined ? '' : ` A second way of hearing puts it ${placed(f.secondCents)}, so trust a tuner here.`}`,
    why: 'One note that leans away from its neighbours is heard even in a large section.',
    practice: 'Hold this note against a drone or a tuner, then come to it from the note before and check again.',
    caption: 'The arrow shows which way the note leans.',
  },
  'tuning-off': {
    headline: 'The instrument is tuned away from A = 440 Hz',
    text: (f) =>
      `The whole take is ${whole(Math.abs(f.cents))} cents ${direction(f.cents)} of A = 440. Your notes agree with each other; the instrument stands ${direction(f.cents)}.`,
    why: 'The section can only play in tune together from one common pitch.',
    practice: (f) => `Warm up, tune again, and ${f.cents > 0 ? 'pull out' : 'push in'} a little before you record.`,
    caption: null,
  },
} satisfies Partial<FindingsWords>;
