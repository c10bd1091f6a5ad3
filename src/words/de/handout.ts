import type { HandoutWords } from '../shapes/handout.js';

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** Everything that is said over what is handed out. */
export const HANDOUT: HandoutWords = {
  title: 'Blätter zum Austeilen',
  printTitle: 'Blätter für alle zum Drucken',
  facts: (players, takes) => `${counted(players, 'Person', 'Personen')}, ${counted(takes, 'Aufnahme', 'Aufnahmen')}`,
  forAll: 'Für das ganze Register',
  print: 'Blätter für alle drucken',
  sheets: (sheets) =>
    `${counted(sheets, 'Blatt', 'Blatt')} Papier, beidseitig bedruckt; jede Aufnahme beginnt auf einem neuen Blatt.`,
  section: 'Registerblatt',
  mail: 'Tabelle für Serienmails',
  mailNote: 'Eine Zeile für jede Aufnahme: Name, Adresse, Datei und Betreff. Es wird nichts verschickt.',
  players: 'Nach Namen',
  player: 'Name',
  piece: 'Etüde',
  day: 'Tag',
  found: 'Gefunden',
  files: 'Öffnen',
  pages: 'Blätter',
  listen: 'Anhören',
  pagesOf: (player) => `Blätter für ${player}`,
  listenOf: (player) => `Anhören, im Hörraum: ${player}`,
  findings: (fix, watch) => `${fix} zum Üben, ${watch} zum Hinhören`,
  notReviewed: 'nicht beurteilt; der Grund steht auf den Blättern',
  caution:
    'Diese Ergebnisse helfen einer Jury; sie ersetzen sie nie. Gib jedem nur den Ordner mit dem eigenen Namen: der Hörraum darin enthält die Aufnahme.',
  subject: (piece, day) => (day === null ? `Deine Übeblätter: ${piece}` : `Deine Übeblätter: ${piece}, ${day}`),
};
