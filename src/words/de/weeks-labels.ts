import type { WeeksLabels } from '../shapes/weeks.js';

/** Fixed words of the progress sheet. */
export const WEEKS_LABELS: WeeksLabels = {
  kind: 'Über die Wochen',
  whoMoved: 'Wer vorangekommen ist',
  whoMovedNote:
    'Hier stehen nur Änderungen vom ersten bis zum letzten Tag, die größer sind als der Unterschied zweier Aufnahmen vom selben Tag.',
  player: 'Name',
  days: 'Tage',
  better: 'Besser',
  slipped: 'Schlechter',
  barsFixed: 'Takte erledigt',
  barsOpen: 'Takte zum Üben',
  bars: 'Die Takte',
  barsNote:
    'Ein Punkt für jede Person, die dort etwas zu üben hat oder hatte. Voll: am letzten Tag noch. Klein: jetzt nur zum Hinhören oder nicht beurteilt. Ring: jetzt frei.',
  players: 'Alle im Einzelnen',
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
    'Darunter Tag für Tag die Takte, in denen etwas zu üben war. Voller Punkt: üben. Ring: hinhören. Strich: frei. Nichts: nicht gespielt oder nicht beurteilt.',
  notJudged: 'nicht beurteilt',
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
