import type { Language } from '../base/index.js';
import { createTypesetter, type Typesetter } from '../page/index.js';
import { missingLettersInWords } from '../words/index.js';

/**
 * @param language in which letters that no face holds are named; English when it is left out
 * @returns widths and coverage of the faces
 */
export function typesetterIn(language?: Language): Typesetter {
  return createTypesetter((letters) => missingLettersInWords(letters, language));
}
