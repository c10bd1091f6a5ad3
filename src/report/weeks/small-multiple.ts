import { isMeasured } from '../../base/index.js';
import {
  areaOf,
  circle,
  type Item,
  joinPaths,
  lineAcross,
  lineThrough,
  type Path,
  type Point,
  placeText,
  type Sheet,
  STYLES,
  setOneLine,
} from '../../page/index.js';
import { dayNumber, type Followed, type ProgressMeasure, weekOf } from '../../weeks/index.js';
import { wordsIn } from '../../words/index.js';
import type { Scales } from './scales.js';

/** Sizes of one small multiple, points. */
export const MULTIPLE = { height: 56, head: 21, plot: 29, side: 23, gap: 13 } as const;

const DAYS_A_WEEK = 7;
/** With more days than this the dots are small. */
const MANY_DAYS = 10;
/** In line with the last dot, but never out of the plot. */
const LABEL_RISE = STYLES.cell.leading / 2;

/** Where one small multiple stands. */
export interface MultipleFrame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly xOf: (date: string) => number;
  readonly yOf: (value: number) => number;
  readonly plotLeft: number;
  readonly plotRight: number;
  readonly plotTop: number;
  readonly plotFoot: number;
}

/**
 * @param measure what is shown
 * @param scales what all small multiples of the étude share
 * @param left left edge, points
 * @param top upper edge, points
 * @param width points
 * @returns where things are drawn
 */
export function frameOf(
  measure: ProgressMeasure,
  scales: Scales,
  left: number,
  top: number,
  width: number,
): MultipleFrame {
  const [plotLeft, plotRight] = [left + MULTIPLE.side, left + width - MULTIPLE.side];
  const [plotTop, plotFoot] = [top + MULTIPLE.head, top + MULTIPLE.head + MULTIPLE.plot];
  const [first, last] = scales.days;
  const [low, high] = scales.values[measure.measure];
  const along = (date: string) => (last === first ? 0.5 : (dayNumber(date) - first) / (last - first));
  return {
    left,
    top,
    width,
    plotLeft,
    plotRight,
    plotTop,
    plotFoot,
    xOf: (date) => plotLeft + along(date) * (plotRight - plotLeft),
    yOf: (value) => plotFoot - ((value - low) / (high - low)) * (plotFoot - plotTop),
  };
}

/**
 * The head, the base line and the usual standards of a small multiple.
 *
 * @param sheet for widths
 * @param measure what is shown
 * @param frame where
 * @returns what to draw
 */
export function multipleHead(sheet: Sheet, measure: ProgressMeasure, frame: MultipleFrame): Item[] {
  const { name, unit } = wordsIn(sheet.language).weeks.measure(measure.measure);
  const { left, top, width, plotLeft, plotRight, plotFoot } = frame;
  const usual = measure.usual.map((value) => lineAcross(frame.yOf(value), plotLeft, plotRight));
  return [
    ...placeText(setOneLine(sheet.typesetter, name, STYLES.head, width), left, top),
    ...placeText(setOneLine(sheet.typesetter, unit, STYLES.axis, width), left, top + STYLES.head.leading - 1),
    { kind: 'path', path: lineAcross(plotFoot, plotLeft, plotRight), stroke: 'rule', width: 0.5 },
    ...(usual.length === 0
      ? []
      : [
          {
            kind: 'path' as const,
            path: joinPaths(usual),
            stroke: 'accent' as const,
            width: 0.5,
            dash: [2, 2] as const,
          },
        ]),
  ];
}

/**
 * One measure of one player: a dot a take, a line through the days' means, broken where a week is missing, and the band
 * of noise around the first day.
 *
 * @param sheet for widths
 * @param measure what is shown
 * @param followed the player's numbers
 * @param frame where
 * @returns what to draw
 */
export function playerMultiple(
  sheet: Sheet,
  measure: ProgressMeasure,
  followed: Followed,
  frame: MultipleFrame,
): Item[] {
  const head = multipleHead(sheet, measure, frame);
  const days = followed.days.flatMap(({ date, value, takes }) =>
    isMeasured<number>(value) ? [{ date, value, takes }] : [],
  );
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return head;
  const changed = followed.sinceFirst !== null && followed.sinceFirst.verdict !== 'none';
  const noise = followed.sinceFirst?.smallest ?? measure.noise.smallestChange;
  const points = days.map(({ date, value }) => [frame.xOf(date), frame.yOf(value)] as const);
  const takes = days.flatMap((day) =>
    day.takes.length < 2 ? [] : day.takes.map((value) => circle(frame.xOf(day.date), frame.yOf(value), 0.8)),
  );
  const end = points.at(-1) as Point;
  const radius = days.length > MANY_DAYS ? 0.7 : 1.3;
  const before = points.slice(0, -1).map(([x, y]) => circle(x, y, radius));
  return [
    ...(days.length > 1 ? [bandItem(first.value, noise, frame)] : []),
    ...head,
    ...lineItems(days, points),
    ...(takes.length === 0 ? [] : [{ kind: 'path' as const, path: joinPaths(takes), fill: 'soft' as const }]),
    ...(before.length === 0 ? [] : [{ kind: 'path' as const, path: joinPaths(before), fill: 'text' as const }]),
    { kind: 'path', path: circle(end[0], end[1], changed ? 2.2 : 1.3), fill: changed ? 'accent' : 'text' },
    ...(days.length > 1 ? numberItems(sheet, measure, first.value, frame, 'first') : []),
    ...numberItems(sheet, measure, last.value, frame, changed ? 'changed' : 'last'),
  ];
}

function bandItem(value: number, noise: number, { yOf, plotLeft, plotRight, plotTop, plotFoot }: MultipleFrame): Item {
  const top = Math.max(plotTop, yOf(value + noise));
  const foot = Math.min(plotFoot, yOf(value - noise));
  const corners: Point[] = [
    [plotLeft, top],
    [plotRight, top],
    [plotRight, foot],
    [plotLeft, foot],
  ];
  return { kind: 'path', path: areaOf(corners), fill: 'tint' };
}

/** Whole where weeks follow each other, dashed over a missing week. */
function lineItems(days: readonly { date: string }[], points: readonly Point[]): Item[] {
  const steps = points.slice(1).map((to, i) => {
    const weeks = (dayNumber(weekOf(days[i + 1]?.date ?? '')) - dayNumber(weekOf(days[i]?.date ?? ''))) / DAYS_A_WEEK;
    return { path: lineThrough([points[i] as Point, to]), isWhole: weeks < 2 };
  });
  const [whole, dashed] = [true, false].map((wanted) =>
    steps.filter(({ isWhole }) => isWhole === wanted).map(({ path }) => path),
  ) as [Path[], Path[]];
  const items: Item[] = [];
  if (whole.length > 0) items.push({ kind: 'path', path: joinPaths(whole), stroke: 'text', width: 0.7 });
  if (dashed.length > 0)
    items.push({ kind: 'path', path: joinPaths(dashed), stroke: 'soft', width: 0.5, dash: [1, 2] });
  return items;
}

/**
 * A number beside the plot: the first on the left, the latest on the right.
 *
 * @param sheet for widths
 * @param measure what the number counts
 * @param value the number
 * @param frame where
 * @param as the first, or the latest, changed or not
 * @returns what to draw
 */
export function numberItems(
  sheet: Sheet,
  { measure }: ProgressMeasure,
  value: number,
  { plotRight, left, yOf, plotTop, plotFoot }: MultipleFrame,
  as: 'first' | 'last' | 'changed',
): Item[] {
  const text = wordsIn(sheet.language).weeks.figure(measure, value);
  const style = as === 'first' ? STYLES.axis : as === 'changed' ? STYLES.cellStrong : STYLES.cell;
  const middle = Math.min(plotFoot - 2, Math.max(plotTop, yOf(value)));
  const room = MULTIPLE.side - 4;
  if (as === 'first') return placeText(sheet.set(text, { ...style, align: 'right' }, room), left, middle - 4.5);
  return placeText(sheet.set(text, { ...style, size: 8 }, room + 10), plotRight + 4, middle - LABEL_RISE);
}
