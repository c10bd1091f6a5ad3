import { listedWith } from '../rules/lists.js';

/** Lists one or more words: `1`, `1 und 2`, `1, 2 und 3`. */
export const listed = listedWith('und');
