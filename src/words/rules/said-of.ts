import type { Said } from '../shapes/findings.js';

/**
 * @param said a sentence, or what makes one from facts
 * @param facts of the finding
 * @returns the sentence
 */
export function saidOf<F>(said: Said<F>, facts: F): string {
  return typeof said === 'string' ? said : said(facts);
}
