import type { Part } from '../../../score/index.js';
import type { StudyPlan } from '../../../study/index.js';
import type { Engrave } from '../../engrave/engrave-excerpt.js';
import { LETTERS_MISSING_NOTE } from '../../words/small-print-words.js';
import type { Drawing, Typesetter } from '../drawing.js';
import { type PaperSize, Sheet } from '../sheet.js';
import { STYLES } from '../styles.js';
import { drawBreaths } from './breaths.js';
import { drawDynamics } from './dynamics.js';
import { drawCounting, drawTonguing } from './playing.js';
import { drawPractice } from './practice.js';
import { drawStudyHead } from './study-head.js';
import { drawTraps } from './traps.js';

/** Everything a study sheet is made from. */
export interface StudySheetContent {
  readonly plan: StudyPlan;
  /** the part as the teacher wants it, for the bars under the dynamics */
  readonly part: Part;
  readonly paper: PaperSize;
}

/**
 * Lays out a study sheet.
 *
 * @param content the plan and its part
 * @param typesetter widths and coverage of the faces
 * @param engrave engraves bars of the part
 * @returns the pages as plain data
 *
 * Source: definition.
 */
export function layoutStudySheet(content: StudySheetContent, typesetter: Typesetter, engrave: Engrave): Drawing {
  const { plan, part, paper } = content;
  const title = plan.title.trim() === '' ? 'Étude' : plan.title;
  const foot = [title, 'Study sheet'].join('  ·  ');
  const sheet = new Sheet({ typesetter, paper, title: `${title} – Study sheet`, foot });
  drawStudyHead(sheet, plan, title, part.bars[0]?.bar ?? '');
  drawTraps(sheet, plan, engrave);
  drawBreaths(sheet, plan);
  drawDynamics(sheet, plan, part);
  drawTonguing(sheet, plan);
  drawCounting(sheet, plan);
  drawPractice(sheet, plan);
  if (sheet.lettersMissing) sheet.write('P', LETTERS_MISSING_NOTE, STYLES.small);
  return sheet.finish();
}
