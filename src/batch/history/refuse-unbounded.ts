import { InputError } from '../../base/index.js';

/** Letters of one text; the longest that is written is a paragraph. */
const LONGEST_TEXT = 5000;
/** Entries of one list; notes and bars are at most a few ten thousand. */
const LONGEST_LIST = 50_000;
/** Findings of one take: more than an étude of any length can have. */
const MOST_FINDINGS = 10_000;

/**
 * @param document what a JSON file holds
 * @throws InputError `bad-result`, naming the place, when a text or a list in it is longer than any that is written
 */
export function refuseUnbounded(document: unknown): void {
  const left: { readonly value: unknown; readonly place: string }[] = [{ value: document, place: '' }];
  for (let next = left.pop(); next !== undefined; next = left.pop()) {
    const { value, place } = next;
    const most = place === 'findings' ? MOST_FINDINGS : LONGEST_LIST;
    const tooLong =
      typeof value === 'string' ? value.length > LONGEST_TEXT : Array.isArray(value) && value.length > most;
    if (tooLong) throw new InputError('result-against-schema', { place });
    if (typeof value !== 'object' || value === null) continue;
    for (const [name, inside] of Object.entries(value)) {
      if (name.length > LONGEST_TEXT) throw new InputError('result-against-schema', { place });
      left.push({ value: inside, place: place === '' ? name : `${place}.${name}` });
    }
  }
}
