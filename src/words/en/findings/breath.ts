import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';
import { ARROW } from './captions.js';

const { tenth } = NUMBERS;

const COMMA = 'The comma in brackets shows where to breathe.';

/** What is said of breath. */
export const BREATH = {
  'breath-unmarked': {
    headline: 'A breath falls where none is marked',
    text: (f) =>
      f.inSlur
        ? 'There is a breath inside the slur after this note.'
        : 'There is a breath after this note where none is marked.',
    why: 'A breath in the wrong place cuts the phrase in two.',
    practice:
      'Take a full breath at the mark before, and play on to the next mark in one line. Rest when you feel dizzy.',
    caption: 'The comma in brackets shows where you took a breath.',
  },
  'breath-late': {
    headline: 'The breath delays the next note',
    text: (f) => `The breath here takes ${tenth(f.seconds)} seconds too long, so the next note comes late.`,
    why: 'Take the time for a breath from the note before it, never from the note after it.',
    practice: 'Shorten the note before the breath, not the beat after it. Breathe low and quick.',
    caption: ARROW,
  },
  'breath-missed': {
    headline: 'A breath was left out',
    text: () => 'Your teacher asks for a breath here, and none was heard.',
    why: 'A breath in its place carries you to the next one, and lets the phrase end.',
    practice: 'Mark the breath in your part. Play up to it, stop, breathe in, and go on from there.',
    caption: COMMA,
  },
  'breath-short': {
    headline: 'A full breath was only a quick one',
    text: (f) => `Your teacher asks for a full breath here. This one takes ${tenth(f.seconds)} seconds.`,
    why: 'A full breath makes the long phrase after it easy.',
    practice: 'End the note before a little sooner. Breathe in low and without haste, and come in on the beat.',
    caption: COMMA,
  },
} satisfies Partial<FindingsWords>;
