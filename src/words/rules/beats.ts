const FRACTIONS: readonly (readonly [number, string])[] = [
  [1 / 4, '¼'],
  [1 / 3, '⅓'],
  [1 / 2, '½'],
  [2 / 3, '⅔'],
  [3 / 4, '¾'],
];

/** A beat in figures. */
export interface BeatInFigures {
  /** "3" or "2½" */
  readonly text: string;
  /** it lies somewhere after that beat */
  readonly after: boolean;
}

/**
 * @param beat 1 for the first, may be fractional
 * @returns the beat in figures, "3" or "2½"; `after` when it lies somewhere after that beat
 */
export function beatInFigures(beat: number): BeatInFigures {
  const whole = Math.floor(beat + 0.02);
  const rest = beat - whole;
  if (Math.abs(rest) < 0.02) return { text: String(whole), after: false };
  const near = FRACTIONS.find(([value]) => Math.abs(rest - value) < 0.02);
  return { text: `${whole}${near?.[1] ?? ''}`, after: near === undefined };
}
