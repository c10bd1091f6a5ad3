import type { Language } from '../base/index.js';
import { sentenceIn } from '../judge/index.js';

/** Fields of a result that hold a judge's own sentence. */
const SENTENCES: ReadonlySet<string> = new Set(['expected']);

/**
 * What is expected, in the language of the result. The judgement's other words are in it already.
 *
 * @param language of the result
 * @param document whatever goes into a result
 * @returns the same with those sentences in the language
 *
 * Source: definition.
 */
export function toldIn(language: Language, document: unknown): unknown {
  return language === 'en' ? document : translated(document, language, false);
}

function translated(value: unknown, language: Language, isSentence: boolean): unknown {
  if (typeof value === 'string') return isSentence ? sentenceIn(language, value) : value;
  if (Array.isArray(value)) return value.map((one) => translated(one, language, isSentence));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, field]) => [key, translated(field, language, SENTENCES.has(key))]),
  );
}
