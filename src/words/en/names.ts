/**
 * @param name of a note: its letter with its signs, e.g. `B♭`
 * @param octave when it is to be said as well, 4 for the one that begins with the middle C
 * @returns how players call it: the same, with its octave `B♭5`
 *
 * Source: common practice; scientific pitch notation for octaves.
 */
export function noteName(name: string, octave?: number): string {
  return `${name}${octave ?? ''}`;
}
