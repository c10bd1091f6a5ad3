import type { SummaryWords } from './words.js';

const lean = (cents: number) => `${Math.abs(Math.round(cents))} Cent zu ${cents > 0 ? 'hoch' : 'tief'}`;
const times = (count: number) => (count === 0 ? 'nie' : `${count}-mal`);
const signed = (value: number) => `${value > 0 ? '+' : '−'}${Math.abs(Math.round(value))}`;

/** One line a criterion, in German. */
export const GERMAN_SUMMARIES: SummaryWords = {
  leftOut: {
    'all-slurred': 'nicht beurteilt: zum Üben alles gebunden',
    'under-tempo': 'nicht beurteilt: zum Üben unter dem Tempo',
    'by-brief': 'nicht beurteilt: Der Auftrag lässt es aus',
  },
  notMeasured: (reason) => `nicht gemessen: ${reason}`,
  notes: (right, of, unclear) =>
    `${right} von ${of} Noten, wie sie dastehen${unclear > 0 ? `, ${unclear} nicht deutlich genug` : ''}`,
  groupsEven: (even, of) => `${even} von ${of} Gruppen gleichmäßig`,
  entriesInTime: (inTime, of) => `${inTime} von ${of} Einsätzen nach Pausen pünktlich`,
  noRhythm: 'keine Gruppen oder Pausen zu messen',
  tempo: (played, marked) =>
    `${Math.round(played)} Viertel in der Minute${marked === null ? '' : `, ${Math.round(marked)} vorgeschrieben`}`,
  levelRiding: 'nicht beurteilt: Der Rekorder hat den Pegel verändert',
  noChange: 'kein Wechsel der Lautstärke zu messen',
  hairpinsMeasured: (count) => (count === 1 ? '1 Gabel gemessen' : `${count} Gabeln gemessen`),
  changes: (changes) => `Wechsel der Lautstärke ${changes.map(signed).join(', ')} dB`,
  wrongOrder: (softer, louder) => `im Ganzen ist ${softer} lauter als ${louder}`,
  slursJoined: (joined, of) => `${joined} von ${of} gebundenen Noten verbunden`,
  dotted: (percent) => `Noten mit Punkt klingen ${Math.round(percent)} Prozent ihrer Zeit`,
  tenuto: (percent) => `Noten mit Strich klingen ${Math.round(percent)} Prozent ihrer Zeit`,
  noArticulation: 'kein Bogen oder Punkt zu messen',
  noBreathMarked: 'kein Atemzeichen',
  noBreathHeard: 'kein Atmen an den Zeichen zu hören: Nicht alle Noten daneben wurden gespielt',
  breathsHeard: (heard, of) => `an ${heard} von ${of} Atemzeichen geatmet`,
  shortBreaths: (count) => (count === 1 ? 'einmal kurz statt voll' : `${count}-mal kurz statt voll`),
  breathsBeyond: (count) =>
    `${count} ${count === 1 ? 'weiteres steht' : 'weitere stehen'}, wo nicht alles gespielt wurde`,
  tuning: (a4Hz, cents) =>
    `A = ${a4Hz.toFixed(1).replace('.', ',')} Hz (${Math.round(cents) === 0 ? '0' : signed(cents)} Cent)`,
  register: (register, cents) => `${register === 'low' ? 'tiefe' : 'hohe'} Töne ${lean(cents)}`,
  loudNotes: (cents) => `laute Töne gegen leise ${lean(cents)}`,
  playedThrough: 'durchgespielt',
  stops: (restarts, skips) => `${times(restarts)} neu begonnen, ${times(skips)} nach vorn gesprungen`,
};
