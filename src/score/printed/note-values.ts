/** Written note values in quarters. Source: MusicXML 4.0, `note-type-value`. */
const QUARTERS_OF_TYPE: ReadonlyMap<string, number> = new Map(
  [
    'maxima',
    'long',
    'breve',
    'whole',
    'half',
    'quarter',
    'eighth',
    '16th',
    '32nd',
    '64th',
    '128th',
    '256th',
    '512th',
    '1024th',
  ].map((name, place) => [name, 2 ** (5 - place)]),
);

/**
 * @param type MusicXML name of a note value (`quarter`, `16th`, …)
 * @returns its length without dots in quarters, null when there is no such value
 *
 * Source: MusicXML 4.0, `note-type-value`.
 */
export function quartersOfType(type: string): number | null {
  return QUARTERS_OF_TYPE.get(type) ?? null;
}

/**
 * @param quarters length without dots
 * @param dots number of augmentation dots
 * @returns length with the dots
 *
 * Source: each dot adds half of what the one before added: common practice.
 */
export function dotted(quarters: number, dots: number): number {
  return quarters * (2 - 0.5 ** dots);
}
