import { type Item, lineAcross, lineThrough, placeText, type Sheet, STYLES } from '../../page/index.js';
import type { Part } from '../../score/index.js';
import type { StudyPlan } from '../../study/index.js';
import { barAxis } from '../bars/bar-axis.js';
import { type BarRow, numberedBars } from '../bars/bar-rows.js';
import { DYNAMICS_LANE_HEIGHT, dynamicsLane } from '../bars/dynamics-lane.js';
import { cutLine, type DynamicsLine, levelOf } from './dynamics-line.js';

/** Room for the scale to the left of the panel, points. */
export const SCALE_WIDTH = 26;

const BREATHS_HEIGHT = 15;
const PANEL_HEIGHT = 46;
const NUMBERS_HEIGHT = 11;
/** Comma above the staff. Source: SMuFL 1.4, Holds and pauses. */
const COMMA = '\u{E4CE}';
const FERMATA = '\u{E4C0}';
const FERMATA_SIZE = 12;
/** A breath after a hold stands clear of its sign, points. */
const AFTER_FERMATA = 1;
const COMMA_SIZES = { full: 17, quick: 10 } as const;
/** Letters of dynamic marks. Source: SMuFL 1.4, Dynamics. */
const LETTERS: Readonly<Record<string, string>> = { p: '\u{E520}', m: '\u{E521}', f: '\u{E522}' };

/** What one row shows. */
export interface DynamicsRow {
  readonly plan: StudyPlan;
  readonly part: Part;
  readonly row: BarRow;
  readonly line: DynamicsLine;
}

/** Height of a row, points. */
export function dynamicsPanelHeight(): number {
  return BREATHS_HEIGHT + PANEL_HEIGHT + NUMBERS_HEIGHT + DYNAMICS_LANE_HEIGHT;
}

/**
 * One row of the plan of loudness: the line, breaths and fermatas above, bars and the printed marks below.
 *
 * @param sheet for widths
 * @param data what to show
 * @param left x of the row's start, points; the scale stands to the left of it
 * @param top y of the row's upper edge, points
 * @returns what to draw
 */
export function dynamicsPanel(sheet: Sheet, data: DynamicsRow, left: number, top: number): Item[] {
  const { plan, part, row, line } = data;
  const xOf = (quarters: number): number => left + (quarters - row.fromQuarters) * row.scale;
  const panelTop = top + BREATHS_HEIGHT;
  const foot = panelTop + PANEL_HEIGHT;
  const levels = line.map(([, level]) => level);
  const [lowest, highest] = [Math.min(...levels) - 0.6, Math.max(...levels) + 0.6];
  const yOf = (level: number): number => panelTop + ((highest - level) / (highest - lowest)) * PANEL_HEIGHT;
  const points = cutLine(line, row.fromQuarters, row.toQuarters).map(([q, level]) => [xOf(q), yOf(level)] as const);
  return [
    ...scale(sheet, plan, left, xOf(row.toQuarters), yOf),
    ...(points.length > 1 ? [{ kind: 'path', path: lineThrough(points), stroke: 'accent', width: 1.6 } as const] : []),
    ...barLines(sheet, row, xOf, foot),
    ...breathItems(plan, row, xOf, panelTop - 3),
    ...fermataItems(part, row, xOf, panelTop - 2),
    ...dynamicsLane(sheet.typesetter, part, row, left, foot + NUMBERS_HEIGHT),
  ];
}

/** A fine line for each level that is marked, its name at the left. */
function scale(
  sheet: Sheet,
  { levels }: StudyPlan,
  left: number,
  right: number,
  yOf: (level: number) => number,
): Item[] {
  return [...new Set(levels.map(({ mark }) => mark))].flatMap((mark): Item[] => {
    const y = yOf(levelOf(mark));
    const text = [...mark].map((letter) => LETTERS[letter] ?? '').join('');
    const width = sheet.typesetter.widthOf(text, 'music', 11);
    const path = lineAcross(y, left, right);
    return [
      { kind: 'path', path, stroke: 'rule', width: 0.35 },
      { kind: 'text', x: left - 7 - width, baseline: y + 2, text, face: 'music', size: 11, ink: 'soft' },
    ];
  });
}

function barLines(sheet: Sheet, row: BarRow, xOf: (quarters: number) => number, foot: number): Item[] {
  const numbers = numberedBars(row, 17).flatMap((bar) =>
    placeText(sheet.set(bar.bar, STYLES.axis, 40), xOf(bar.startQuarters) + 1.5, foot + 1.5),
  );
  return [{ kind: 'path', path: barAxis(row, xOf, foot), stroke: 'soft', width: 0.5 }, ...numbers];
}

function breathItems({ breaths }: StudyPlan, row: BarRow, xOf: (q: number) => number, baseline: number): Item[] {
  return breaths
    .filter(({ atQuarters }) => atQuarters > row.fromQuarters && atQuarters <= row.toQuarters)
    .map(({ atQuarters, kind, takenFrom }): Item => {
      const size = COMMA_SIZES[kind];
      const x = xOf(atQuarters) + (takenFrom === 'fermata' ? AFTER_FERMATA : -size / 6);
      return { kind: 'text', x, baseline, text: COMMA, face: 'music', size, ink: 'text' };
    });
}

function fermataItems(part: Part, row: BarRow, xOf: (q: number) => number, baseline: number): Item[] {
  return part.notes
    .filter(({ fermata, onsetQuarters: at }) => fermata && at >= row.fromQuarters && at < row.toQuarters)
    .map(({ onsetQuarters, durationQuarters }): Item => {
      const middle = (xOf(onsetQuarters) + xOf(onsetQuarters + durationQuarters)) / 2;
      const x = middle - 0.3 * FERMATA_SIZE;
      return { kind: 'text', x, baseline, text: FERMATA, face: 'music', size: FERMATA_SIZE, ink: 'text' };
    });
}
