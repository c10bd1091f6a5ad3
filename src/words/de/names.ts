/** Names that are not their letter with an ending. */
const OWN_NAMES: Readonly<Record<string, string>> = {
  B: 'H',
  'B♭': 'B',
  'B♭♭': 'Heses',
  'A♭': 'As',
  'A♭♭': 'Ases',
  'E♭': 'Es',
  'E♭♭': 'Eses',
};

/** For the contra octave and those below it. */
const SUBSCRIPTS = ['', '₁', '₂', '₃'];

/**
 * @param name of a note: its letter with its signs, e.g. `B♭`
 * @param octave when it is to be said as well, 4 for the one that begins with the middle C
 * @returns how players call it, e.g. `B`, with its octave `b″`; a name of another form comes back as it is
 *
 * Source: common practice; octaves: Helmholtz 1863 with primes.
 */
export function noteName(name: string, octave?: number): string {
  const called = withoutOctave(name);
  if (octave === undefined) return called;
  if (octave >= 3) return `${called.toLowerCase()}${'″'.repeat((octave - 3) >> 1)}${'′'.repeat((octave - 3) & 1)}`;
  return `${called}${SUBSCRIPTS[2 - octave] ?? ''}`;
}

function withoutOctave(name: string): string {
  const own = OWN_NAMES[name];
  if (own !== undefined) return own;
  return name
    .replace(/^B(?=♯)/, 'H')
    .replace(/♯/g, 'is')
    .replace(/♭/g, 'es');
}
