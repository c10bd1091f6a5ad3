import type { Part } from '../../src/score/index.js';
import { REMARKS_IN_WORDS } from '../../src/words/en/remarks.js';
import { say } from '../../src/words/say.js';

/**
 * @param part a part as read
 * @returns what a copyist would point out in it, in English
 */
export function remarksOf({ remarks }: Pick<Part, 'remarks'>): string[] {
  return remarks.map((remark) => say(REMARKS_IN_WORDS, remark));
}
