import type { ListenWords } from '../shapes/listen.js';

/** What follows the label of a button of the listening room. Places come as "Takt 7, Schlag 2". */
export const LISTEN: ListenWords = {
  ofPlace: (place) => `, ${place}`,
};
