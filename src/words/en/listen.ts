import type { ListenWords } from '../shapes/listen.js';

/** Everything a listening page says that the printed pages do not. Places come as "Bar 7, beat 2" or "Bars 5–8". */
export const LISTEN: ListenWords = {
  documentTitle: (title, who) => `Listen: ${title} – ${who}`,
  intro:
    'Press a button and hear the bars in question. The line shows where the playing is. Listen first, then read what was measured: your ear goes before every number.',
  withoutScripts:
    'This page can show where the playing is and slow it down. Your browser does not let it; you can still read it and hear each place.',
  hear: (place) => `Hear ${place.charAt(0).toLowerCase()}${place.slice(1)}`,
  speeds: [
    { rate: 0.75, label: '¾ speed' },
    { rate: 0.5, label: '½ speed' },
  ],
  ofPlace: (place) => `, ${place.charAt(0).toLowerCase()}${place.slice(1)}`,
  audioName: (place) => `Recording of ${place.charAt(0).toLowerCase()}${place.slice(1)}`,
  keys: 'Escape stops the sound.',
  also: 'Also found',
  enough: 'Only the first places have sound, so that this page stays small.',
  curves: 'Loudness and, below it, tempo over these bars.',
  loudnessAlone: 'Loudness over these bars.',
  wholeTake: 'The curves of the whole take',
  caution:
    'These results support a panel; they never replace one. This page holds some seconds of the recording: whoever has the file can hear it. Pass it on only as your school’s and your country’s rules on recordings of minors allow.',
};
