import { type Engrave, engraveLines, shifted } from '../../engrave/index.js';
import { drawTable, type Item, MARGIN_COLUMN, MARGIN_GAP, type Sheet, STYLES } from '../../page/index.js';
import type { StudyPlan, Trap } from '../../study/index.js';
import type { StudyWords } from '../../words/index.js';
import { lineRoom } from './line-room.js';
import { trapNumbers, trapRings } from './pencil-marks.js';
import { type TrapGroup, trapGroups } from './trap-groups.js';

/** More excerpts make a sheet nobody reads to its end; the others are told in words. */
const MOST_EXCERPTS = 10;
const MOST_ROWS = 40;
/** White above and below a picture, points. */
const EXCERPT_MARGIN = 3;
/** White below a group, points. */
const AFTER_GROUP = 8;
/** White between its lines, points. */
const BETWEEN_LINES = 7;

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
  const groups = trapGroups(traps.filter(({ rank }) => rank < 3));
  const printed = traps.filter(({ rank }) => rank === 3);
  const shown = groups.slice(0, MOST_EXCERPTS).map((group) => setGroup(sheet, group, engrave, words));
  const head = STYLES.section.leading + 2 * STYLES.soft.leading + 4;
  sheet.space(12);
  sheet.ensure(Math.min(sheet.fullHeight, head + Math.max(60, shown[0]?.height ?? 0)));
  sheet.write('H2', said.heading, STYLES.section);
  sheet.write('P', introductionTo(groups.length, printed.length, said), STYLES.soft);
  sheet.space(4);
  for (const group of shown) drawGroup(sheet, group, words);
  drawOthers(sheet, [...groups.slice(MOST_EXCERPTS).flatMap((group) => group.traps), ...printed], words);
}

function introductionTo(groups: number, printed: number, said: StudyWords['page']['traps']): string {
  if (groups + printed === 0) return said.none;
  return groups === 0 ? said.printedOnly : said.introduction;
}

/** A group with its picture and its reasons, and the points it takes. */
interface GroupSet {
  readonly group: TrapGroup;
  readonly picture: Picture;
  readonly reasons: readonly string[];
  readonly height: number;
}

function setGroup(sheet: Sheet, group: TrapGroup, engrave: Engrave, words: StudyWords): GroupSet {
  const width = sheet.width - MARGIN_COLUMN - MARGIN_GAP;
  const picture = pictureOf(sheet, group, engrave, width);
  const reasons = reasonsOf(group, words);
  const textHeight = reasons.reduce((sum, text) => sum + sheet.set(text, STYLES.body, width).height, 0);
  return { group, picture, reasons, height: figureHeightOf(picture) + textHeight + AFTER_GROUP };
}

const figureHeightOf = ({ height }: Picture) => (height === 0 ? 0 : height + 2 * EXCERPT_MARGIN);

function drawGroup(sheet: Sheet, { group, picture, reasons, height }: GroupSet, words: StudyWords): void {
  const left = sheet.left + MARGIN_COLUMN + MARGIN_GAP;
  const figureHeight = figureHeightOf(picture);
  sheet.ensure(Math.min(sheet.fullHeight, height));
  const place = sheet.set(words.places.bars(group.bar, group.toBar), STYLES.margin, MARGIN_COLUMN);
  sheet.elements.push(
    sheet.element('H3', place, sheet.left, sheet.y + (figureHeight === 0 ? 1 : figureHeight / 2 - 6)),
  );
  if (figureHeight > 0) {
    drawPicture(sheet, group, picture, [left, sheet.y + EXCERPT_MARGIN], words);
    sheet.y += figureHeight;
  }
  for (const text of reasons) sheet.write('P', text, STYLES.body, left, sheet.width - MARGIN_COLUMN - MARGIN_GAP);
  sheet.y += AFTER_GROUP;
}

/** Engraved lines with their marks, one below the other; points from the upper left corner. */
interface Picture {
  readonly items: readonly Item[];
  readonly width: number;
  readonly height: number;
}

function pictureOf(
  sheet: Sheet,
  { fromBarIndex, toBarIndex, traps }: TrapGroup,
  engrave: Engrave,
  width: number,
): Picture {
  const items: Item[] = [];
  let [height, widest] = [0, 0];
  for (const { excerpt } of engraveLines(engrave, fromBarIndex, toBarIndex, width)) {
    const room = lineRoom(sheet, excerpt, width);
    const marks = trapRings(excerpt, traps, room);
    if (traps.length > 1) marks.push(...trapNumbers(sheet, excerpt, traps, room));
    const [top, bottom] = room.extent;
    if (height > 0) height += BETWEEN_LINES;
    items.push(...shifted([...excerpt.items, ...marks], 0, height - top));
    height += bottom - top;
    widest = Math.max(widest, excerpt.width);
  }
  return { items, width: widest, height };
}

function drawPicture(
  sheet: Sheet,
  group: TrapGroup,
  { items, width, height }: Picture,
  [left, top]: readonly [number, number],
  { page, places, plan }: StudyWords,
): void {
  const notes = group.traps.map(({ pitches, bar }) => ({ names: plan.pitches(pitches), bar }));
  sheet.elements.push({
    tag: 'Figure',
    alternative: page.traps.alternative(places.bars(group.bar, group.toBar), notes),
    box: [left, top, left + width, top + height],
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
