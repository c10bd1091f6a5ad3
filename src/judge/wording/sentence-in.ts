import type { Language } from '../../base/index.js';
import { GERMAN_FAILURES } from './german-failures.js';
import { GERMAN_REMARKS } from './german-remarks.js';
import { GERMAN_SENTENCES } from './german-sentences.js';
import { noteNameIn } from './note-name-in.js';
import { translator } from './translator.js';

const GERMAN: Readonly<Record<string, string>> = { ...GERMAN_SENTENCES, ...GERMAN_REMARKS, ...GERMAN_FAILURES };

const toGerman = translator(GERMAN, (text) => {
  if (/^[−-]?\d+\.\d+$/.test(text)) return text.replace('.', ',');
  const [, letter, octave] = /^([A-G])(\d)$/.exec(text) ?? [];
  return letter === undefined ? null : noteNameIn('de', letter, Number(octave));
});

const placesIn = (text: string) => text.match(/\{n?\}/g)?.join() ?? '';
/** Remarks on a part stand in no result; sentences from which German has dropped a word have no way back. */
const wayBack = Object.entries({ ...GERMAN_SENTENCES, ...GERMAN_FAILURES }).filter(
  ([english, german]) => placesIn(english) === placesIn(german),
);
const toEnglish = translator(
  Object.fromEntries(wayBack.toReversed().map(([english, german]) => [german, english])),
  (text) => (/^[−-]?\d+,\d+$/.test(text) ? text.replace(',', '.') : null),
);

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
  return language === 'en' ? sentence : (toGerman(sentence) ?? sentence);
}

/**
 * Says again what a result tells in a fixed sentence.
 *
 * @param language wanted
 * @param from language of the result
 * @param sentence as it stands in the result
 * @returns the same in the language wanted; null when it is not known
 *
 * Source: definition.
 */
export function retold(language: Language, from: Language, sentence: string): string | null {
  if (language === from) return sentence;
  return language === 'en' ? toEnglish(sentence) : toGerman(sentence);
}
