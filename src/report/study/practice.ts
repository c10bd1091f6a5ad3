import { type Sheet, STYLES } from '../../page/index.js';
import type { StudyPlan } from '../../study/index.js';
import type { StudyWords } from '../../words/index.js';
import { drawEntry } from '../margin-note.js';

const MOST_PROBLEMS = 20;

/**
 * How to practise; what a copyist should look at; how not to hurt oneself.
 *
 * @param sheet pages being filled
 * @param plan what the étude asks for
 * @param words what the sheet says
 */
export function drawPractice(sheet: Sheet, { practice, problems }: StudyPlan, words: StudyWords): void {
  const { page, plan } = words;
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + 60);
  sheet.write('H2', page.practice, STYLES.section);
  sheet.space(3);
  for (const [i, step] of practice.entries()) {
    const text = plan.practice(step);
    const margin = `${i + 1}  ${plan.practiceTitle(step)}`;
    drawEntry(sheet, { margin, paragraphs: [{ tag: 'P', text, style: STYLES.body }] });
    sheet.space(4);
  }
  if (problems.length > 0) drawProblems(sheet, problems, words);
  sheet.space(10);
  sheet.ensure(STYLES.section.leading + plan.cautions.length * STYLES.soft.leading);
  sheet.write('H2', page.care, STYLES.section);
  sheet.space(2);
  for (const caution of plan.cautions) sheet.write('P', caution, STYLES.soft);
}

function drawProblems(sheet: Sheet, problems: StudyPlan['problems'], { page, plan }: StudyWords): void {
  sheet.space(10);
  sheet.ensure(STYLES.section.leading + 30);
  sheet.write('H2', page.problems.heading, STYLES.section);
  sheet.space(2);
  for (const problem of problems.slice(0, MOST_PROBLEMS)) sheet.write('P', plan.problem(problem), STYLES.body);
  const more = problems.length - MOST_PROBLEMS;
  if (more > 0) sheet.write('P', page.problems.more(more), STYLES.body);
}
