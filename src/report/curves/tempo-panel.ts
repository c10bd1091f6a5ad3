import {
  circle,
  type Item,
  joinPaths,
  lineAcross,
  lineThrough,
  placeText,
  type Sheet,
  STYLES,
} from '../../page/index.js';
import type { TakeResult } from '../../result/index.js';
import type { Part } from '../../score/index.js';
import type { BarRow } from '../bars/bar-rows.js';

/** The tempo of a take, when there is one. */
type Tempo = Exclude<TakeResult['tempo'], { notMeasured: string }>;

/** The tempos a panel shows. */
export interface TempoRange {
  readonly low: number;
  readonly high: number;
}

const LEAST_SPAN = 0.24;
const MOST_TICKS = 3;

/**
 * @param tempo the take's tempo
 * @param part the part, for its printed tempos
 * @returns quarter beats a minute shown, wide enough that a steady tempo looks steady
 */
export function tempoRange(tempo: Tempo, part: Part): TempoRange {
  const values = [
    tempo.playedQuarterBpm,
    ...tempo.bars.map((bar) => bar.quarterBpm),
    ...part.tempos.filter((mark) => mark.printed).map((mark) => mark.quarterBpm),
  ];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const middle = (least + most) / 2;
  const span = Math.max((most - least) * 1.15, LEAST_SPAN * middle);
  return { low: middle - span / 2, high: middle + span / 2 };
}

/**
 * One row of tempo over bars: a point a bar, joined where bars follow each other, and the printed tempo as a dashed line.
 *
 * @param sheet for widths
 * @param tempo the take's tempo
 * @param part the part
 * @param row the bars
 * @param range quarter beats a minute shown
 * @param left x of the row's start, points
 * @param top y of the upper edge, points
 * @param height points
 * @returns what to draw
 */
export function tempoPanel(
  sheet: Sheet,
  tempo: Tempo,
  part: Part,
  row: BarRow,
  range: TempoRange,
  left: number,
  top: number,
  height: number,
): Item[] {
  const xOf = (quarters: number) => left + (quarters - row.fromQuarters) * row.scale;
  const yOf = (bpm: number) => top + ((range.high - bpm) / (range.high - range.low)) * height;
  const right = xOf(row.toQuarters);
  return [
    { kind: 'path', path: lineAcross(top + height, left, right), stroke: 'soft', width: 0.5 },
    ...ticksOf(range).flatMap((bpm): Item[] => [
      { kind: 'path', path: lineAcross(yOf(bpm), left, right), stroke: 'rule', width: 0.35 },
      ...placeText(sheet.set(String(bpm), { ...STYLES.axis, align: 'right' }, 26), left - 30, yOf(bpm) - 4.5),
    ]),
    ...printedTempos(part, row).map(
      ({ from, to, quarterBpm }): Item => ({
        kind: 'path',
        path: lineAcross(yOf(quarterBpm), xOf(from), xOf(to)),
        stroke: 'accent',
        width: 0.9,
        dash: [3, 3],
      }),
    ),
    ...played(tempo, row, xOf, yOf),
  ];
}

function ticksOf(range: TempoRange): number[] {
  const span = range.high - range.low;
  const step = [1, 2, 5, 10, 20, 50, 100].find((size) => span / size <= MOST_TICKS) ?? 200;
  const first = Math.ceil((range.low + span * 0.08) / step) * step;
  const ticks: number[] = [];
  for (let bpm = first; bpm <= range.high; bpm += step) ticks.push(bpm);
  return ticks;
}

function printedTempos(part: Part, row: BarRow) {
  return part.tempos.flatMap((mark, i) => {
    const from = Math.max(mark.atQuarters, row.fromQuarters);
    const to = Math.min(part.tempos[i + 1]?.atQuarters ?? row.toQuarters, row.toQuarters);
    return mark.printed && to > from ? [{ from, to, quarterBpm: mark.quarterBpm }] : [];
  });
}

function played(tempo: Tempo, row: BarRow, xOf: (q: number) => number, yOf: (bpm: number) => number): Item[] {
  const measured = new Map(tempo.bars.map((bar) => [bar.startQuarters.toFixed(3), bar.quarterBpm]));
  const points = row.bars.map((bar) => {
    const bpm = measured.get(bar.startQuarters.toFixed(3));
    return [xOf(bar.startQuarters + bar.lengthQuarters / 2), bpm === undefined ? Number.NaN : yOf(bpm)] as const;
  });
  const dots = points.filter(([, y]) => !Number.isNaN(y)).map(([x, y]) => circle(x, y, 1.35));
  if (dots.length === 0) return [];
  return [
    { kind: 'path', path: lineThrough(points), stroke: 'text', width: 0.6 },
    { kind: 'path', path: joinPaths(dots), fill: 'text' },
  ];
}
