import { isMeasured } from '../../base/index.js';
import type { TakeResult } from '../../result/index.js';
import { type Part, QUARTERS_OF_BEAT, tempoBeat } from '../../score/index.js';
import type { BarRow } from '../bars/bar-rows.js';
import type { ReportSheet } from '../report-sheet.js';
import { inBeats } from './in-beats.js';
import { type LevelRange, loudnessPanel, loudnessRowHeight } from './loudness-panel.js';
import { SCALE_WIDTH, TEMPO_GAP, TEMPO_HEIGHT } from './row-sizes.js';
import { tempoPanel, tempoRange } from './tempo-panel.js';

/**
 * Loudness over one row of bars and tempo under it, at the current height.
 *
 * @param sheet pages being filled; there is room
 * @param data what to show
 * @returns x of the row's start, points
 */
export function drawRow(sheet: ReportSheet, data: Parameters<typeof loudnessPanel>[1]): number {
  drawLoudness(sheet, data);
  drawTempo(sheet, data.result, data.part, data.row);
  return sheet.left + SCALE_WIDTH;
}

function drawLoudness(sheet: ReportSheet, data: Parameters<typeof loudnessPanel>[1]): void {
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

function drawTempo(sheet: ReportSheet, result: TakeResult, part: Part, row: BarRow): void {
  if ('notMeasured' in result.tempo) return;
  const beat = tempoBeat(part);
  const { tempo, tempos } = inBeats(result.tempo, part.tempos, QUARTERS_OF_BEAT[beat]);
  const counted = { ...part, tempos };
  sheet.y += TEMPO_GAP;
  const items = tempoPanel(
    sheet,
    tempo,
    counted,
    row,
    tempoRange(tempo, counted),
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
    alternative: sheet.words.glance.tempoOver(barsInWords(sheet, row), range, beat),
    box: [sheet.left, sheet.y, sheet.left + sheet.width, sheet.y + TEMPO_HEIGHT],
    children: [{ page: sheet.page, items }],
  });
  sheet.y += TEMPO_HEIGHT;
}

function barsInWords(sheet: ReportSheet, row: BarRow): string {
  return sheet.words.glance.bars(row.bars[0]?.bar ?? '', row.bars.at(-1)?.bar ?? '');
}

function loudnessInWords(sheet: ReportSheet, result: TakeResult, part: Part, row: BarRow, range: LevelRange): string {
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
