import type { NoFigureWords } from '../no-figure-words.js';

/** Why a take has no number to follow, in German. */
export const GERMAN_NO_FIGURE: NoFigureWords = {
  notKept: 'dieses Ergebnis ist älter als die Zahl; die Aufnahme noch einmal auswerten, um sie zu haben',
  notReviewed: 'die Aufnahme wurde nicht beurteilt',
  told: 'den Grund nennt das Blatt der Aufnahme',
  noSameDay: 'niemand hat diese Zahl für zwei Aufnahmen eines Tages',
  notes: 'die Stimme hat keine Noten zu zählen',
  groups: 'kein Schlag mit mehreren Noten zu messen',
  entries: 'kein Einsatz nach einer Pause zu messen',
  fermatas: 'keine Fermate zu messen',
  noTempoMark: 'kein Tempo ist vorgeschrieben',
  bars: 'zu wenige Takte zu messen',
  contrasts: 'kein Wechsel der Lautstärke zu messen',
  hairpins: 'kein Crescendo oder Diminuendo zu messen',
  slurs: 'kein Bogen zu messen',
  staccato: 'keine Note mit Punkt zu messen',
  breaths: 'kein Atemzeichen steht da',
  heldNotes: 'zu wenige lange Töne zu messen',
};
