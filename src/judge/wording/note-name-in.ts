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

/**
 * @param language of the page
 * @param name of a note as `noteName` gives it, e.g. `B♭`
 * @returns how players of the language call it, e.g. `B`; a name of another form comes back as it is
 *
 * Source: common practice.
 */
export function noteNameIn(language: Language, name: string): string {
  if (language === 'en') return name;
  const own = GERMAN_NAMES[name];
  if (own !== undefined) return own;
  return name
    .replace(/^B(?=♯)/, 'H')
    .replace(/♯/g, 'is')
    .replace(/♭/g, 'es');
}
