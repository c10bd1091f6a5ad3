import type { FindingKind } from '../judge/index.js';

const WHOLE_TAKE: ReadonlySet<FindingKind> = new Set(['tuning-off', 'off-tempo']);

const FRACTIONS: readonly (readonly [number, string])[] = [
  [1 / 4, '¼'],
  [1 / 3, '⅓'],
  [1 / 2, '½'],
  [2 / 3, '⅔'],
  [3 / 4, '¾'],
];

/**
 * @param kind kind of a finding
 * @returns true when the finding is about the take as a whole and its bar only says where the take begins
 *
 * Source: definition.
 */
export function concernsWholeTake(kind: FindingKind): boolean {
  return WHOLE_TAKE.has(kind);
}

/**
 * @param beat 1 for the first, may be fractional
 * @returns the beat in figures, "3" or "2½"; `after` when it lies somewhere after that beat
 *
 * Source: definition.
 */
export function beatInFigures(beat: number): { readonly text: string; readonly after: boolean } {
  const whole = Math.floor(beat + 0.02);
  const rest = beat - whole;
  if (Math.abs(rest) < 0.02) return { text: String(whole), after: false };
  const near = FRACTIONS.find(([value]) => Math.abs(rest - value) < 0.02);
  return { text: `${whole}${near?.[1] ?? ''}`, after: near === undefined };
}

/** What a place is made of. */
export interface Place {
  readonly kind: FindingKind;
  readonly bar: string;
  readonly toBar?: string | undefined;
  readonly pass: number;
  readonly beat?: number | undefined;
}

/**
 * @param place a finding or whatever stands in a bar
 * @returns "Bar 12, beat 3", "Bars 5–8", "The whole take"; later passes through a repeat are named
 *
 * Source: definition.
 */
export function placeInWords({ kind, bar, toBar, pass, beat }: Place): string {
  if (concernsWholeTake(kind) || (kind === 'went-well' && beat === undefined)) return 'The whole take';
  const again = pass > 1 ? ` (${pass === 2 ? 'second' : pass === 3 ? 'third' : `${pass}th`} time)` : '';
  if (toBar !== undefined && toBar !== bar) return `Bars ${bar}–${toBar}${again}`;
  const figures = beat === undefined ? null : beatInFigures(beat);
  return `Bar ${bar}${figures === null ? '' : `, beat ${figures.after ? 'after ' : ''}${figures.text}`}${again}`;
}
