import type { Language } from '../../base/index.js';
import { GERMAN_REMARKS } from './german-remarks.js';
import { GERMAN_SENTENCES } from './german-sentences.js';
import { noteNameIn } from './note-name-in.js';

const SENTENCES: Readonly<Record<string, string>> = { ...GERMAN_SENTENCES, ...GERMAN_REMARKS };

interface Pattern {
  readonly form: RegExp;
  readonly german: string;
}

const ESCAPED = /[.*+?^$()|[\]\\]/g;

const PATTERNS: readonly Pattern[] = Object.entries(SENTENCES)
  .filter(([english]) => /\{n?\}/.test(english))
  .map(([english, german]) => {
    const form = english.replace(ESCAPED, '\\$&').replaceAll('{n}', '([−-]?[\\d.]+)').replaceAll('{}', '(.*)');
    return { form: new RegExp(`^${form}$`, 's'), german };
  });

/**
 * What the rooms below say in fixed sentences (reasons, cautions, what is expected, remarks on a part), in the language of
 * the pages.
 *
 * @param language of the pages
 * @param sentence in English, as a room said it
 * @returns the same in the language; a sentence that is not known comes back as it is
 *
 * Source: definition; a test collects every such sentence from the rooms.
 */
export function sentenceIn(language: Language, sentence: string): string {
  return language === 'en' ? sentence : german(sentence);
}

function german(sentence: string): string {
  const whole = SENTENCES[sentence];
  if (whole !== undefined) return whole;
  for (const { form, german: said } of PATTERNS) {
    const filled = form.exec(sentence)?.slice(1);
    if (filled === undefined) continue;
    let next = 0;
    return said.replace(/\{n?\}/g, () => piece(filled[next++] ?? ''));
  }
  return sentence;
}

/** What was put into a sentence: numbers, names of notes and channels, phrases of their own. */
function piece(text: string): string {
  if (/^[−-]?\d+\.\d+$/.test(text)) return text.replace('.', ',');
  const [, letter, octave] = /^([A-G])(\d)$/.exec(text) ?? [];
  if (letter !== undefined) return noteNameIn('de', letter, Number(octave));
  return SENTENCES[text] ?? text.split(', ').map(german).join(', ');
}
