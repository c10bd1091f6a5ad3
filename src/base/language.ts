/** Languages a take can be told in, as tags. Source: BCP 47 (RFC 5646). */
export const LANGUAGES = ['en', 'de'] as const;

/** A language a take can be told in. */
export type Language = (typeof LANGUAGES)[number];

/** The language in which things are told where nothing else is asked for, and that documents need not name. */
export const DEFAULT_LANGUAGE: Language = 'en';

/**
 * @param languages of several results
 * @returns the language in which all of them are told, English when they differ or there are none
 */
export function agreedLanguage(languages: Iterable<Language>): Language {
  const [first, ...others] = new Set(languages);
  return first === undefined || others.length > 0 ? DEFAULT_LANGUAGE : first;
}
