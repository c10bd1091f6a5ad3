import type { Language } from '../../base/index.js';

/** Names that are not their letter with an ending. */
const GERMAN_NAMES: Readonly<Record<string, string>> = {
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
 * @param language of the page
 * @param name of a note as `noteName` gives it, e.g. `B♭`
 * @param octave when it is to be said as well, 4 for the one that begins with the middle C
 * @returns how players of the language call it, e.g. `B`, or with its octave `B♭5` and `b″`; a name of another form comes
 * back as it is
 *
 * Source: common practice; octaves: scientific pitch notation in English, Helmholtz 1863 with primes in German.
 */
export function noteNameIn(language: Language, name: string, octave?: number): string {
  if (language === 'en') return `${name}${octave ?? ''}`;
  const called = germanName(name);
  if (octave === undefined) return called;
  if (octave >= 3) return `${called.toLowerCase()}${'″'.repeat((octave - 3) >> 1)}${'′'.repeat((octave - 3) & 1)}`;
  return `${called}${SUBSCRIPTS[2 - octave] ?? ''}`;
}

function germanName(name: string): string {
  const own = GERMAN_NAMES[name];
  if (own !== undefined) return own;
  return name
    .replace(/^B(?=♯)/, 'H')
    .replace(/♯/g, 'is')
    .replace(/♭/g, 'es');
}
