import { listed } from './lists.js';

/** Bars by their numbers, within a sentence. */
export const barsIn = (bars: readonly string[]) => `${bars.length === 1 ? 'Takt' : 'Takte'} ${listed(bars)}`;
