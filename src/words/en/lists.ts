import { listedWith } from '../rules/lists.js';

/** Lists one or more words: `1`, `1 and 2`, `1, 2 and 3`. */
export const listed = listedWith('and');
