import { saidOf } from '../../rules/said-of.js';
import type { FindingsWords, MisreadingsWords } from '../../shapes/findings.js';
import { spokenNote } from '../names.js';

const ACCIDENTAL_RULE =
  'An accidental holds to the barline, on its own line or space only. After the barline the key signature is back.';
const RING = 'A ring marks the note; above it in brackets is what you played.';

/** What is said of each way to misread an accidental. */
export const MISREADINGS: MisreadingsWords = {
  'key-signature-forgotten': {
    headline: 'The key signature was forgotten',
    text: (f) =>
      `You played ${spokenNote(f.played)}. The key signature makes every ${f.letter} here ${article(f.written)}.`,
    why: 'The key signature holds on every line, in every octave, until it is changed.',
    practice: (f) =>
      `Before you play, name every ${f.letter} in the line aloud, with its sharp or flat. Then play the bar slowly.`,
  },
  'accidental-forgotten': {
    headline: 'A printed accidental was passed over',
    text: (f) => `The accidental right before this note was missed. ${shouldBe(f)}`,
    why: ACCIDENTAL_RULE,
    practice: 'Draw a ring around it. Play only the note before it and this note, five times, then the whole bar.',
  },
  'dropped-within-bar': {
    headline: 'An accidental from earlier in the bar still holds',
    text: (f) => `The accidental earlier in this bar still counts here. ${shouldBe(f)}`,
    why: ACCIDENTAL_RULE,
    practice: 'It holds until the barline. Pencil it in again at this note, then play the bar slowly twice.',
  },
  'carried-past-barline': {
    headline: 'An accidental was carried past the barline',
    text: (f) => `The accidental from the bar before ended at the barline. ${shouldBe(f)}`,
    why: ACCIDENTAL_RULE,
    practice: 'Play the last beat of the bar before and the first beat of this one, slowly, and say both note names.',
  },
  'wrong-octave-applied': {
    headline: 'An accidental was used in another octave',
    text: (f) => `The accidental in this bar belongs to the ${f.letter} in the other octave only. ${shouldBe(f)}`,
    why: ACCIDENTAL_RULE,
    practice: (f) =>
      `Find both ${f.letter}s in the bar. Say the full name of each, then play them one after the other.`,
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
      f.octave === null ? shouldBe(f) : `The ${spokenNote(f.written)} sounded an octave ${f.octave} than written.`,
    why: 'A wrong note that is repeated is soon learnt. Put it right slowly before it settles.',
    practice:
      'Sing or name the notes of this bar first. Then play it at half speed until it is right three times in a row.',
    caption: RING,
  },
  'missed-note': {
    headline: 'A note is missing',
    text: (f) =>
      f.sure
        ? `The ${spokenNote(f.written)} here was left out.`
        : `The ${spokenNote(f.written)} here could not be heard. It may not have come out, or it was very soft.`,
    why: 'Every note carries the line to the next one.',
    practice: 'Play from two notes before to two notes after it, slowly, and listen that every note comes out.',
    caption: 'The open arrow points to the note that was not heard.',
  },
  'added-note': {
    headline: 'A note was added',
    text: (f) =>
      f.after === null
        ? `An extra ${spokenNote(f.played)} sounded before the music begins.`
        : `An extra ${spokenNote(f.played)} sounded after the ${spokenNote(f.after)}.`,
    why: 'An extra note often means that the hand or the air changed a moment too early.',
    practice: 'Play this spot slowly. Hand, tongue and air change at the same moment.',
    caption: 'The cross marks the extra note; its name is in brackets.',
  },
} satisfies Partial<FindingsWords>;

function article(name: string): string {
  return `${/^[AEF]/.test(name) ? 'an' : 'a'} ${spokenNote(name)}`;
}

function shouldBe({ written, played }: { readonly written: string; readonly played: string }): string {
  return `The note should be ${spokenNote(written)}; you played ${spokenNote(played)}.`;
}
