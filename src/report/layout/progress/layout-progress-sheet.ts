import type { ProgressPiece, ProgressResult } from '../../progress/progress-result-schema.js';
import { PROGRESS_WORDS } from '../../words/progress-labels.js';
import { factsInWords, versionsInWords } from '../../words/progress-words.js';
import type { Drawing, Typesetter } from '../drawing.js';
import { drawHeadRule } from '../head-rule.js';
import { type PaperSize, Sheet } from '../sheet.js';
import { drawSmallPrint } from '../small-print.js';
import { STYLES } from '../styles.js';
import { drawAlsoFound } from './also-found.js';
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
 *
 * Source: definition.
 */
export function layoutProgressSheet(progress: ProgressResult, paper: PaperSize, typesetter: Typesetter): Drawing {
  const single = progress.pieces.length === 1 ? progress.pieces[0] : undefined;
  const title = single?.title ?? PROGRESS_WORDS.kind;
  const name = single === undefined ? title : `${title} – ${PROGRESS_WORDS.kind}`;
  const foot = single === undefined ? title : `${PROGRESS_WORDS.kind}  ·  ${title}`;
  const sheet = new Sheet({ typesetter, paper, landscape: true, title: name, foot });
  sheet.write('H1', title, STYLES.title);
  sheet.space(2);
  sheet.write('P', factsOf(progress, single), STYLES.subtitle);
  drawHeadRule(sheet);
  for (const piece of progress.pieces) drawPiece(sheet, progress, piece, single === undefined);
  drawNoise(sheet, progress);
  drawAlsoFound(sheet, progress);
  drawSmallPrint(sheet, false);
  return sheet.finish();
}

function factsOf({ pieces, takes }: ProgressResult, single: ProgressPiece | undefined): string {
  const all = pieces.flatMap(({ players }) => players);
  const names = new Set(all.map(({ player }) => player));
  const days = [...new Set(all.flatMap((player) => player.days.map(({ date }) => date)))].sort();
  const facts = factsInWords(names.size, takes, days);
  return single === undefined
    ? facts
    : [PROGRESS_WORDS.kind, single.part, facts].filter((one) => one !== '').join('  ·  ');
}

function drawPiece(sheet: Sheet, progress: ProgressResult, piece: ProgressPiece, named: boolean): void {
  if (named) {
    sheet.space(16);
    sheet.ensure(STYLES.title.leading + 160);
    sheet.write('H2', [piece.title, piece.part].filter((one) => one !== '').join(', '), PIECE);
  }
  const versions = versionsInWords(
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

function drawPlayersHead(sheet: Sheet, nextHeight: number): void {
  sheet.space(20);
  const height = STYLES.section.leading + 3 * STYLES.soft.leading + 15;
  sheet.ensure(Math.min(sheet.fullHeight, height + nextHeight));
  sheet.write('H2', PROGRESS_WORDS.players, STYLES.section);
  sheet.write('P', PROGRESS_WORDS.multiplesNote, STYLES.soft);
  sheet.write('P', PROGRESS_WORDS.barsLegend, STYLES.soft);
}

const PIECE = { ...STYLES.title, size: 16, leading: 21 } as const;
