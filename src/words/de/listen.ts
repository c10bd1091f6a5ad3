import type { ListenWords } from '../shapes/listen.js';

/** Everything a listening page says that the printed pages do not. Places come as "Takt 7, Schlag 2". */
export const LISTEN: ListenWords = {
  documentTitle: (title, who) => `Zum Anhören: ${title} – ${who}`,
  intro:
    'Drück auf einen Knopf und hör die Takte, um die es geht. Die Linie zeigt, wo die Musik gerade ist. Hör zuerst, lies dann, was gemessen wurde: Dein Ohr kommt vor jeder Zahl.',
  withoutScripts:
    'Diese Seite kann zeigen, wo die Musik gerade ist, und sie langsamer machen. Dein Browser lässt das nicht zu; du kannst die Seite trotzdem lesen und jede Stelle hören.',
  hear: (place) => `${place} anhören`,
  speeds: [
    { rate: 0.75, label: '¾ Tempo' },
    { rate: 0.5, label: '½ Tempo' },
  ],
  ofPlace: (place) => `, ${place}`,
  audioName: (place) => `Aufnahme: ${place}`,
  keys: 'Mit der Escape-Taste hört der Ton auf.',
  also: 'Was noch auffiel',
  enough: 'Nur die ersten Stellen haben Ton, damit diese Seite klein bleibt.',
  curves: 'Lautstärke und darunter das Tempo in diesen Takten.',
  loudnessAlone: 'Lautstärke in diesen Takten.',
  wholeTake: 'Die Kurven der ganzen Aufnahme',
  caution:
    'Diese Ergebnisse helfen einer Jury; sie ersetzen sie nie. Auf dieser Seite sind einige Sekunden der Aufnahme: Wer die Datei hat, kann sie hören. Gib sie nur weiter, wie es die Regeln deiner Schule und deines Landes für Aufnahmen von Minderjährigen erlauben.',
};
