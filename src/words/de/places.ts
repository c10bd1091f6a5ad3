import { placeWith } from '../rules/place.js';

/** Says a place: "Takt 12, Schlag 3", "Takt 5–8", "Im Ganzen". */
export const place = placeWith({
  wholeTake: 'Im Ganzen',
  bar: (bar) => `Takt ${bar}`,
  bars: (bar, toBar) => `Takt ${bar}–${toBar}`,
  beat: ({ text, after }) => `, ${after ? 'nach Schlag' : 'Schlag'} ${text}`,
  again: (pass) => ` (beim ${pass}. Mal)`,
});
