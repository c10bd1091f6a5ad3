import { isMeasured } from '../../base/index.js';
import { circle, type Item, joinPaths, lineThrough, STYLES } from '../../page/index.js';
import type { ProgressEtude, ProgressMeasure } from '../../weeks/index.js';
import { wordsIn } from '../../words/index.js';
import type { ReportSheet } from '../report-sheet.js';
import { moved } from './moved.js';
import { drawGrid, gridHeight } from './multiples-grid.js';
import type { Scales } from './scales.js';
import { type MultipleFrame, multipleHead, numberItems } from './small-multiple.js';

/**
 * The middle of the section week by week, over the lines of its players, for what moved with somebody.
 *
 * @param sheet pages being filled
 * @param etude the étude
 * @param measures measures with their noise
 * @param scales what the small multiples share
 */
export function drawSectionMultiples(
  sheet: ReportSheet,
  etude: ProgressEtude,
  measures: readonly ProgressMeasure[],
  scales: Scales,
): void {
  const { weeks } = etude.section;
  if (etude.players.length < 2 || weeks.length < 2) return;
  const movedFor = new Set(etude.players.flatMap((player) => player.measures.filter(moved).map((one) => one.measure)));
  const shown = measures.filter(({ measure }) => movedFor.has(measure) && mediansOf(etude, measure).length > 0);
  if (shown.length === 0) return;
  const { labels } = wordsIn(sheet.language).weeks;
  sheet.space(16);
  sheet.ensure(STYLES.section.leading + STYLES.soft.leading + gridHeight(shown.length) + 4);
  sheet.write('H2', labels.middle, STYLES.section);
  sheet.write('P', labels.middleNote, STYLES.soft);
  sheet.space(4);
  const days = [...new Set(etude.players.flatMap((player) => player.days.map(({ date }) => date)))].sort();
  drawGrid(sheet, shown, scales, days, inWords(sheet, etude, shown), (measure, frame) =>
    one(sheet, etude, measure, frame),
  );
}

function mediansOf({ section }: ProgressEtude, measure: ProgressMeasure['measure']) {
  return section.medians.find((median) => median.measure === measure)?.weeks ?? [];
}

function one(sheet: ReportSheet, etude: ProgressEtude, measure: ProgressMeasure, frame: MultipleFrame): Item[] {
  const light = etude.players.map((player) => {
    const days = player.measures.find((followed) => followed.measure === measure.measure)?.days ?? [];
    return lineThrough(
      days.flatMap(({ date, value }) => (isMeasured<number>(value) ? [[frame.xOf(date), frame.yOf(value)]] : [])) as [
        number,
        number,
      ][],
    );
  });
  const medians = mediansOf(etude, measure.measure);
  const points = medians.map(({ week, value }) => [weekX(etude, week, frame), frame.yOf(value)] as const);
  const [first, last] = [medians[0], medians.at(-1)];
  if (first === undefined || last === undefined) return multipleHead(sheet, measure, frame);
  return [
    ...multipleHead(sheet, measure, frame),
    { kind: 'path', path: joinPaths(light), stroke: 'rule', width: 0.6 },
    ...(points.length > 1
      ? [{ kind: 'path' as const, path: lineThrough(points), stroke: 'text' as const, width: 1.1 }]
      : []),
    { kind: 'path', path: joinPaths(points.map(([x, y]) => circle(x, y, 1.5))), fill: 'text' },
    ...(medians.length > 1 ? numberItems(sheet, measure, first.value, frame, 'first') : []),
    ...numberItems(sheet, measure, last.value, frame, 'last'),
  ];
}

/** The middle of the days on which somebody played in that week. */
function weekX({ players }: ProgressEtude, week: string, frame: MultipleFrame): number {
  const days = players.flatMap((player) => player.days.filter((day) => day.week === week).map(({ date }) => date));
  const xs = days.map((date) => frame.xOf(date));
  return xs.reduce((sum, x) => sum + x, 0) / Math.max(1, xs.length);
}

function inWords(sheet: ReportSheet, etude: ProgressEtude, shown: readonly ProgressMeasure[]): string {
  const words = wordsIn(sheet.language).weeks;
  return shown
    .map(({ measure }) => {
      const { name, unit } = words.measure(measure);
      const said = mediansOf(etude, measure).map(({ week, value, players }) =>
        words.weekInWords(sheet.words.day(week), words.figure(measure, value), players),
      );
      return words.measureInWords(name, unit, said, null);
    })
    .join(' ');
}
