/** The five ways a player can misread an accidental, each predicting an exact other pitch. */
export const MISREADINGS = [
  'key-signature-forgotten',
  'accidental-forgotten',
  'dropped-within-bar',
  'carried-past-barline',
  'wrong-octave-applied',
] as const;

/** One of the five ways a player can misread an accidental. */
export type MisreadingKind = (typeof MISREADINGS)[number];
