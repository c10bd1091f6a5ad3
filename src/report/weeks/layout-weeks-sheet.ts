import { type Drawing, drawHeadRule, type PaperSize, STYLES, type Typesetter } from '../../page/index.js';
import type { ProgressPiece, ProgressResult } from '../../weeks/index.js';
import { type WeeksWords, wordsIn } from '../../words/index.js';
import { ReportSheet } from '../report-sheet.js';
import { drawSmallPrint } from '../small-print.js';
import { drawAlsoFound, drawUnplaced } from './also-found.js';
import { drawBarsTable } from './bars-table.js';
import { drawMovedTable } from './moved-table.js';
import { drawNoise } from './noise-table.js';
import { drawPlayer, playerHeight } from './player-block.js';
import { scalesOf } from './scales.js';
import { drawSectionMultiples } from './section-multiples.js';

/**
 * Lays out the sheet that follows players over weeks: the section first, then a block a player, then how a change is told
 * from chance, and whatever could not be followed.
 *
 * @param progress the document
 * @param paper paper, taken in landscape
 * @param typesetter widths and coverage of the faces
 * @returns the pages as plain data
 */
export function layoutProgressSheet(progress: ProgressResult, paper: PaperSize, typesetter: Typesetter): Drawing {
  const single = progress.pieces.length === 1 ? progress.pieces[0] : undefined;
  const { language = 'en' } = progress;
  const words = wordsIn(language).weeks;
  const { kind } = words.labels;
  const title = single?.title ?? kind;
  const name = single === undefined ? title : words.documentTitle(title, kind);
  const foot = single === undefined ? title : words.foot(title, kind);
  const sheet = new ReportSheet({ typesetter, paper, landscape: true, language, title: name, foot });
  sheet.write('H1', title, STYLES.title);
  sheet.space(2);
  sheet.write('P', factsOf(progress, single, words), STYLES.subtitle);
  drawHeadRule(sheet);
  if (progress.blind !== undefined && progress.blind.followed.length > 0) {
    sheet.space(4);
    sheet.write('P', words.numbersFollowed(progress.blind.followed), STYLES.soft);
  }
  drawUnplaced(sheet, progress);
  for (const piece of progress.pieces) drawPiece(sheet, progress, piece, single === undefined);
  if (progress.pieces.some(({ players }) => players.length > 0)) drawNoise(sheet, progress);
  drawAlsoFound(sheet, progress);
  drawSmallPrint(sheet, false);
  return sheet.finish();
}

function factsOf({ pieces, takes }: ProgressResult, single: ProgressPiece | undefined, words: WeeksWords): string {
  const all = pieces.flatMap(({ players }) => players);
  const names = new Set(all.map(({ player }) => player));
  const days = [...new Set(all.flatMap((player) => player.days.map(({ date }) => date)))].sort();
  const facts = words.facts(names.size, takes, days);
  return single === undefined
    ? facts
    : [words.labels.kind, single.part, facts].filter((one) => one !== '').join('  ·  ');
}

function drawPiece(sheet: ReportSheet, progress: ProgressResult, piece: ProgressPiece, named: boolean): void {
  const words = wordsIn(sheet.language).weeks;
  if (named) {
    sheet.space(16);
    sheet.ensure(STYLES.title.leading + 160);
    sheet.write('H2', words.piece(piece.title, piece.part), PIECE);
  }
  const versions = words.versions(
    piece.change,
    piece.files.flatMap(({ firstDate }) => (firstDate === null ? [] : [firstDate])),
  );
  if (versions !== null) {
    sheet.space(4);
    sheet.write('P', versions, STYLES.body);
  }
  if (piece.players.length === 0) return;
  const scales = scalesOf(piece, progress.measures);
  drawMovedTable(sheet, piece);
  drawBarsTable(sheet, piece);
  drawSectionMultiples(sheet, piece, progress.measures, scales);
  const [first] = piece.players;
  drawPlayersHead(sheet, first === undefined ? 0 : playerHeight(sheet, first, progress.measures));
  for (const player of piece.players) drawPlayer(sheet, player, piece, progress.measures, scales);
}

function drawPlayersHead(sheet: ReportSheet, nextHeight: number): void {
  const { labels } = wordsIn(sheet.language).weeks;
  sheet.space(20);
  const height = STYLES.section.leading + 3 * STYLES.soft.leading + 15;
  sheet.ensure(Math.min(sheet.fullHeight, height + nextHeight));
  sheet.write('H2', labels.players, STYLES.section);
  sheet.write('P', labels.multiplesNote, STYLES.soft);
  sheet.write('P', labels.barsLegend, STYLES.soft);
}

const PIECE = { ...STYLES.title, size: 16, leading: 21 } as const;
