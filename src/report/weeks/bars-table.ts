import { drawTable, STYLES } from '../../page/index.js';
import type { ProgressEtude } from '../../weeks/index.js';
import { wordsIn } from '../../words/index.js';
import type { ReportSheet } from '../report-sheet.js';
import { drawBarsStrip, stripHeight } from './bars-strip.js';

/**
 * Which bars the section has mastered, and which still trouble it: all bars at a glance, then those that trouble most
 * players first.
 *
 * @param sheet pages being filled
 * @param etude the étude
 */
export function drawBarsTable(sheet: ReportSheet, etude: ProgressEtude): void {
  const said = wordsIn(sheet.language).weeks;
  const words = said.labels;
  const { bars } = etude.section;
  sheet.space(16);
  sheet.ensure(STYLES.section.leading + 2 * STYLES.soft.leading + stripHeight(sheet, etude));
  sheet.write('H2', words.bars, STYLES.section);
  if (bars.length === 0) {
    sheet.write('P', words.noBars, STYLES.body);
    return;
  }
  sheet.write('P', words.barsNote, STYLES.soft);
  sheet.space(2);
  drawBarsStrip(sheet, etude);
  const mastered = said.mastered(masteredBars(etude));
  if (mastered !== null) {
    sheet.space(4);
    sheet.write('P', mastered, STYLES.body);
  }
  drawOpenRows(sheet, etude);
}

function masteredBars({ bars, section }: ProgressEtude): string[] {
  const rowsOf = (bar: string) => section.bars.filter((row) => row.bar === bar);
  return bars.filter((bar) => rowsOf(bar).length > 0 && rowsOf(bar).every((row) => row.mastered));
}

function drawOpenRows(sheet: ReportSheet, etude: ProgressEtude): void {
  const said = wordsIn(sheet.language).weeks;
  const words = said.labels;
  const order = (bar: string) => etude.bars.indexOf(bar);
  const rows = etude.section.bars
    .filter((row) => row.have.length + row.open.length > 0)
    .sort((a, b) => b.have.length - a.have.length || b.open.length - a.open.length || order(a.bar) - order(b.bar));
  if (rows.length === 0) return;
  const what = widthOfWhat(
    sheet,
    rows.map((row) => sheet.words.finding(row).headline),
  );
  sheet.space(8);
  drawTable(
    sheet,
    [
      { head: words.openRows, width: 92, namesRow: true },
      { head: words.what, width: what },
      { head: words.about, width: 74 },
      { head: words.had, width: 370 - what },
      { head: words.have, width: sheet.width - 536 + 9 },
    ],
    rows.map((row) => [
      { text: words.bar(row.bar), style: STYLES.cellStrong },
      sheet.words.finding(row).headline,
      sheet.words.criterion(row.criterion),
      row.had.length === 0 ? words.nobody : said.list(row.had),
      said.hasIt(row.have, row.open),
    ]),
  );
}

/** As wide as the longest heading asks for, within bounds. */
function widthOfWhat(sheet: ReportSheet, headlines: readonly string[]): number {
  const widths = headlines.map((text) => sheet.typesetter.widthOf(text, STYLES.cell.face, STYLES.cell.size) + 10);
  return Math.min(226, Math.max(190, ...widths));
}
