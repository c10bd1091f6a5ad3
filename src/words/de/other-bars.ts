import type { OtherBarsWords } from '../shapes/findings.js';
import { listed } from './lists.js';

const inBars = (bars: readonly string[]) => `${bars.length === 1 ? 'Takt' : 'den Takten'} ${listed(bars)}`;

/** Sentences that name other bars in which the same shows. */
export const OTHER_BARS: OtherBarsWords = {
  also: (bars) => `Dasselbe geschieht in ${inBars(bars)}.`,
  perhaps: (bars) => `Hör auch in ${inBars(bars)} genau hin.`,
};
