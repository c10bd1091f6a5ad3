import type { Language } from '../../base/index.js';
import { GERMAN_SENTENCES } from './german-sentences.js';
import { translator } from './translator.js';

const toGerman = translator(GERMAN_SENTENCES, (text) => (/^[−-]?\d+\.\d+$/.test(text) ? text.replace('.', ',') : null));

/**
 * What is expected of a place, in the language of the pages.
 *
 * @param language of the pages
 * @param sentence in English, as a judge said it
 * @returns the same in the language; a sentence that is not known comes back as it is
 *
 * Source: definition; a test collects every such sentence from the judges.
 */
export function sentenceIn(language: Language, sentence: string): string {
  return language === 'en' ? sentence : (toGerman(sentence) ?? sentence);
}
