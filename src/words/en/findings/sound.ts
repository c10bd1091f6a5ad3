import { SMALLEST_HEARD_CENTS } from '../../rules/sizes.js';
import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';

const { fixed, whole } = NUMBERS;
const usually = (cents: number) =>
  cents < 0.5 ? 'less than 1 cent' : cents < 1.5 ? '1 cent' : `${whole(cents)} cents`;

/** What is said of the sound: steadiness, never beauty. */
export const SOUND = {
  'unsteady-note': {
    headline: 'A long note shakes',
    text: (f) =>
      `The pitch of this long note sways by about ${whole(f.cents)} cents. Your other long notes sway by about ${usually(f.usual)}.`,
    why: 'A note on a steady stream of air carries, at any loudness.',
    practice:
      'Play this note alone as a long tone, softly, and listen until it stands still. Rest between tones, and stop when you feel dizzy.',
    caption: 'The wavy line shows the note that shakes.',
  },
  'air-gives-way': {
    headline: 'The air gives way before the breath',
    text: (f) =>
      `At the end of this note the pitch sinks by ${whole(f.cents)} cents, and the tone grows softer. Listeners notice ${SMALLEST_HEARD_CENTS} cents.`,
    why: 'The last beat before a breath needs as much air as the first one after it.',
    practice:
      'Hold this note a beat longer than written, at one pitch beside a tuner. Then play the phrase and keep the air moving to its end.',
    caption: 'The arrow shows where the tone sinks.',
  },
  'cracked-start': {
    headline: 'A note cracks as it begins',
    text: (f) => `For a moment ${f.above ? 'a higher' : 'a lower'} tone sounds before this note does.`,
    why: 'A clean start lets the listener hear the note you mean at once.',
    practice:
      'Hear the note before you play it. Start it without the tongue, on air alone, until it speaks each time; then add a light tongue.',
    caption: 'The zigzag shows the note that cracks.',
  },
  'speaks-late': {
    headline: 'A note speaks late',
    text: (f) =>
      `Air is heard for ${fixed(f.milliseconds / 1000, 1)} seconds before this note sounds. Your other notes come sooner.`,
    why: 'A note that speaks at once is on the beat by itself.',
    practice:
      'Form the lips and feel the air ready before the note. Start it softly ten times, and count how often it speaks at once.',
    caption: 'The dashes show the air before the note.',
  },
  'hit-start': {
    headline: 'A note is hit harder than it sounds',
    text: () =>
      'This note begins much louder than it goes on, and no accent is written. Your other notes begin more softly.',
    why: 'When the tongue only lets the air go, the whole note carries, not its first moment alone.',
    practice:
      'Play this note on air alone, without the tongue. Then add a light tongue, and keep the note as strong as its beginning.',
    caption: 'The wedge shows the note that is hit.',
  },
} satisfies Partial<FindingsWords>;
