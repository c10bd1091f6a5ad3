import { drawHeadRule, type Sheet, STYLES } from '../../page/index.js';
import type { StudyPlan } from '../../study/index.js';
import type { StudyWords } from '../../words/index.js';
import { drawEntry } from '../margin-note.js';

/**
 * The head of a study sheet: title, part, length, tempo and range; then what the teacher asks for and wants looked at.
 *
 * @param sheet pages being filled, at the top of the first
 * @param plan what the étude asks for
 * @param title the étude's title
 * @param firstBar printed number of the first bar
 * @param words what the sheet says
 */
export function drawStudyHead(sheet: Sheet, plan: StudyPlan, title: string, firstBar: string, words: StudyWords): void {
  const { page } = words;
  sheet.write('H1', title, STYLES.title);
  sheet.space(2);
  sheet.write('P', [page.kind, plan.partName].filter(Boolean).join('  ·  '), STYLES.subtitle);
  const { bars, seconds, range, tempo } = plan;
  sheet.write('P', page.length({ bars, seconds, ...tempo }), STYLES.soft);
  if (range !== null) sheet.write('P', page.range(range.lowest, range.highest, firstBar === '0'), STYLES.soft);
  drawHeadRule(sheet);
  drawDemands(sheet, plan, words);
  drawWatch(sheet, plan, words);
}

function drawDemands(sheet: Sheet, { demands }: StudyPlan, { page, plan }: StudyWords): void {
  if (demands.length === 0) return;
  sheet.space(10);
  sheet.ensure(STYLES.section.leading + 30);
  sheet.write('H2', page.demands, STYLES.section);
  sheet.space(3);
  for (const demand of demands) {
    const paragraphs = [{ tag: 'P', text: plan.demand(demand), style: STYLES.body }] as const;
    drawEntry(sheet, { margin: plan.demandTitle(demand), paragraphs });
    sheet.space(2);
  }
}

function drawWatch(sheet: Sheet, { watch }: StudyPlan, { page, places }: StudyWords): void {
  if (watch.length === 0) return;
  sheet.space(10);
  sheet.ensure(STYLES.section.leading + 30);
  sheet.write('H2', page.watch.heading, STYLES.section);
  sheet.space(3);
  for (const { bar, toBar, reason } of watch) {
    const text = reason === '' ? page.watch.noReason : reason;
    drawEntry(sheet, { margin: places.bars(bar, toBar), paragraphs: [{ tag: 'P', text, style: STYLES.body }] });
    sheet.space(2);
  }
}
