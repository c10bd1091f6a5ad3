import type { TempoBeat } from '../../score/index.js';
import type { SectionWords } from '../shapes/section.js';

const BEATS: Readonly<Record<TempoBeat, string>> = {
  quarter: 'Viertel',
  'dotted-quarter': 'punktierte Viertel',
  half: 'Halbe',
};

/** Everything the section sheet says. */
export const SECTION: SectionWords = {
  severalScores: 'Mehrere Etüden oder Stimmen',
  documentTitle: (title) => `${title} – Registerblatt`,
  foot: (title) => `Registerblatt  ·  ${title}`,
  facts: ({ parts, takes, players, reviewed, others, unread }) =>
    [
      `Registerblatt, ${parts.join(', ')}`,
      `${takes === 1 ? '1 Aufnahme' : `${takes} Aufnahmen`} von ${players} ${players === 1 ? 'Person' : 'Personen'}`,
      `${reviewed} beurteilt`,
      ...(others > 0 ? [`${others} nicht beurteilt`] : []),
      ...(unread > 0 ? [`${unread} nicht lesbar`] : []),
    ].join('  ·  '),
  sheetOf: (sheet, of, first, last) => `Blatt ${sheet} von ${of}: ${first} bis ${last}`,
  same: (takes) =>
    `Für verschiedene Personen wurde ein und dieselbe Aufnahme abgegeben: ${takes.join(', ')}. Frag nach, wer gespielt hat.`,
  rehearse: 'Gemeinsam proben',
  nothingShared: 'Keine Stelle macht mehr als einer Person Mühe.',
  where: 'Wo',
  what: 'Was',
  about: 'Bereich',
  players: 'Personen',
  toFixFor: 'Zu üben für',
  who: 'Wer',
  wholeTake: 'Im Ganzen',
  placeIn: (place, score) => `${place} (${score})`,
  playersOf: (players, all) => `${players} von ${all}`,
  andMore: (names, more) => `${names.join(', ')} und ${more} weitere`,

  older: (takes) =>
    `Die neueste Aufnahme von jeder Person. ${takes === 1 ? 'Eine ältere steht' : `${takes} ältere stehen`} in der Liste der Ergebnisse und zählen beim Vergleich über die Wochen.`,
  partly: (who, { played, of, ending }) =>
    `${who} (${ending === 'cut-off' ? 'vom Rekorder abgeschnitten: ' : ''}${played} von ${of} Takten)`,
  notPlayed: 'nicht gespielt',
  needs: 'Wer was braucht',
  needsNotes: ([beat = 'quarter', ...others]) => [
    'Unter jedem Bereich: Befunde zum Üben / zum Hinhören. 0: beurteilt und nichts gefunden. –: nicht beurteilt oder nicht gemessen.',
    `Noten richtig: wie sie dastehen, von allen Noten der Stimme. Schläge sind ${others.length === 0 ? BEATS[beat] : 'das, was das Metronom in der Stimme zählt'}. Cent gelten ab A = 440 Hz.`,
  ],
  take: 'Aufnahme',
  day: 'Tag',
  asWritten: 'Noten richtig',
  beats: 'Schläge je min',
  cents: 'Cent zu hoch',
  notesOf: (right, all) => `${right} / ${all}`,
  findings: (fix, watch) => `${fix} / ${watch}`,
  nothingFound: '0',
  notJudged: '–',
  takeOf: (who, score) => `${who}, ${score}`,
  nameOfTake: (player, take) => `${player}, ${take}`,
  outcome: {
    reviewed: (who) => who,
    'not-this-score': (who) => `${who} (passt nicht zu den Noten)`,
    'too-poor': (who) => `${who} (nicht zu hören)`,
  },

  whichBars: 'Welche Takte',
  whichBarsOf: (score) => `Welche Takte: ${score}`,
  whichBarsNote:
    'Ein Punkt wächst mit der Zahl der Befunde im Takt. Voll: mindestens einer zum Üben. Offen: nur zum Hinhören.',
  sums: (most) => `Aufnahmen mit Befund (bis ${most})`,
  barFindings: (bar, fix, watch) => `Takt ${bar} (${fix} / ${watch})`,
  noFindings: 'keine',
  rowInWords: (who, bars) => `${who}: ${bars}`,
  mapInWords: (first, last, rows) =>
    `Befunde zum Üben / zum Hinhören in Takt ${first} bis ${last}. ${rows.join('; ')}.`,

  failures: 'Aufnahmen, die nicht zu lesen waren',
  file: 'Datei',
  whatNeeded: 'Was gefunden wurde und was nötig ist',
};
