import { isMeasured } from '../../base/index.js';
import { type Sheet, STYLES, writeParagraph } from '../../page/index.js';
import type { TakeResult } from '../../result/index.js';
import type { Part } from '../../score/index.js';
import type { Words } from '../../words/index.js';
import { type BarRow, barRows } from './bar-rows.js';
import type { Density } from './density.js';
import { levelRange, rowCurve } from './level-range.js';
import type { Loudness } from './loudness-curve.js';
import { type LevelRange, loudnessPanel, loudnessRowHeight } from './loudness-panel.js';
import { timeStretches } from './score-axis.js';
import { tempoPanel, tempoRange } from './tempo-panel.js';

const SCALE_WIDTH = 26;
const TEMPO_HEIGHT = 36;
const TEMPO_GAP = 6;
const ROW_GAP = 10;
const HEADING_GAP = 18;
/** What rounding may take, so that a picture made to fit the page still fits it. */
const SLACK = 1;
/** Heights of the loudness panel: one row takes what the page offers between these, several rows take the least. */
const LEAST_PANEL = 56;
const MOST_PANEL = 96;

/**
 * The whole take in one picture: loudness over bars against the printed dynamics, tempo over bars under it.
 *
 * @param sheet pages being filled
 * @param content the take, reviewed, the part it was reviewed against, and the loudness of the recording
 * @param density how much white the picture may take
 *
 * Source: definition.
 */
export function drawAtAGlance(
  sheet: Sheet,
  { result, part, loudness }: { readonly result: TakeResult; readonly part: Part; readonly loudness: Loudness },
  density: Density,
): void {
  const rows = barRows(part, rowWidth(sheet));
  const stretches = timeStretches(result, part);
  const curves = rows.map((row) => rowCurve(row, loudness, stretches));
  const range = levelRange(curves, result);
  const captions = captionsOf(sheet.words, result);
  const captionHeight = captions.reduce((sum, text) => sum + sheet.set(text, STYLES.soft, sheet.width).height, 0);
  const around = loudnessRowHeight(part, 0) + ('notMeasured' in result.tempo ? 0 : TEMPO_GAP + TEMPO_HEIGHT);
  const headHeight = STYLES.section.leading + captionHeight + 2;
  sheet.space(HEADING_GAP);
  sheet.ensure(headHeight + around + LEAST_PANEL + SLACK);
  const offered = sheet.room - headHeight - around - SLACK;
  const most = rows.length > 1 || density === 'tight' ? LEAST_PANEL : MOST_PANEL;
  const panelHeight = Math.max(LEAST_PANEL, Math.min(most, offered));
  const rowHeight = around + panelHeight;
  sheet.write('H2', sheet.words.glance.heading, STYLES.section);
  for (const caption of captions) writeParagraph(sheet, caption, STYLES.soft);
  sheet.space(2);
  for (const [i, row] of rows.entries()) {
    const curve = curves[i] as Float64Array;
    if (rows.length > 1 && !isHeard(curve)) {
      if (isHeard(curves[i - 1])) drawUnheard(sheet, rows.slice(i, nextHeard(curves, i)));
      continue;
    }
    sheet.ensure(rowHeight);
    drawRow(sheet, { part, result, row, curve, range, height: panelHeight });
    sheet.space(ROW_GAP);
  }
}

function isHeard(curve: Float64Array | undefined): boolean {
  return curve === undefined || curve.some((db) => !Number.isNaN(db));
}

function nextHeard(curves: readonly Float64Array[], from: number): number {
  const next = curves.findIndex((curve, i) => i > from && isHeard(curve));
  return next < 0 ? curves.length : next;
}

/** One sentence instead of rows without a curve. */
function drawUnheard(sheet: Sheet, rows: readonly BarRow[]): void {
  const [first, last] = [rows[0]?.bars[0]?.bar ?? '', rows.at(-1)?.bars.at(-1)?.bar ?? ''];
  writeParagraph(sheet, sheet.words.glance.notHeard(sheet.words.glance.bars(first, last)), STYLES.soft);
  sheet.space(ROW_GAP);
}

/** Points a row of bars may take beside its scale. Source: definition. */
export function rowWidth(sheet: Sheet): number {
  return sheet.width - SCALE_WIDTH;
}

/**
 * Loudness over one row of bars and tempo under it, at the current height.
 *
 * @param sheet pages being filled; there is room
 * @param data what to show
 * @returns x of the row's start, points
 *
 * Source: definition.
 */
export function drawRow(sheet: Sheet, data: Parameters<typeof loudnessPanel>[1]): number {
  drawLoudness(sheet, data);
  drawTempo(sheet, data.result, data.part, data.row);
  return sheet.left + SCALE_WIDTH;
}

function drawLoudness(sheet: Sheet, data: Parameters<typeof loudnessPanel>[1]): void {
  const height = loudnessRowHeight(data.part, data.height);
  const items = loudnessPanel(sheet, data, sheet.left + SCALE_WIDTH, sheet.y);
  sheet.elements.push({
    tag: 'Figure',
    alternative: loudnessInWords(sheet, data.result, data.part, data.row, data.range),
    box: [sheet.left, sheet.y, sheet.left + sheet.width, sheet.y + height],
    children: [{ page: sheet.page, items }],
  });
  sheet.y += height;
}

function drawTempo(sheet: Sheet, result: TakeResult, part: Part, row: BarRow): void {
  const { tempo } = result;
  if ('notMeasured' in tempo) return;
  sheet.y += TEMPO_GAP;
  const items = tempoPanel(
    sheet,
    tempo,
    part,
    row,
    tempoRange(tempo, part),
    sheet.left + SCALE_WIDTH,
    sheet.y,
    TEMPO_HEIGHT,
  );
  const here = tempo.bars.filter((bar) => bar.startQuarters >= row.fromQuarters && bar.startQuarters < row.toQuarters);
  const speeds = here.map((bar) => bar.quarterBpm);
  const range =
    speeds.length === 0
      ? null
      : { low: sheet.words.number(Math.min(...speeds), 0), high: sheet.words.number(Math.max(...speeds), 0) };
  sheet.elements.push({
    tag: 'Figure',
    alternative: sheet.words.glance.tempoOver(barsInWords(sheet, row), range),
    box: [sheet.left, sheet.y, sheet.left + sheet.width, sheet.y + TEMPO_HEIGHT],
    children: [{ page: sheet.page, items }],
  });
  sheet.y += TEMPO_HEIGHT;
}

/**
 * @param words in the language of the take
 * @param result the take
 * @returns what the curves show, in sentences
 *
 * Source: definition.
 */
export function captionsOf(words: Words, result: TakeResult): string[] {
  return [
    result.levels.length === 0 ? words.glance.loudnessAlone : words.glance.loudness,
    ...(result.recording.levelRiding ? [words.glance.levelRiding] : []),
    tempoCaption(words, result),
  ];
}

function tempoCaption({ glance }: Words, { tempo }: TakeResult): string {
  if ('notMeasured' in tempo) return glance.noTempo(tempo.notMeasured);
  return tempo.markedQuarterBpm === null ? glance.tempoAlone : glance.tempo;
}

function barsInWords(sheet: Sheet, row: BarRow): string {
  return sheet.words.glance.bars(row.bars[0]?.bar ?? '', row.bars.at(-1)?.bar ?? '');
}

function loudnessInWords(sheet: Sheet, result: TakeResult, part: Part, row: BarRow, range: LevelRange): string {
  const inRow = (index: number) => {
    const quarters = part.notes[index]?.onsetQuarters ?? -1;
    return quarters >= row.fromQuarters && quarters < row.toQuarters;
  };
  const levels = result.levels
    .filter((level) => inRow(level.index))
    .map(({ mark, bar, levelDb }) => {
      const level = isMeasured<number>(levelDb)
        ? sheet.words.glance.decibels(sheet.words.number(levelDb - range.referenceDb, 1))
        : sheet.words.glance.notMeasured;
      return sheet.words.glance.markIn(mark, bar, level);
    });
  const hairpins = result.hairpins
    .filter((hairpin) => inRow(hairpin.index))
    .map(({ kind, bar, toBar, riseDb }) => {
      const rise = isMeasured<number>(riseDb)
        ? sheet.words.glance.rise(sheet.words.number(riseDb, 1))
        : sheet.words.glance.notMeasured;
      return sheet.words.glance.hairpinIn(kind, bar, toBar, rise);
    });
  return sheet.words.glance.loudnessOver(barsInWords(sheet, row), [...levels, ...hairpins]);
}
