import type { ListenWords } from '../shapes/listen.js';

/** What follows the label of a button of the listening room. Places come as "Bar 7, beat 2" or "Bars 5–8". */
export const LISTEN: ListenWords = {
  ofPlace: (place) => `, ${place.charAt(0).toLowerCase()}${place.slice(1)}`,
};
