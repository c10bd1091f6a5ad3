import type { WeeksLabels } from '../shapes/weeks.js';

/** Fixed words of the progress sheet. */
export const WEEKS_LABELS: WeeksLabels = {
  kind: 'Über die Wochen',
  standings: 'Wie alle stehen',
  standingsNote: 'Eine Änderung heißt nur so, wenn sie größer ist als der Zufall; mehr dazu am Ende.',
  player: 'Name',
  days: 'Tage',
  standing: 'Wie es steht',
  goal: 'Ziel für die nächste Stunde',
  goalIs: 'Ziel für die nächste Stunde:',
  bars: 'Die Takte',
  barsNote:
    'Ein Punkt für jede Person, die dort etwas zu üben hat oder hatte. Voll: am letzten Tag noch. Klein: jetzt nur zum Hinhören oder nicht beurteilt. Ring: jetzt frei.',
  bar: (bar) => `Takt ${bar}`,
  openRows: 'Noch zu proben',
  what: 'Was',
  about: 'Bereich',
  had: 'Hatte es vorher',
  have: 'Hat es jetzt',
  nobody: '–',
  middle: 'Die Mitte des Registers',
  middleNote:
    'Kräftig: die Mitte aller, Woche für Woche. Fein: jede Person. Gestrichelt: was üblich ist, wenn der Auftrag nichts anderes verlangt. Links die erste Zahl, rechts die letzte.',
  multiplesNote:
    'Das graue Band zeigt, wie weit Aufnahmen vom selben Tag auseinanderliegen: Erst ein Punkt außerhalb ist eine Änderung seit dem ersten Tag. Gestrichelt: was üblich ist. Der Maßstab ist für alle gleich.',
  barsLegend:
    'Eine Zeile für jeden Takt, ein Zeichen für jeden Tag. Voller Punkt: üben. Ring: hinhören. Strich: frei. Nichts: nicht gespielt oder nicht beurteilt.',
  notJudged: 'nicht beurteilt',
  besideSlurred: 'Gebunden neben gestoßen',
  noBars: 'In keinem Takt war etwas zu üben.',
  noise: 'Was eine Änderung ist und was Zufall',
  measure: 'Maß',
  varies: 'Eine Aufnahme schwankt um',
  changeFrom: 'Eine Änderung ab',
  restsOn: 'Worauf das beruht',
  alsoFound: 'Außerdem',
  file: 'Datei',
  whatNeeded: 'Was gefunden wurde und was nötig ist',
  failures: 'Ergebnisse, die nicht zu lesen waren',
  unplaced: 'Aufnahmen ohne Namen oder ohne Tag',
  unplacedNote:
    'Ihnen lässt sich nicht über Wochen folgen. Die Dateien nach Tag und Namen benennen und noch einmal auswerten, dann stehen sie hier.',
  unknown: 'nicht bekannt',
  outcome: 'Was daraus wurde',
  outcomes: {
    reviewed: 'beurteilt',
    'not-this-score': 'passt nicht zu den Noten',
    'too-poor': 'war nicht deutlich genug zu hören',
    failed: 'war nicht zu lesen',
  },
  states: { has: 'zu üben', perhaps: 'nur zum Hinhören oder nicht beurteilt', free: 'jetzt frei' },
  marks: { fix: 'zu üben', watch: 'zum Hinhören', clear: 'frei', 'not-judged': 'nicht beurteilt' },
  verdicts: { better: 'besser', worse: 'schlechter', different: 'anders' },
};
