import { placeWith } from '../rules/place.js';

const TIMES: Readonly<Record<number, string>> = { 2: 'second', 3: 'third' };

/** Says a place: "Bar 12, beat 3", "Bars 5–8", "The whole take". */
export const place = placeWith({
  wholeTake: 'The whole take',
  bar: (bar) => `Bar ${bar}`,
  bars: (bar, toBar) => `Bars ${bar}–${toBar}`,
  beat: ({ text, after }) => `, beat ${after ? 'after ' : ''}${text}`,
  again: (pass) => ` (${TIMES[pass] ?? `${pass}th`} time)`,
});
