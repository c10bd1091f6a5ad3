/** Languages a take can be told in, as tags. Source: BCP 47 (RFC 5646). */
export const LANGUAGES = ['en', 'de'] as const;

/** A language a take can be told in. */
export type Language = (typeof LANGUAGES)[number];
