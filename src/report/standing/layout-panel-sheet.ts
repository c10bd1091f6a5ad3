import { type Drawing, drawHeadRule, drawTable, type PaperSize, STYLES, type Typesetter } from '../../page/index.js';
import type { Standing } from '../../result/index.js';
import { wordsIn } from '../../words/index.js';
import { ReportSheet } from '../report-sheet.js';
import { drawSmallPrint } from '../small-print.js';

const NARROWEST = 62;
const TAKE = 120;
/** Room to write in. */
const TALL = { ...STYLES.cellStrong, leading: 19 } as const;

/**
 * Lays out a blank sheet for one judge: the takes by their names, or by their numbers where names are hidden, and an empty cell a
 * criterion with the points the brief gives for it. Nothing measured stands on it.
 *
 * @param standing the document
 * @param paper paper, taken in landscape
 * @param typesetter widths and coverage of the faces
 * @returns the pages as plain data
 */
export function layoutPanelSheet({ groups, language }: Standing, paper: PaperSize, typesetter: Typesetter): Drawing {
  const words = wordsIn(language).standing;
  const sheet = new ReportSheet({
    ...{ typesetter, paper, language, landscape: true },
    ...{ title: words.blankTitle, foot: words.blankTitle },
  });
  sheet.write('H1', words.blankTitle, STYLES.title);
  sheet.space(8);
  sheet.write('P', words.judgeAndDay, STYLES.subtitle);
  drawHeadRule(sheet);
  for (const { title, part, criteria, takes } of groups) {
    sheet.space(10);
    sheet.write('H2', [title, part].filter((text) => text.trim() !== '').join(', '), STYLES.section);
    sheet.write('P', words.blankNote, STYLES.soft);
    sheet.space(4);
    const heads = criteria.map(({ criterion, possible }) => {
      return words.outOf(sheet.words.criterion(criterion), sheet.words.number(possible, 1));
    });
    const total = criteria.reduce((sum, { possible }) => sum + possible, 0);
    const width = Math.max(NARROWEST, (sheet.width - TAKE) / (heads.length + 1));
    drawTable(
      sheet,
      [
        { head: words.take, width: Math.max(TAKE, sheet.width - width * (heads.length + 1) + 9), namesRow: true },
        ...heads.map((head) => ({ head, width })),
        { head: words.outOf(words.inAll, sheet.words.number(total, 1)), width },
      ],
      takes
        .map(({ name }) => name)
        .sort()
        .map((name) => [{ text: name, style: TALL }, ...heads.map(() => ''), '']),
    );
  }
  drawSmallPrint(sheet, false);
  return sheet.finish();
}
