import {
  areaUnder,
  type Item,
  joinPaths,
  lineAcross,
  lineThrough,
  placeText,
  STYLES,
  type TextStyle,
} from '../../page/index.js';
import type { TakeResult } from '../../result/index.js';
import type { Part } from '../../score/index.js';
import { barAxis } from '../bars/bar-axis.js';
import { type BarRow, numberedBars } from '../bars/bar-rows.js';
import { DYNAMICS_LANE_HEIGHT, dynamicsLane } from '../bars/dynamics-lane.js';
import type { ReportSheet } from '../report-sheet.js';

/** The levels a panel shows, the same for all rows of a take. */
export interface LevelRange {
  /** the loudest playing, dBFS; shown as 0 */
  readonly referenceDb: number;
  /** relative to the reference */
  readonly topDb: number;
  readonly bottomDb: number;
}

/** Everything one row of the loudness picture shows. */
export interface LoudnessRow {
  readonly part: Part;
  readonly result: TakeResult;
  readonly row: BarRow;
  /** dBFS a bin over the row, NaN where nothing was played */
  readonly curve: Float64Array;
  readonly range: LevelRange;
  readonly height: number;
}

const TICKS_HEIGHT = 13;
const NUMBERS_HEIGHT = 11;
const EMPTY_LANE = 2;
const LEVEL_LABEL_LEAST_WIDTH = 19;
const LEVEL_LABEL = { ...STYLES.axis, face: 'semibold', ink: 'accent' } as const;
/** Distance of the label's upper edge from the line it stands over or under, points. */
const LEVEL_LABEL_RISE = 10;
const LEVEL_LABEL_DROP = 1.5;
const LEVEL_LABEL_STEP = 2;
const SYMBOL_SIZE = 13;
const FERMATA_WIDTH = 0.6 * SYMBOL_SIZE;

/**
 * @param part the part
 * @param panelHeight points the curve takes
 * @returns height of a row of the loudness picture, points; no room is kept for signs and marks that the part does not have
 */
export function loudnessRowHeight(part: Part, panelHeight: number): number {
  const { dynamics, dynamicEvents, hairpins } = part;
  const lane = dynamics.length + dynamicEvents.length + hairpins.length === 0 ? EMPTY_LANE : DYNAMICS_LANE_HEIGHT;
  return signsHeight(part) + panelHeight + NUMBERS_HEIGHT + lane;
}

function signsHeight(part: Part): number {
  return part.notes.some((note) => note.fermata || note.breathAfter !== null) ? TICKS_HEIGHT : EMPTY_LANE;
}

/**
 * One row of loudness over bars: the curve, the level measured under each mark, fermatas and breaths above, bar numbers and
 * the printed dynamics below.
 *
 * @param sheet for widths
 * @param data what to show
 * @param left x of the row's start, points; the level's scale stands to the left of it
 * @param top y of the row's upper edge, points
 * @returns what to draw
 */
export function loudnessPanel(sheet: ReportSheet, data: LoudnessRow, left: number, top: number): Item[] {
  const { row, range, height } = data;
  const panelTop = top + signsHeight(data.part);
  const foot = panelTop + height;
  const right = left + (row.toQuarters - row.fromQuarters) * row.scale;
  const xOf = (quarters: number) => left + (quarters - row.fromQuarters) * row.scale;
  const yOf = (db: number) => {
    const shown = Math.min(range.topDb, Math.max(range.bottomDb, db - range.referenceDb));
    return panelTop + ((range.topDb - shown) / (range.topDb - range.bottomDb)) * height;
  };
  return [
    ...curveItems(data, left, right, yOf, foot),
    ...gridItems(sheet, range, left, right, yOf),
    ...markLines(data.part, row, xOf, panelTop, foot),
    ...barItems(sheet, row, xOf, foot),
    ...levelItems(sheet, data, xOf, yOf),
    ...symbolItems(data.part, row, xOf, panelTop - 2),
    ...dynamicsLane(sheet.typesetter, data.part, row, left, foot + NUMBERS_HEIGHT),
  ];
}

function curveItems(data: LoudnessRow, left: number, right: number, yOf: (db: number) => number, foot: number): Item[] {
  const step = (right - left) / data.curve.length;
  const points = Array.from(data.curve, (db, bin) => [left + (bin + 0.5) * step, yOf(db)] as const);
  const area = areaUnder(points, foot);
  if (area.steps.length === 0) return [];
  return [
    { kind: 'path', path: area, fill: 'tint' },
    { kind: 'path', path: lineThrough(points), stroke: 'soft', width: 0.6 },
  ];
}

function gridItems(
  sheet: ReportSheet,
  range: LevelRange,
  left: number,
  right: number,
  yOf: (db: number) => number,
): Item[] {
  const items: Item[] = [];
  for (let db = 0; db >= range.bottomDb + 1; db -= 6) {
    const y = yOf(db + range.referenceDb);
    items.push({
      kind: 'path',
      path: lineAcross(y, left, right),
      stroke: 'rule',
      width: 0.35,
    });
    items.push(...label(sheet, sheet.words.number(db, 0), { ...STYLES.axis, align: 'right' }, left - 30, y - 4.5, 26));
  }
  return items;
}

function barItems(sheet: ReportSheet, row: BarRow, xOf: (q: number) => number, foot: number): Item[] {
  const numbered = numberedBars(row, 17);
  return [
    { kind: 'path', path: barAxis(row, xOf, foot), stroke: 'soft', width: 0.5 },
    ...numbered.flatMap((bar) => label(sheet, bar.bar, STYLES.axis, xOf(bar.startQuarters) + 1.5, foot + 1.5, 40)),
  ];
}

/** A fine line where each dynamic mark stands, down to the mark. */
function markLines(part: Part, row: BarRow, xOf: (q: number) => number, panelTop: number, foot: number): Item[] {
  const here = part.dynamics.filter(({ atQuarters }) => atQuarters > row.fromQuarters && atQuarters < row.toQuarters);
  const lines = here.map(({ atQuarters }) =>
    lineThrough([
      [xOf(atQuarters), panelTop],
      [xOf(atQuarters), foot],
    ]),
  );
  return lines.length === 0 ? [] : [{ kind: 'path', path: joinPaths(lines), stroke: 'rule', width: 0.5 }];
}

function levelItems(
  sheet: ReportSheet,
  data: LoudnessRow,
  xOf: (q: number) => number,
  yOf: (db: number) => number,
): Item[] {
  const { part, row } = data;
  return data.result.levels.flatMap(({ levelDb, index, toIndex }): Item[] => {
    const first = part.notes[index];
    const last = part.notes[toIndex];
    if (typeof levelDb !== 'number' || first === undefined || last === undefined) return [];
    const from = Math.max(first.onsetQuarters, row.fromQuarters);
    const to = Math.min(last.onsetQuarters + last.durationQuarters, row.toQuarters);
    if (to <= from) return [];
    const [x0, x1, y] = [xOf(from) + 1, xOf(to) - 1, yOf(levelDb)];
    const line: Item = {
      kind: 'path',
      path: lineAcross(y, x0, Math.max(x1, x0 + 2)),
      stroke: 'accent',
      width: 2,
    };
    if (x1 - x0 < LEVEL_LABEL_LEAST_WIDTH || first.onsetQuarters < row.fromQuarters) return [line];
    return [line, ...levelLabel(sheet, data, levelDb, [x0 + 1, Math.max(x1, x0 + 2)], xOf, yOf)];
  });
}

/** The level in figures, as near to the beginning of its line as the curve does not run through them. */
function levelLabel(
  sheet: ReportSheet,
  { row, range, curve }: LoudnessRow,
  levelDb: number,
  [from, to]: readonly [number, number],
  xOf: (q: number) => number,
  yOf: (db: number) => number,
): Item[] {
  const set = sheet.set(sheet.words.number(levelDb - range.referenceDb, 1), LEVEL_LABEL, 40);
  const width = set.lines[0]?.width ?? 0;
  const [left, right] = [xOf(row.fromQuarters), xOf(row.toQuarters)];
  const first = Math.min(from, right - width - 1);
  const line = yOf(levelDb);
  const over = line - LEVEL_LABEL_RISE;
  const binAt = (x: number) => Math.max(0, Math.round(((x - left) / (right - left)) * curve.length));
  const curveOver = (x: number): number[] =>
    Array.from(curve.subarray(binAt(x - 1), binAt(x + width + 1)), yOf).filter((y) => !Number.isNaN(y));
  const isFree = (x: number, top: number): boolean =>
    curveOver(x).every((y) => y < top + 1 || y > top + LEVEL_LABEL.leading - 0.5);
  for (let x = first; x <= Math.max(first, to - width); x += LEVEL_LABEL_STEP) {
    for (const top of [over, over - LEVEL_LABEL.leading / 2, line + LEVEL_LABEL_DROP]) {
      if (isFree(x, top)) return placeText(set, x, top);
    }
  }
  const highest = Math.min(line, ...curveOver(first));
  const ceiling = yOf(range.referenceDb + range.topDb);
  return placeText(set, first, Math.max(ceiling, highest - LEVEL_LABEL_RISE));
}

/** Fermatas, breath marks and caesuras above their notes. Source of the code points: SMuFL 1.4, Holds and pauses. */
function symbolItems(part: Part, row: BarRow, xOf: (quarters: number) => number, baseline: number): Item[] {
  return part.notes.flatMap((note): Item[] => {
    if (note.onsetQuarters < row.fromQuarters || note.onsetQuarters >= row.toQuarters) return [];
    const symbol = (text: string, x: number): Item => {
      return { kind: 'text', x, baseline, text, face: 'music', size: SYMBOL_SIZE, ink: 'text' };
    };
    const end = xOf(note.onsetQuarters + note.durationQuarters);
    const fermata = (xOf(note.onsetQuarters) + end) / 2 - FERMATA_WIDTH / 2;
    const breath = note.fermata ? Math.max(end - 3, fermata + FERMATA_WIDTH + 2) : end - 3;
    return [
      ...(note.fermata ? [symbol('\u{E4C0}', fermata)] : []),
      ...(note.breathAfter === null ? [] : [symbol(note.breathAfter === 'breath' ? '\u{E4CE}' : '\u{E4D1}', breath)]),
    ];
  });
}

function label(sheet: ReportSheet, text: string, style: TextStyle, x: number, top: number, width: number): Item[] {
  return placeText(sheet.set(text, style, width), x, top);
}
