import { type Engrave, type Excerpt, shifted } from '../../engrave/index.js';
import { drawTable, MARGIN_COLUMN, MARGIN_GAP, type Sheet, STYLES } from '../../page/index.js';
import type { StudyPlan, Trap } from '../../study/index.js';
import type { StudyWords } from '../../words/index.js';
import { NUMBERS_HEIGHT, pencilMarks } from './pencil-marks.js';
import { type TrapGroup, trapGroups } from './trap-groups.js';

/** More excerpts make a sheet nobody reads to its end; the others are told in words. */
const MOST_EXCERPTS = 10;
const MOST_ROWS = 40;
/** White above and below an excerpt, for the rings. */
const EXCERPT_MARGIN = 4;

/**
 * Notes that are easily misread: engraved with rings, the reason under it; then the others in words.
 *
 * @param sheet pages being filled
 * @param plan what the étude asks for
 * @param engrave engraves bars of the part
 * @param words what the sheet says
 */
export function drawTraps(sheet: Sheet, { traps }: StudyPlan, engrave: Engrave, words: StudyWords): void {
  const said = words.page.traps;
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + 90);
  sheet.write('H2', said.heading, STYLES.section);
  const groups = trapGroups(traps.filter(({ rank }) => rank < 3));
  const printed = traps.filter(({ rank }) => rank === 3);
  sheet.write('P', introductionTo(groups.length, printed.length, said), STYLES.soft);
  sheet.space(4);
  const shown = groups.slice(0, MOST_EXCERPTS);
  for (const group of shown) drawGroup(sheet, group, engrave, words);
  drawOthers(sheet, [...groups.slice(MOST_EXCERPTS).flatMap((group) => group.traps), ...printed], words);
}

function introductionTo(groups: number, printed: number, said: StudyWords['page']['traps']): string {
  if (groups + printed === 0) return said.none;
  return groups === 0 ? said.printedOnly : said.introduction;
}

function drawGroup(sheet: Sheet, group: TrapGroup, engrave: Engrave, words: StudyWords): void {
  const left = sheet.left + MARGIN_COLUMN + MARGIN_GAP;
  const width = sheet.width - MARGIN_COLUMN - MARGIN_GAP;
  const excerpt = engrave(group.fromBarIndex, group.toBarIndex, width);
  const reasons = reasonsOf(group, words);
  const textHeight = reasons.reduce((sum, text) => sum + sheet.set(text, STYLES.body, width).height, 0);
  const above = EXCERPT_MARGIN + (group.traps.length > 1 ? NUMBERS_HEIGHT : 0);
  const figureHeight = excerpt === null ? 0 : above + excerpt.height + EXCERPT_MARGIN;
  sheet.ensure(Math.min(sheet.fullHeight, figureHeight + textHeight + 8));
  const place = sheet.set(words.places.bars(group.bar, group.toBar), STYLES.margin, MARGIN_COLUMN);
  sheet.elements.push(sheet.element('H3', place, sheet.left, sheet.y + (excerpt === null ? 1 : figureHeight / 2 - 6)));
  if (excerpt !== null) {
    drawExcerpt(sheet, group, excerpt, [left, sheet.y + above], words);
    sheet.y += figureHeight;
  }
  for (const text of reasons) sheet.write('P', text, STYLES.body, left, width);
  sheet.y += 8;
}

function drawExcerpt(
  sheet: Sheet,
  group: TrapGroup,
  excerpt: Excerpt,
  [left, top]: readonly [number, number],
  { page, places, plan }: StudyWords,
): void {
  const items = [...excerpt.items, ...pencilMarks(sheet, excerpt, group)];
  const notes = group.traps.map(({ pitches, bar }) => ({ names: plan.pitches(pitches), bar }));
  sheet.elements.push({
    tag: 'Figure',
    alternative: page.traps.alternative(places.bars(group.bar, group.toBar), notes),
    box: [left, top, left + excerpt.width, top + excerpt.height],
    children: [{ page: sheet.page, items: shifted(items, left, top) }],
  });
}

/** Numbered like the rings when there are several; the bar is named when the excerpt holds more than one. */
function reasonsOf({ traps, fromBarIndex, toBarIndex }: TrapGroup, { page, plan }: StudyWords): string[] {
  return traps.map((trap, i) => {
    const reason = plan.trap(trap);
    const place = fromBarIndex === toBarIndex ? reason : page.traps.inBar(trap.bar, reason);
    return traps.length > 1 ? `${i + 1}  ${place}` : place;
  });
}

function drawOthers(sheet: Sheet, traps: readonly Trap[], { page, plan }: StudyWords): void {
  if (traps.length === 0) return;
  const said = page.traps;
  const rows = traps.slice(0, MOST_ROWS).map((trap) => [said.bar(trap.bar), plan.trap(trap)]);
  const more = traps.length - rows.length;
  sheet.space(2);
  drawTable(
    sheet,
    [
      { head: said.also, width: MARGIN_COLUMN + MARGIN_GAP, namesRow: true },
      { head: said.toSee, width: sheet.width - MARGIN_COLUMN - MARGIN_GAP + 9 },
    ],
    more > 0 ? [...rows, [page.andMore, said.more(more)]] : rows,
  );
}
