import { saidOf } from '../../rules/said-of.js';
import type { FindingsWords, MisreadingsWords } from '../../shapes/findings.js';

const ACCIDENTAL_RULE =
  'A sign holds to the barline, on its own line or space only. After the barline the key signature is back.';
const RING = 'A ring marks the note; above it in brackets is what sounded.';

/** What is said of each way to misread an accidental. */
export const MISREADINGS: MisreadingsWords = {
  'key-signature-forgotten': {
    headline: 'The key signature was forgotten',
    text: (f) => `You played ${f.played}. The key signature makes every ${f.letter} here ${article(f.written)}.`,
    why: 'The key signature holds on every line, in every octave, until it is changed.',
    practice: (f) =>
      `Before you play, name every ${f.letter} in the line aloud, with its sign. Then play the bar slowly.`,
  },
  'accidental-forgotten': {
    headline: 'A printed sign was passed over',
    text: (f) => `The sign right before this note was missed: it is ${article(f.written)}, you played ${f.played}.`,
    why: ACCIDENTAL_RULE,
    practice: 'Circle the sign. Play only the note before it and this note, five times, then the whole bar.',
  },
  'dropped-within-bar': {
    headline: 'A sign from earlier in the bar still holds',
    text: (f) =>
      `The sign earlier in this bar still counts here. The note is ${article(f.written)}, you played ${f.played}.`,
    why: ACCIDENTAL_RULE,
    practice: 'A sign holds until the barline. Pencil it in again at this note, then play the bar slowly twice.',
  },
  'carried-past-barline': {
    headline: 'A sign was carried past the barline',
    text: (f) =>
      `The sign from the bar before ended at the barline. Here it is ${article(f.written)} again, you played ${f.played}.`,
    why: ACCIDENTAL_RULE,
    practice: 'Play the last beat of the bar before and the first beat of this one, slowly, and say both note names.',
  },
  'wrong-octave-applied': {
    headline: 'A sign was used in another octave',
    text: (f) =>
      `The sign in this bar belongs to the ${f.letter} in the other octave only. This one is ${article(f.written)}, you played ${f.played}.`,
    why: ACCIDENTAL_RULE,
    practice: (f) =>
      `Find both ${f.letter}s in the bar. Name each with its own sign, then play them one after the other.`,
  },
};

/** What is said of notes. */
export const NOTES = {
  accidental: {
    headline: 'An accidental was misread',
    text: (f) => saidOf(MISREADINGS[f.misreading].text, f),
    why: ACCIDENTAL_RULE,
    practice: (f) => saidOf(MISREADINGS[f.misreading].practice, f),
    caption: RING,
  },
  'wrong-note': {
    headline: 'Another note was played',
    text: (f) =>
      f.octave === null
        ? `Here stands ${article(f.written)}; ${article(f.played)} sounded.`
        : `The ${f.written} sounded an octave ${f.octave} than written.`,
    why: 'A wrong note that is repeated is soon learnt. Put it right slowly before it settles.',
    practice:
      'Sing or name the notes of this bar first. Then play it at half speed until it is right three times in a row.',
    caption: RING,
  },
  'missed-note': {
    headline: 'A note is missing',
    text: (f) =>
      f.sure
        ? `The ${f.written} here was left out.`
        : `The ${f.written} here could not be heard. It may not have spoken, or it was very soft.`,
    why: 'Every note carries the line to the next one.',
    practice: 'Play from two notes before to two notes after it, slowly, and listen that every note speaks.',
    caption: 'The open arrow points to the note that was not heard.',
  },
  'added-note': {
    headline: 'A note was added',
    text: (f) =>
      f.after === null
        ? `An extra ${f.played} sounded before the music begins.`
        : `An extra ${f.played} sounded after the ${f.after}.`,
    why: 'An extra note often means that the hand or the air changed a moment too early.',
    practice: 'Play this spot slowly. Hand, tongue and air change at the same moment.',
    caption: 'The cross marks the extra note; its name is in brackets.',
  },
} satisfies Partial<FindingsWords>;

function article(name: string): string {
  return /^[AEF]/.test(name) ? `an ${name}` : `a ${name}`;
}
