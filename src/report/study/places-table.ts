import { drawTable, MARGIN_COLUMN, MARGIN_GAP, type Sheet, STYLES } from '../../page/index.js';
import type { StudyWords } from '../../words/index.js';

const MOST_ROWS = 16;

/**
 * The heading of a section of a study sheet, with a word on it.
 *
 * @param sheet pages being filled
 * @param title the heading
 * @param text under it
 * @param next points that what follows takes at least
 */
export function sectionHead(sheet: Sheet, title: string, text: string, next = 0): void {
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + Math.max(70, 2 * STYLES.soft.leading + 3 + next));
  sheet.write('H2', title, STYLES.section);
  sheet.write('P', text, STYLES.soft);
  sheet.space(3);
}

/**
 * What is asked for, place by place.
 *
 * @param sheet pages being filled
 * @param page what the sheet says
 * @param head of the second column
 * @param all places with what is told of them; of very many the first
 */
export function drawPlaces(
  sheet: Sheet,
  page: StudyWords['page'],
  head: string,
  all: readonly (readonly [string, string])[],
): void {
  const more = all.length - MOST_ROWS;
  const shown = all.slice(0, MOST_ROWS);
  const first = MARGIN_COLUMN + MARGIN_GAP;
  drawTable(
    sheet,
    [
      { head: page.where, width: first, namesRow: true },
      { head, width: sheet.width - first + 9 },
    ],
    more > 0 ? [...shown, [page.andMore, page.morePlaces(more)]] : shown,
  );
}
