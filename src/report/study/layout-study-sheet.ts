import type { Language } from '../../base/index.js';
import type { Engrave } from '../../engrave/index.js';
import { type Drawing, type PaperSize, packagesWanting, Sheet, STYLES, type Typesetter } from '../../page/index.js';
import type { Part } from '../../score/index.js';
import type { StudyPlan } from '../../study/index.js';
import { wordsIn } from '../../words/index.js';
import { drawBreaths } from './breaths.js';
import { drawDynamics } from './dynamics.js';
import { drawEtude } from './etude.js';
import { drawCounting } from './playing.js';
import { drawPractice } from './practice.js';
import { drawStudyHead } from './study-head.js';
import { drawTonguing } from './tonguing.js';
import { drawTraps } from './traps.js';

/** Everything a study sheet is made from. */
export interface StudySheetContent {
  readonly plan: StudyPlan;
  /** the part as the teacher wants it, for the bars under the dynamics */
  readonly part: Part;
  readonly paper: PaperSize;
  /** English when it is left out */
  readonly language?: Language | undefined;
}

/**
 * Lays out a study sheet.
 *
 * @param content the plan and its part
 * @param typesetter widths and coverage of the faces
 * @param engrave engraves bars of the part
 * @returns the pages as plain data
 */
export function layoutStudySheet(content: StudySheetContent, typesetter: Typesetter, engrave: Engrave): Drawing {
  const { plan, part, paper, language = 'en' } = content;
  const words = wordsIn(language).study;
  const { page } = words;
  const title = plan.title.trim() === '' ? page.untitled : plan.title;
  const foot = [title, page.kind].join('  ·  ');
  const sheet = new Sheet({ typesetter, paper, language, title: page.documentTitle(title), foot });
  drawStudyHead(sheet, plan, title, part.bars[0]?.bar ?? '', words);
  drawEtude(sheet, plan, part, engrave, words);
  drawTraps(sheet, plan, engrave, words);
  drawBreaths(sheet, plan, words);
  drawDynamics(sheet, plan, part, words);
  drawTonguing(sheet, plan, part, engrave, words);
  drawCounting(sheet, plan, words);
  drawPractice(sheet, plan, words);
  if (sheet.lettersMissing !== '') {
    sheet.write('P', page.lettersMissing(packagesWanting(sheet.lettersMissing)), STYLES.small);
  }
  return sheet.finish();
}
