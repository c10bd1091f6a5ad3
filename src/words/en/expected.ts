import type { ExpectedWords } from '../shapes/expected.js';
import { NUMBERS } from './numbers.js';

const { exact, whole } = NUMBERS;

/** What was expected in place of a measured value. */
export const EXPECTED: ExpectedWords = {
  about: ({ value }) => `about ${exact(value)}`,
  'about-half': () => 'about half',
  'at-end': () => 'at its end',
  'at-least': ({ value }) => `at least ${exact(value)} louder`,
  'at-least-down': ({ value }) => `at least ${exact(value)} softer`,
  'at-least-as-long': ({ value }) => `at least ${exact(value)}`,
  between: ({ least, most }) => `${exact(least)} to ${exact(most)}`,
  'louder-than-neighbours': () => 'plainly louder than the notes around it',
  'next-note-on-beat': () => 'the next note on its beat',
  'no-breath': () => 'no breath here',
  'no-gap': () => 'no gap under the slur',
  'no-other-pitch': () => 'the note itself from its first moment',
  'no-wait': () => 'no wait',
  'on-the-beat': () => 'on the beat',
  percent: ({ percent }) => `${whole(percent)} %`,
  'same-tempo-throughout': () => 'the same tempo from beginning to end',
  'softer-after-attack': ({ db }) => `at least ${exact(db)} softer after the attack`,
  within: ({ value }) => `within ${exact(value)}`,
  'within-percent': ({ percent }) => `within ${whole(percent)} %`,
};
