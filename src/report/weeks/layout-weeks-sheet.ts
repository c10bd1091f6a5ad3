import { type Drawing, drawHeadRule, type PaperSize, STYLES, type Typesetter } from '../../page/index.js';
import type { ProgressEtude, ProgressResult, ProgressSheet } from '../../weeks/index.js';
import { type WeeksWords, wordsIn } from '../../words/index.js';
import { ReportSheet } from '../report-sheet.js';
import { drawSmallPrint } from '../small-print.js';
import { drawAlsoFound, drawUnplaced } from './also-found.js';
import { drawBarsTable } from './bars-table.js';
import { drawNoise } from './noise-table.js';
import { drawPlayer } from './player-block.js';
import { scalesOf } from './scales.js';
import { drawSectionMultiples } from './section-multiples.js';
import { drawStandings } from './standings-table.js';

/**
 * Lays out the sheet that follows players over weeks: how everybody stands, with the goal for the next lesson, and what
 * the section shares; then a page a player; then, in small print, how a change is told from chance, and whatever could not
 * be followed. One player alone begins on the first page.
 *
 * @param part the document or a part of it, and which part it is
 * @param paper paper, taken in landscape
 * @param typesetter widths and coverage of the faces
 * @returns the pages as plain data
 */
export function layoutProgressSheet(part: ProgressSheet, paper: PaperSize, typesetter: Typesetter): Drawing {
  const { progress } = part;
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
  const which = sheetOf(part, words);
  if (which !== null) sheet.write('P', which, STYLES.subtitle);
  drawHeadRule(sheet);
  if (progress.blind !== undefined && progress.blind.followed.length > 0) {
    sheet.space(4);
    sheet.write('P', words.numbersFollowed(progress.blind.followed), STYLES.soft);
  }
  drawUnplaced(sheet, progress);
  for (const etude of progress.pieces) drawEtude(sheet, progress, etude, single === undefined);
  if (progress.pieces.some(({ players }) => players.length > 1)) sheet.ensure(sheet.fullHeight);
  drawNoise(sheet, progress);
  drawAlsoFound(sheet, progress);
  drawSmallPrint(sheet, false);
  return sheet.finish();
}

function factsOf({ pieces, takes }: ProgressResult, single: ProgressEtude | undefined, words: WeeksWords): string {
  const all = pieces.flatMap(({ players }) => players);
  const names = new Set(all.map(({ player }) => player));
  const days = [...new Set(all.flatMap((player) => player.days.map(({ date }) => date)))].sort();
  const facts = words.facts(names.size, takes, days);
  return single === undefined
    ? facts
    : [words.labels.kind, single.part, facts].filter((one) => one !== '').join('  ·  ');
}

/** Which of several sheets this is; null when it is the only one. */
function sheetOf({ progress, sheet, of }: ProgressSheet, words: WeeksWords): string | null {
  const names = progress.pieces.flatMap(({ players }) => players.map(({ player }) => player));
  return of === 1 ? null : words.sheetOf(sheet, of, names[0] ?? '', names.at(-1) ?? '');
}

function drawEtude(sheet: ReportSheet, progress: ProgressResult, etude: ProgressEtude, named: boolean): void {
  const words = wordsIn(sheet.language).weeks;
  if (named) {
    sheet.space(16);
    sheet.ensure(STYLES.title.leading + 160);
    sheet.write('H2', words.etude(etude.title, etude.part), TITLE_OF_SEVERAL);
  }
  const versions = words.versions(
    etude.change,
    etude.files.flatMap(({ firstDate }) => (firstDate === null ? [] : [firstDate])),
  );
  if (versions !== null) {
    sheet.space(4);
    sheet.write('P', versions, STYLES.body);
  }
  if (etude.players.length === 0) return;
  const scales = scalesOf(etude, progress.measures);
  const [only, ...others] = etude.players;
  if (only !== undefined && others.length === 0) {
    sheet.space(12);
    drawPlayer(sheet, only, etude, progress.measures, scales);
    return;
  }
  drawStandings(sheet, etude);
  drawBarsTable(sheet, etude);
  drawSectionMultiples(sheet, etude, progress.measures, scales);
  for (const player of etude.players) {
    sheet.ensure(sheet.fullHeight);
    drawPlayer(sheet, player, etude, progress.measures, scales);
  }
}

const TITLE_OF_SEVERAL = { ...STYLES.title, size: 16, leading: 21 } as const;
