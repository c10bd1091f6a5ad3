import { type Drawing, drawHeadRule, drawTable, type PaperSize, STYLES, type Typesetter } from '../../page/index.js';
import type { SectionResult } from '../../result/index.js';
import { type SectionWords, wordsIn } from '../../words/index.js';
import { ReportSheet } from '../report-sheet.js';
import { drawSmallPrint } from '../small-print.js';
import { drawRehearseTable } from './rehearse-table.js';
import type { SectionSheet } from './section-sheets.js';
import { drawTakesTable } from './takes-table.js';
import { drawTroubleMap } from './trouble-map.js';

/**
 * Lays out the director's sheet for all takes of a review: the latest of each player; older ones are for the weeks. Where there
 * are several sheets, what concerns all takes together stands on the first.
 *
 * @param whole the section's document
 * @param part what this sheet lists
 * @param paper paper, taken in landscape
 * @param typesetter widths and coverage of the faces
 * @returns the pages as plain data
 */
export function layoutSectionSheet(
  whole: SectionResult,
  part: SectionSheet,
  paper: PaperSize,
  typesetter: Typesetter,
): Drawing {
  const { language = 'en' } = whole;
  const words = wordsIn(language).section;
  const title = titleOf(whole, words);
  const sheet = new ReportSheet({
    typesetter,
    paper,
    landscape: true,
    language,
    title: words.documentTitle(title),
    foot: words.foot(title),
  });
  sheet.write('H1', title, STYLES.title);
  sheet.space(2);
  sheet.write('P', factsOf(whole, words), STYLES.subtitle);
  const which = sheetOf(part, words);
  if (which !== null) sheet.write('P', which, STYLES.subtitle);
  drawHeadRule(sheet);
  if (part.sheet === 1) {
    for (const takes of whole.same ?? []) sheet.write('P', words.same(takes), STYLES.headline);
    drawRehearseTable(sheet, whole);
  }
  drawTakesTable(sheet, part.section, part.older);
  drawTroubleMap(sheet, part.section);
  drawFailures(sheet, part.section);
  drawSmallPrint(sheet, false);
  return sheet.finish();
}

function titleOf({ score }: SectionResult, words: SectionWords): string {
  if (score === null) return words.severalScores;
  return score.title.trim() === '' ? score.file : score.title;
}

/** Which of several sheets this is; null when it is the only one. */
function sheetOf({ section, sheet, of }: SectionSheet, words: SectionWords): string | null {
  const listed = [...section.takes.map(({ name }) => name), ...section.failures.map(({ file }) => file)];
  return of === 1 ? null : words.sheetOf(sheet, of, listed[0] ?? '', listed.at(-1) ?? '');
}

function factsOf({ takes, failures, scores, players }: SectionResult, words: SectionWords): string {
  const reviewed = takes.filter((take) => take.outcome === 'reviewed').length;
  return words.facts({
    parts: [...new Set(scores.map((score) => score.part))],
    takes: takes.length + failures.length,
    players,
    reviewed,
    others: takes.length - reviewed,
    unread: failures.length,
  });
}

function drawFailures(sheet: ReportSheet, section: SectionResult): void {
  if (section.failures.length === 0) return;
  const words = wordsIn(sheet.language).section;
  sheet.space(16);
  sheet.ensure(STYLES.section.leading + 50);
  sheet.write('H2', words.failures, STYLES.section);
  sheet.space(4);
  drawTable(
    sheet,
    [
      { head: words.file, width: 230, namesRow: true },
      { head: words.whatNeeded, width: sheet.width - 230 + 9 },
    ],
    section.failures.map(({ file, message }) => [file, message]),
  );
}
