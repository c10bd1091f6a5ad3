import { drawTable, MARGIN_COLUMN, MARGIN_GAP, type Sheet, STYLES } from '../../page/index.js';
import type { StudyPlan } from '../../study/index.js';
import type { StudyWords } from '../../words/index.js';

const MOST_ROWS = 16;

/**
 * How the bars are tongued and slurred.
 *
 * @param sheet pages being filled
 * @param plan what the étude asks for
 * @param words what the sheet says
 */
export function drawTonguing(sheet: Sheet, { articulation }: StudyPlan, words: StudyWords): void {
  if (articulation.length === 0) return;
  const said = words.page.tonguing;
  const dotted = articulation.some(({ groups }) => groups.some(({ dotOnLast }) => dotOnLast));
  heading(sheet, said.heading, `${said.introduction}${dotted ? said.dotUnderSlur : ''}`);
  rows(
    sheet,
    words.page,
    said.head,
    articulation.map(({ bars, groups }) => [words.places.barList(bars), capital(words.plan.articulation(groups))]),
  );
}

/**
 * Entries after rests, fermatas, and changes of tempo.
 *
 * @param sheet pages being filled
 * @param plan what the étude asks for
 * @param words what the sheet says
 */
export function drawCounting(sheet: Sheet, { entries, fermatas, tempo }: StudyPlan, words: StudyWords): void {
  const { page, places, plan } = words;
  if (entries.length > 0) {
    heading(sheet, page.entries.heading, page.entries.introduction);
    const told = entries.map((entry) => [places.barList(entry.bars), plan.entry(entry)] as const);
    rows(sheet, page, page.entries.head, told);
  }
  if (fermatas.length > 0) {
    const title = fermatas.length === 1 ? page.fermatas.one : page.fermatas.several;
    heading(sheet, title, page.fermatas.introduction(fermatas.every(({ usual }) => usual)));
    const told = fermatas.map((one) => [places.note(one.bar, one.beat), plan.fermata(one)] as const);
    rows(sheet, page, page.fermatas.head, told);
  }
  if (tempo.changes.length > 0) {
    heading(sheet, page.tempo.heading, page.tempo.introduction);
    const told = tempo.changes.map(
      ({ bar, beat, change }) => [places.note(bar, beat), `${capital(plan.tempoChange(change))}.`] as const,
    );
    rows(sheet, page, page.tempo.head, told);
  }
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

function heading(sheet: Sheet, title: string, text: string): void {
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + 70);
  sheet.write('H2', title, STYLES.section);
  sheet.write('P', text, STYLES.soft);
  sheet.space(3);
}

function rows(sheet: Sheet, page: StudyWords['page'], head: string, all: readonly (readonly [string, string])[]): void {
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
