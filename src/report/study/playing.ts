import type { Sheet } from '../../page/index.js';
import type { StudyPlan } from '../../study/index.js';
import type { StudyWords } from '../../words/index.js';
import { drawPlaces, sectionHead } from './places-table.js';

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
    sectionHead(sheet, page.entries.heading, page.entries.introduction);
    const told = entries.map((entry) => [places.barList(entry.bars), plan.entry(entry)] as const);
    drawPlaces(sheet, page, page.entries.head, told);
  }
  if (fermatas.length > 0) {
    const title = fermatas.length === 1 ? page.fermatas.one : page.fermatas.several;
    sectionHead(sheet, title, page.fermatas.introduction(fermatas.every(({ usual }) => usual)));
    const told = fermatas.map((one) => [places.note(one.bar, one.beat), plan.fermata(one)] as const);
    drawPlaces(sheet, page, page.fermatas.head, told);
  }
  if (tempo.changes.length > 0) {
    sectionHead(sheet, page.tempo.heading, page.tempo.introduction);
    const told = tempo.changes.map(
      ({ bar, beat, change }) => [places.note(bar, beat), `${capital(plan.tempoChange(change))}.`] as const,
    );
    drawPlaces(sheet, page, page.tempo.head, told);
  }
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
