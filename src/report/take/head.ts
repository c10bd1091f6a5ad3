import { drawHeadRule, STYLES } from '../../page/index.js';
import type { TakeResult } from '../../result/index.js';
import type { ReportSheet } from '../report-sheet.js';
import { titleOf } from '../title-of.js';

/**
 * The head of a take's pages: étude, part, player, day, file.
 *
 * @param sheet pages being filled, at the top of the first
 * @param result the take
 */
export function drawHead(sheet: ReportSheet, result: TakeResult): void {
  const { take, score } = result;
  sheet.write('H1', titleOf(result), STYLES.title);
  sheet.space(2);
  const who = [take.player, score.part, take.date === null ? null : sheet.words.date(take.date)];
  const line = who.filter((text) => text !== null && text !== '').join('  ·  ');
  if (line !== '') sheet.write('P', line, STYLES.subtitle);
  sheet.write('P', sheet.words.page.fileAndLength(take.file, lengthInWords(sheet, take.durationSeconds)), STYLES.soft);
  drawHeadRule(sheet);
}

function lengthInWords(sheet: ReportSheet, seconds: number): string {
  const whole = Math.round(seconds);
  return whole < 60 ? sheet.words.page.seconds(whole) : sheet.words.page.minutes(Math.floor(whole / 60), whole % 60);
}
