const SIGNS: Readonly<Record<string, string>> = {
  '♯': ' sharp',
  '♭': ' flat',
  '𝄪': ' double sharp',
  '𝄫': ' double flat',
  '♮': ' natural',
};

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

/**
 * @param name of a note as the judges name it, e.g. `D♯`
 * @returns how it is said: `D sharp`
 *
 * Source: common practice.
 */
export function spokenNote(name: string): string {
  const twice = name.replace('♯♯', '𝄪').replace('♭♭', '𝄫');
  return twice.replace(/[♯♭♮𝄪𝄫]/gu, (sign) => SIGNS[sign] ?? sign);
}
