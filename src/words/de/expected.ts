import type { ExpectedWords } from '../shapes/expected.js';
import { NUMBERS } from './numbers.js';

const { exact, whole } = NUMBERS;

/** What was expected in place of a measured value. */
export const EXPECTED: ExpectedWords = {
  about: ({ value }) => `etwa ${exact(value)}`,
  'about-half': () => 'etwa die Hälfte',
  'at-end': () => 'am Ende',
  'at-least': ({ value }) => `mindestens ${exact(value)} lauter`,
  'at-least-down': ({ value }) => `mindestens ${exact(value)} leiser`,
  'at-least-as-long': ({ value }) => `mindestens ${exact(value)}`,
  between: ({ least, most }) => `${exact(least)} bis ${exact(most)}`,
  'louder-than-neighbours': () => 'deutlich lauter als die Noten daneben',
  'next-note-on-beat': () => 'die nächste Note auf ihrem Schlag',
  'no-breath': () => 'kein Atmen hier',
  'no-gap': () => 'keine Lücke unter dem Bogen',
  'no-other-pitch': () => 'der Ton selbst vom ersten Augenblick an',
  'no-wait': () => 'kein Warten',
  'on-the-beat': () => 'auf dem Schlag',
  percent: ({ percent }) => `${whole(percent)} %`,
  'same-tempo-throughout': () => 'dasselbe Tempo vom Anfang bis zum Ende',
  'softer-after-attack': ({ db }) => `nach dem Anfang mindestens ${exact(db)} leiser`,
  within: ({ value }) => `innerhalb von ${exact(value)}`,
  'within-percent': ({ percent }) => `innerhalb von ${whole(percent)} %`,
};
