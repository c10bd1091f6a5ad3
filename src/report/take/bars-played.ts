import { STYLES, writeParagraph } from '../../page/index.js';
import type { TakeResult } from '../../result/index.js';
import type { ReportSheet } from '../report-sheet.js';

/**
 * The headline of a take in which not all was played, or something twice where that is not judged; nothing for any other.
 *
 * @param sheet pages being filled, after the head
 * @param result the take
 */
export function drawBarsPlayed(sheet: ReportSheet, { played, criteria, score }: TakeResult): void {
  if (played === undefined) return;
  const silent = criteria.some(({ criterion, judged }) => criterion === 'continuity' && judged === false);
  const restarts = silent || played.played < played.of ? played.restarts : 0;
  if (played.played === played.of && restarts === 0 && played.ending === 'whole') return;
  const points = criteria.some((line) => line.points !== undefined);
  sheet.space(8);
  const facts = { ...played, restarts, points, repeats: played.of !== score.bars };
  writeParagraph(sheet, sheet.words.page.partly(facts), STYLES.headline);
}
