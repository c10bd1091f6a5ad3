import type { SectionResult } from '../../section/section-result-schema.js';
import { SECTION_WORDS } from '../../words/section-words.js';
import type { Drawing, Typesetter } from '../drawing.js';
import { drawHeadRule } from '../head-rule.js';
import { type PaperSize, Sheet } from '../sheet.js';
import { drawSmallPrint } from '../small-print.js';
import { STYLES } from '../styles.js';
import { drawTable } from '../table.js';
import { drawRehearseTable } from './rehearse-table.js';
import { drawTakesTable } from './takes-table.js';
import { drawTroubleMap } from './trouble-map.js';

/**
 * Lays out the director's sheet for all takes of a review.
 *
 * @param section the section's document
 * @param paper paper, taken in landscape
 * @param typesetter widths and coverage of the faces
 * @returns the pages as plain data
 *
 * Source: definition.
 */
export function layoutSectionSheet(section: SectionResult, paper: PaperSize, typesetter: Typesetter): Drawing {
  const title = titleOf(section);
  const sheet = new Sheet({
    typesetter,
    paper,
    landscape: true,
    title: `${title} – section sheet`,
    foot: `Section sheet  ·  ${title}`,
  });
  sheet.write('H1', title, STYLES.title);
  sheet.space(2);
  sheet.write('P', factsOf(section), STYLES.subtitle);
  drawHeadRule(sheet);
  drawRehearseTable(sheet, section);
  drawTakesTable(sheet, section);
  drawTroubleMap(sheet, section);
  drawFailures(sheet, section);
  drawSmallPrint(sheet, false);
  return sheet.finish();
}

function titleOf({ score }: SectionResult): string {
  if (score === null) return SECTION_WORDS.severalScores;
  return score.title.trim() === '' ? score.file : score.title;
}

function factsOf(section: SectionResult): string {
  const { takes, failures, scores } = section;
  const reviewed = takes.filter((take) => take.outcome === 'reviewed').length;
  const others = takes.length - reviewed;
  return [
    `Section sheet, ${[...new Set(scores.map((score) => score.part))].join(', ')}`,
    `${counted(takes.length + failures.length, 'take')} from ${counted(section.players, 'player')}`,
    `${reviewed} reviewed`,
    ...(others > 0 ? [`${others} not reviewed`] : []),
    ...(failures.length > 0 ? [`${failures.length} could not be read`] : []),
  ].join('  ·  ');
}

const counted = (count: number, thing: string) => `${count} ${thing}${count === 1 ? '' : 's'}`;

function drawFailures(sheet: Sheet, section: SectionResult): void {
  if (section.failures.length === 0) return;
  sheet.space(16);
  sheet.ensure(STYLES.section.leading + 50);
  sheet.write('H2', 'Takes that could not be read', STYLES.section);
  sheet.space(4);
  drawTable(
    sheet,
    [
      { head: 'File', width: 230, namesRow: true },
      { head: 'What was found, and what is needed', width: sheet.width - 230 + 9 },
    ],
    section.failures.map(({ file, message }) => [file, message]),
  );
}
