/** Scripts that pages can name; a part in Japanese may hold Chinese letters as well, so that one is tried first. */
export const SCRIPTS = [
  'Japanese',
  'Korean',
  'Chinese',
  'Arabic',
  'Hebrew',
  'Thai',
  'Hindi',
  'Bengali',
  'Tamil',
  'Georgian',
  'Armenian',
  'Amharic',
] as const;

/** What letters may be: of a script that can be named, of another one, or signs. */
export type Letters = (typeof SCRIPTS)[number] | 'other-letters' | 'sign';
