import { isMeasured } from '../../base/index.js';
import { STYLES, type TextStyle } from '../../page/index.js';
import type { Followed, ProgressEtude, ProgressMeasure, ProgressPlayer } from '../../weeks/index.js';
import { type WeeksWords, wordsIn } from '../../words/index.js';
import type { ReportSheet } from '../report-sheet.js';
import { drawBarStories } from './bar-stories-figure.js';
import { moved } from './moved.js';
import { drawGrid, gridHeight } from './multiples-grid.js';
import type { Scales } from './scales.js';
import { playerMultiple } from './small-multiple.js';
import { standingOf } from './standing-of.js';

/**
 * One player: the goal for the next lesson, what was mended, what is open and what came new; the bars; small multiples of
 * what moved; the rest in small print.
 *
 * @param sheet pages being filled
 * @param player the player with one étude
 * @param etude the étude
 * @param measures measures with their noise
 * @param scales what the small multiples share
 */
export function drawPlayer(
  sheet: ReportSheet,
  player: ProgressPlayer,
  etude: ProgressEtude,
  measures: readonly ProgressMeasure[],
  scales: Scales,
): void {
  const words = wordsIn(sheet.language).weeks;
  drawName(sheet, player);
  if (player.goal !== null) {
    sheet.write('P', `${words.labels.goalIs} ${words.goal(player.goal)}`, STYLES.headline);
    sheet.space(3);
  }
  for (const text of [...standingOf(words, player), ...besideSlurred(words, player)]) {
    sheet.write('P', text, STYLES.body);
  }
  drawBarStories(sheet, player);
  drawMoved(sheet, player, etude, measures, scales);
  drawRemarks(sheet, player, measures, etude.section.weeks);
}

/** What the tongue costs the air, where a day has the same bars slurred and tongued, and something is sure. */
function besideSlurred(words: WeeksWords, { besideSlurred: beside }: ProgressPlayer): string[] {
  if (beside === undefined) return [];
  const { date, sag, softer } = beside;
  const known = (cost: typeof sag) => ('notMeasured' in cost ? null : cost);
  const text = words.besideSlurred({ date, sag: known(sag), softer: known(softer) });
  return text === null ? [] : [text];
}

/** Small multiples of what moved, and the changes with their numbers in small print. */
function drawMoved(
  sheet: ReportSheet,
  player: ProgressPlayer,
  etude: ProgressEtude,
  measures: readonly ProgressMeasure[],
  scales: Scales,
): void {
  const shown = player.measures.filter(moved);
  if (shown.length === 0) return;
  const days = [...new Set(etude.players.flatMap((one) => one.days.map(({ date }) => date)))].sort();
  const drawn = measures.filter(({ measure }) => shown.some((one) => one.measure === measure));
  sheet.space(10);
  sheet.ensure(gridHeight(drawn.length) + STYLES.soft.leading);
  drawGrid(sheet, drawn, scales, days, inWords(sheet, shown), (measure, frame) => {
    const followed = shown.find((one) => one.measure === measure.measure) as Followed;
    return playerMultiple(sheet, measure, followed, frame);
  });
  sheet.space(3);
  for (const text of changesOf(sheet, player)) sheet.write('P', text, STYLES.soft);
}

/** The name, and the days on the right of the same line where there is room. */
function drawName(sheet: ReportSheet, player: ProgressPlayer): void {
  const { top, name, days } = {
    top: sheet.y,
    name: player.player,
    days: wordsIn(sheet.language).weeks.days(player.days),
  };
  sheet.write('H2', name, NAME);
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

/** Brings the smaller words to the name’s line. */
const NAME_DROP = 3.7;
const NAME = { ...STYLES.section, size: 13, leading: 17 } as const;

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

/** A measure that only describes is not missed where it cannot be told. */
function isAsked({ wanted }: ProgressMeasure): boolean {
  return wanted.low !== null || wanted.high !== null;
}

function drawRemarks(
  sheet: ReportSheet,
  player: ProgressPlayer,
  measures: readonly ProgressMeasure[],
  weeks: readonly string[],
): void {
  const words = wordsIn(sheet.language).weeks;
  const namesOf = (course: Followed['course']) =>
    player.measures.filter((one) => one.course === course).map(({ measure }) => words.measureInSentence(measure));
  const asked = new Set(measures.filter(isAsked).map(({ measure }) => measure));
  const missing = player.gaps.flatMap(({ why, week }) => (why === 'no-take' && week !== null ? [week] : []));
  const remarks = [
    player.bars.length === 0 ? null : words.labels.barsLegend,
    player.measures.some(moved) ? words.labels.multiplesNote : null,
    words.stable(namesOf('stable')),
    words.toAndFro(namesOf('to-and-fro')),
    ...player.measures.filter((one) => asked.has(one.measure)).flatMap((one) => notJudged(words, one)),
    ...notCompared(words, player),
    words.missingWeeks(missing, weeks),
    ...words.notCounted(player.gaps),
  ].filter((text) => text !== null);
  if (remarks.length === 0) return;
  sheet.space(6);
  sheet.write('P', remarks.join(' '), STYLES.small);
}

function notJudged(words: WeeksWords, { measure, days }: Followed): string[] {
  const reason = days.find(({ value }) => !isMeasured<number>(value))?.value;
  const none = days.length > 0 && days.every(({ value }) => !isMeasured<number>(value));
  if (!none || reason === undefined || isMeasured<number>(reason)) return [];
  return [words.notJudged(words.measure(measure).name, reason.notMeasured)];
}

/** Why tongue and slur cannot be compared although a day has both takes. */
function notCompared(words: WeeksWords, { besideSlurred: beside }: ProgressPlayer): string[] {
  if (beside === undefined || !('notMeasured' in beside.sag)) return [];
  return [words.notJudged(words.labels.besideSlurred, beside.sag.notMeasured)];
}

function inWords(sheet: ReportSheet, shown: readonly Followed[]): string {
  const words = wordsIn(sheet.language).weeks;
  const said = shown.map(({ measure, days, sinceFirst }) => {
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
