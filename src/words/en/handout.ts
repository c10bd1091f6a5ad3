import type { HandoutWords } from '../shapes/handout.js';

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** Everything that is said over what is handed out. */
export const HANDOUT: HandoutWords = {
  title: 'Pages to hand out',
  printTitle: 'Players’ pages to print',
  facts: (players, takes) => `${counted(players, 'player', 'players')}, ${counted(takes, 'take', 'takes')}`,
  forAll: 'For the whole section',
  print: 'Print all players’ pages',
  sheets: (sheets) =>
    `${counted(sheets, 'sheet', 'sheets')} of paper, printed on both sides; each take begins on a new sheet.`,
  section: 'Section sheet',
  mail: 'Table for mail merge',
  mailNote: 'A line a take: player, mail, file and subject. Nothing is sent.',
  players: 'By player',
  player: 'Player',
  piece: 'Étude',
  day: 'Day',
  found: 'Found',
  files: 'Open',
  pages: 'Pages',
  listen: 'Listen',
  pagesOf: (player) => `Pages of ${player}`,
  listenOf: (player) => `Listen to ${player}`,
  findings: (fix, watch) => `${fix} to fix, ${watch} to watch`,
  notReviewed: 'not reviewed; the pages say why',
  caution:
    'These results support a panel and never replace one. Give each player only the folder with their name: their listening room holds sound of the player.',
  subject: (piece, day) => (day === null ? `Your pages: ${piece}` : `Your pages: ${piece}, ${day}`),
};
