import { circle, type Item, lineAcross, placeText, STYLES } from '../../page/index.js';
import type { BarStory, ProgressPlayer } from '../../weeks/index.js';
import { wordsIn } from '../../words/index.js';
import type { ReportSheet } from '../report-sheet.js';

const ROW = 12.5;
const LABEL = 52;
const WHAT = 190;
const WIDEST_DAY = 44;
const DAYS_WIDTH = 250;
const RADIUS = 2.6;

/**
 * What became of the bars that had something to fix: a row a bar, a mark a day.
 *
 * @param sheet pages being filled
 * @param player the player
 */
export function drawBarStories(sheet: ReportSheet, player: ProgressPlayer): void {
  if (player.bars.length === 0 || player.days.length === 0) return;
  sheet.space(5);
  let next = 0;
  while (next < player.bars.length) {
    sheet.ensure(STYLES.axis.leading + 2 * ROW);
    const fitting = Math.max(1, Math.floor((sheet.room - STYLES.axis.leading) / ROW));
    const rows = player.bars.slice(next, next + fitting);
    drawRows(sheet, player, rows);
    next += rows.length;
  }
}

function drawRows(sheet: ReportSheet, player: ProgressPlayer, rows: readonly BarStory[]): void {
  const words = wordsIn(sheet.language).weeks;
  const step = Math.min(WIDEST_DAY, DAYS_WIDTH / player.days.length);
  const left = sheet.left + LABEL + WHAT;
  const xOf = (day: number) => left + (day + 0.5) * step;
  const end = left + step * player.days.length + 10;
  const height = STYLES.axis.leading + rows.length * ROW;
  const items: Item[] = dayHeads(sheet, player, xOf, step);
  for (const [i, story] of rows.entries()) {
    const top = sheet.y + STYLES.axis.leading + i * ROW;
    const path = lineAcross(top, sheet.left, sheet.left + sheet.width);
    items.push({ kind: 'path', path, stroke: 'rule', width: 0.35 });
    items.push(...placeText(sheet.set(words.labels.bar(story.bar), STYLES.cellStrong, LABEL), sheet.left, top));
    items.push(
      ...placeText(sheet.set(sheet.words.finding(story).headline, STYLES.cell, WHAT), sheet.left + LABEL, top),
    );
    items.push(...story.days.flatMap((mark, day) => markItems(mark, xOf(day), top + ROW / 2)));
    const status = sheet.set(words.status(story), STYLES.cell, sheet.left + sheet.width - end);
    items.push(...placeText(status, end, top));
  }
  sheet.elements.push({
    tag: 'Figure',
    alternative: inWords(sheet, player, rows),
    box: [sheet.left, sheet.y, sheet.left + sheet.width, sheet.y + height],
    children: [{ page: sheet.page, items }],
  });
  sheet.y += height;
}

/** As many days as have room, always the first and the last. */
function dayHeads(sheet: ReportSheet, player: ProgressPlayer, xOf: (day: number) => number, step: number): Item[] {
  const width = 34;
  const last = player.days.length - 1;
  const every = Math.ceil(width / step);
  return player.days.flatMap(({ date }, day) => {
    const wanted = day === last || (day % every === 0 && last - day >= every);
    if (!wanted) return [];
    const set = sheet.set(sheet.words.shortDay(date), { ...STYLES.axis, align: 'centre' }, width);
    return placeText(set, xOf(day) - width / 2, sheet.y);
  });
}

function markItems(mark: BarStory['days'][number], x: number, y: number): Item[] {
  if (mark === 'not-judged') return [];
  if (mark === 'fix') return [{ kind: 'path', path: circle(x, y, RADIUS), fill: 'text' }];
  if (mark === 'watch') return [{ kind: 'path', path: circle(x, y, RADIUS), stroke: 'text', width: 0.7 }];
  return [{ kind: 'path', path: lineAcross(y, x - 2, x + 2), stroke: 'text', width: 0.7 }];
}

function inWords(sheet: ReportSheet, player: ProgressPlayer, rows: readonly BarStory[]): string {
  const words = wordsIn(sheet.language).weeks;
  const said = rows.map((story) => {
    const days = story.days.map((mark, i) =>
      words.dayInWords(sheet.words.shortDay(player.days[i]?.date ?? ''), words.labels.marks[mark]),
    );
    return words.storyInWords(story.bar, sheet.words.finding(story).headline, days, words.status(story));
  });
  return said.join(' ');
}
