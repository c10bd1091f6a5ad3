import { isMeasured } from '../../base/index.js';
import { STYLES, type TextStyle } from '../../page/index.js';
import type { BarStory, Followed, ProgressMeasure, ProgressPiece, ProgressPlayer } from '../../weeks/index.js';
import { type WeeksWords, wordsIn } from '../../words/index.js';
import type { ReportSheet } from '../report-sheet.js';
import { barStoriesHeight, drawBarStories } from './bar-stories-figure.js';
import { OPEN_STATUSES } from './moved-table.js';
import { drawGrid, gridHeight } from './multiples-grid.js';
import type { Scales } from './scales.js';
import { playerMultiple } from './small-multiple.js';

/**
 * One player: what changed, the small multiples, the bars, and what is missing.
 *
 * @param sheet pages being filled
 * @param player the player with one étude
 * @param piece the étude
 * @param measures measures with their noise
 * @param scales what the small multiples share
 */
export function drawPlayer(
  sheet: ReportSheet,
  player: ProgressPlayer,
  piece: ProgressPiece,
  measures: readonly ProgressMeasure[],
  scales: Scales,
): void {
  const words = wordsIn(sheet.language).weeks;
  const changes = changesOf(sheet, player);
  const grid = player.days.length === 0 ? 0 : gridHeight(measures.length);
  sheet.space(15);
  sheet.ensure(playerHeight(sheet, player, measures));
  drawName(sheet, player);
  const none = words.noChange(player.days.length, changes.length);
  for (const text of none === null ? changes : [none]) sheet.write('P', text, STYLES.body);
  const bars = barLine(sheet, player);
  if (bars !== null) sheet.write('P', bars, STYLES.body);
  if (grid > 0) {
    sheet.space(5);
    sheet.ensure(grid);
    const days = [...new Set(piece.players.flatMap((one) => one.days.map(({ date }) => date)))].sort();
    drawGrid(sheet, measures, scales, days, inWords(sheet, player), (measure, frame) => {
      const followed = player.measures.find((one) => one.measure === measure.measure) as Followed;
      return playerMultiple(sheet, measure, followed, frame);
    });
  }
  drawBarStories(sheet, player);
  drawRemarks(sheet, player, piece.section.weeks);
}

/**
 * @param sheet for the height of a page
 * @param player the player with one étude
 * @param measures measures with their noise
 * @returns points the block should find in one piece: all of it where a page can hold it, else up to the small multiples
 */
export function playerHeight(sheet: ReportSheet, player: ProgressPlayer, measures: readonly ProgressMeasure[]): number {
  const grid = player.days.length === 0 ? 0 : gridHeight(measures.length);
  const lines = (1 + Math.max(1, changesOf(sheet, player).length)) * STYLES.body.leading;
  const words = NAME.leading + lines + 8;
  const whole = words + grid + barStoriesHeight(player) + REMARK_LINES * STYLES.soft.leading;
  return whole <= sheet.fullHeight ? whole : Math.min(sheet.fullHeight, words + grid);
}

/** The name, and the days on the right of the same line where there is room. */
function drawName(sheet: ReportSheet, player: ProgressPlayer): void {
  const { top, name, days } = {
    top: sheet.y,
    name: player.player,
    days: wordsIn(sheet.language).weeks.days(player.days),
  };
  sheet.write('H3', name, NAME);
  const widthOf = (text: string, { face, size }: TextStyle) => sheet.typesetter.widthOf(text, face, size);
  const free = sheet.width - widthOf(name, NAME) - 20;
  if (widthOf(days, STYLES.soft) > free) {
    sheet.write('P', days, STYLES.soft);
  } else {
    const set = sheet.set(days, { ...STYLES.soft, align: 'right' }, free);
    sheet.elements.push(sheet.element('P', set, sheet.left + sheet.width - free, top + NAME_DROP));
  }
  sheet.space(3);
}

/** Stable measures and gaps usually take so many lines. */
const REMARK_LINES = 2;
/** Brings the smaller words to the name’s line. */
const NAME_DROP = 3.7;
const NAME = { ...STYLES.section, size: 13, leading: 17 } as const;

function barLine(sheet: ReportSheet, { bars, days }: ProgressPlayer): string | null {
  const numbers = (statuses: readonly BarStory['status'][]) => [
    ...new Set(bars.filter(({ status }) => statuses.includes(status)).map(({ bar }) => bar)),
  ];
  const said = wordsIn(sheet.language)
    .weeks.bars(numbers(['fixed']), numbers(OPEN_STATUSES))
    .join(' ');
  return days.length < 2 || said === '' ? null : said;
}

/** What changed since the first day; and since the day before, where that is not told by it. */
function changesOf(sheet: ReportSheet, player: ProgressPlayer): string[] {
  const words = wordsIn(sheet.language).weeks;
  return player.measures.flatMap(({ measure, days, sinceFirst, sinceLast }) => {
    const change = [sinceFirst, sinceLast].find((one) => one !== null && one.verdict !== 'none');
    if (change === undefined || change === null || change.verdict === 'none') return [];
    const on = (date: string) => days.find((day) => day.date === date)?.value;
    const [from, to] = [on(change.from), on(change.to)];
    if (typeof from !== 'number' || typeof to !== 'number') return [];
    return [words.told({ measure, verdict: change.verdict, fromDay: change.from, from, to })];
  });
}

function drawRemarks(sheet: ReportSheet, player: ProgressPlayer, weeks: readonly string[]): void {
  const words = wordsIn(sheet.language).weeks;
  const namesOf = (course: Followed['course']) =>
    player.measures.filter((one) => one.course === course).map(({ measure }) => words.measureInSentence(measure));
  const missing = player.gaps.flatMap(({ why, week }) => (why === 'no-take' && week !== null ? [week] : []));
  const remarks = [
    words.stable(namesOf('stable')),
    words.toAndFro(namesOf('to-and-fro')),
    ...player.measures.flatMap((one) => notJudged(words, one)),
    words.missingWeeks(missing, weeks),
    ...words.notCounted(player.gaps),
  ].filter((text) => text !== null);
  if (remarks.length === 0) return;
  sheet.space(3);
  sheet.write('P', remarks.join(' '), STYLES.soft);
}

function notJudged(words: WeeksWords, { measure, days }: Followed): string[] {
  const reason = days.find(({ value }) => !isMeasured<number>(value))?.value;
  const none = days.length > 0 && days.every(({ value }) => !isMeasured<number>(value));
  if (!none || reason === undefined || isMeasured<number>(reason)) return [];
  return [words.notJudged(words.measure(measure).name, reason.notMeasured)];
}

function inWords(sheet: ReportSheet, player: ProgressPlayer): string {
  const words = wordsIn(sheet.language).weeks;
  const said = player.measures.map(({ measure, days, sinceFirst }) => {
    const { name, unit } = words.measure(measure);
    const numbers = days.map(({ date, value }) => {
      const text = isMeasured<number>(value) ? words.figure(measure, value) : words.labels.notJudged;
      return words.dayInWords(sheet.words.day(date), text);
    });
    const verdict = sinceFirst === null || sinceFirst.verdict === 'none' ? null : sinceFirst.verdict;
    return words.measureInWords(name, unit, numbers, verdict === null ? null : words.labels.verdicts[verdict]);
  });
  return said.join(' ');
}
