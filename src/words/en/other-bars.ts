import type { OtherBarsWords } from '../shapes/findings.js';
import { listed } from './lists.js';

const inBars = (bars: readonly string[]) => `${bars.length === 1 ? 'bar' : 'bars'} ${listed(bars)}`;

/** Sentences that name other bars in which the same shows. */
export const OTHER_BARS: OtherBarsWords = {
  also: (bars) => `The same happens in ${inBars(bars)}.`,
  perhaps: (bars) => `Listen to ${inBars(bars)} as well.`,
};
