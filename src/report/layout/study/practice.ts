import type { StudyPlan } from '../../../study/index.js';
import type { Sheet } from '../sheet.js';
import { STYLES } from '../styles.js';
import { drawEntry } from '../take/margin-note.js';

const MOST_PROBLEMS = 20;

/**
 * How to practise; what a copyist should look at; how not to hurt oneself.
 *
 * @param sheet pages being filled
 * @param plan what the étude asks for
 *
 * Source: definition.
 */
export function drawPractice(sheet: Sheet, { practice, problems, cautions }: StudyPlan): void {
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + 60);
  sheet.write('H2', 'How to practise it', STYLES.section);
  sheet.space(3);
  for (const [i, { title, text }] of practice.entries()) {
    drawEntry(sheet, { margin: `${i + 1}  ${title}`, paragraphs: [{ tag: 'P', text, style: STYLES.body }] });
    sheet.space(4);
  }
  if (problems.length > 0) {
    sheet.space(10);
    sheet.ensure(STYLES.section.leading + 30);
    sheet.write('H2', 'For the teacher: to check in the part', STYLES.section);
    sheet.space(2);
    for (const problem of problems.slice(0, MOST_PROBLEMS)) sheet.write('P', problem, STYLES.body);
    if (problems.length > MOST_PROBLEMS) {
      sheet.write('P', `And ${problems.length - MOST_PROBLEMS} more.`, STYLES.body);
    }
  }
  sheet.space(10);
  sheet.ensure(STYLES.section.leading + cautions.length * STYLES.soft.leading);
  sheet.write('H2', 'Practise with care', STYLES.section);
  sheet.space(2);
  for (const caution of cautions) sheet.write('P', caution, STYLES.soft);
}
