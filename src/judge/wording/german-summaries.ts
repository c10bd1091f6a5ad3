import type { SummaryWords } from './words.js';

const lean = (cents: number) => `${Math.abs(Math.round(cents))} Cent zu ${cents > 0 ? 'hoch' : 'tief'}`;
const times = (count: number) => (count === 1 ? 'einmal' : count === 2 ? 'zweimal' : `${count}-mal`);
/** Never rounded up, as in the English words. */
const decibels = (db: number) => {
  if (db < SMALLEST_HEARD_DB) return `weniger als ${SMALLEST_HEARD_DB} dB`;
  return `${db < 10 ? tenths(Math.floor(db * 10 + 1e-6) / 10) : Math.floor(db)} dB`;
};
const tenths = (value: number) => String(value).replace('.', ',');
/** Source: as in the English words. */
const SMALLEST_HEARD_DB = 1;
const IN_TUNE_CENTS = 10;
/** A tempo nearer than this sounds the same. Source: as in the English words. */
const NOTICED = 0.03;

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
  tempo: (played, marked) => {
    const said = `${Math.round(played)} Viertel in der Minute`;
    if (marked === null) return `${said}; kein Tempo steht da`;
    const off = played / marked - 1;
    if (Math.abs(off) <= NOTICED) return `wie es dasteht: ${said}`;
    const way = off > 0 ? 'schneller, als es dasteht' : 'langsamer, als es dasteht';
    return `${Math.abs(off) <= 2 * NOTICED ? 'etwas ' : ''}${way}: ${said}, ${Math.round(marked)} stehen da`;
  },
  levelRiding: 'nicht beurteilt: Der Rekorder hat den Pegel verändert',
  noChange: 'kein Wechsel der Lautstärke zu messen',
  contrasts: ({ of, plain, reversed, usualDb, smallestDb, leastDb }) => {
    const where = of === 1 ? 'an der einen Stelle' : `an allen ${of} Stellen`;
    const [usual, least] = [
      `${of === 1 ? '' : 'meist '}${decibels(usualDb)}`,
      `verlangt sind mindestens ${tenths(leastDb)} dB`,
    ];
    if (plain === of) return `laut und leise sind ${where} klar verschieden: ${usual}, ${least}`;
    if (reversed === of) return `laut und leise sind ${where} vertauscht`;
    const turned = reversed === 0 ? '' : `, ${times(reversed)} vertauscht`;
    if (plain === 0) return `laut und leise klingen ${where} fast gleich${turned}: ${usual}, ${least}`;
    const smallest = reversed === 0 ? `; der kleinste Unterschied ist ${decibels(smallestDb)}, ${least}` : turned;
    return `laut und leise sind an ${plain} von ${of} Stellen klar verschieden${smallest}`;
  },
  hairpins: (plain, of) =>
    of === 1
      ? `die Gabel ist ${plain === 1 ? 'deutlich' : 'kaum zu hören'}`
      : `${plain} von ${of} Gabeln deutlich zu hören`,
  wrongOrder: (softer, louder) => `im Ganzen ist ${softer} lauter als ${louder}`,
  slursJoined: (joined, of) => `${joined} von ${of} gebundenen Noten verbunden`,
  dotted: (percent) => `Noten mit Staccato-Punkt klingen ${Math.round(percent)} Prozent ihrer Zeit`,
  tenuto: (percent) => `Noten mit Strich klingen ${Math.round(percent)} Prozent ihrer Zeit`,
  noArticulation: 'kein Bogen oder Staccato zu messen',
  noBreathMarked: 'kein Atemzeichen',
  noBreathHeard: 'kein Atmen an den Zeichen zu hören: Nicht alle Noten daneben wurden gespielt',
  breathsHeard: (heard, of) => `an ${heard} von ${of} Atemzeichen geatmet`,
  shortBreaths: (count) => (count === 1 ? 'einmal kurz statt voll' : `${count}-mal kurz statt voll`),
  breathsBeyond: (count) =>
    `${count} ${count === 1 ? 'weiteres steht' : 'weitere stehen'}, wo nicht alles gespielt wurde`,
  tuning: (a4Hz, cents) => {
    const away = Math.abs(Math.round(cents));
    const [way, hertz] = [cents > 0 ? 'hoch' : 'tief', `${a4Hz.toFixed(1).replace('.', ',')} Hz`];
    if (away > IN_TUNE_CENTS) return `${away} Cent zu ${way} gestimmt: A = ${hertz}`;
    return away === 0 ? 'auf A = 440 Hz gestimmt' : `nahe an A = 440 Hz gestimmt: ${away} Cent zu ${way}, ${hertz}`;
  },
  register: (register, cents) => `${register === 'low' ? 'tiefe' : 'hohe'} Töne ${lean(cents)}`,
  loudNotes: (cents) => `laute Töne gegen leise ${lean(cents)}`,
  playedThrough: 'durchgespielt',
  stops: (restarts, skips) =>
    [
      ...(restarts === 0 ? [] : [`${times(restarts)} neu begonnen`]),
      ...(skips === 0 ? [] : [`${times(skips)} nach vorn gesprungen`]),
    ].join(', '),
};
