import { drawTable, STYLES } from '../../page/index.js';
import type { ProgressResult } from '../../weeks/index.js';
import { wordsIn } from '../../words/index.js';
import type { ReportSheet } from '../report-sheet.js';

const FILE_WIDTH = 260;

/**
 * What could not be read, and what was counted once.
 *
 * @param sheet pages being filled
 * @param progress the document
 */
export function drawAlsoFound(sheet: ReportSheet, progress: ProgressResult): void {
  drawFailures(sheet, progress);
  const words = wordsIn(sheet.language).weeks;
  const versions = words.toolVersions(progress.toolVersions);
  const texts = [
    ...(versions === null ? [] : [versions]),
    ...progress.repeated.map((one) => words.repeated(one.counted, one.passedOver, one.differ)),
  ];
  if (texts.length === 0) return;
  heading(sheet, words.labels.alsoFound);
  for (const text of texts) sheet.write('P', text, STYLES.body);
}

function heading(sheet: ReportSheet, text: string): void {
  sheet.space(16);
  sheet.ensure(STYLES.section.leading + 60);
  sheet.write('H2', text, STYLES.section);
  sheet.space(3);
}

/**
 * Results that stand with nobody: no name, or no day. A reader has to know of them before any number.
 *
 * @param sheet pages being filled
 * @param progress the document
 */
export function drawUnplaced(sheet: ReportSheet, { unplaced, blind }: ProgressResult): void {
  if (unplaced.length === 0) return;
  const said = wordsIn(sheet.language).weeks;
  const words = said.labels;
  heading(sheet, words.unplaced);
  sheet.write('P', words.unplacedNote, STYLES.soft);
  if (blind !== undefined && blind.apart.length > 0) sheet.write('P', said.numbersApart(blind.apart), STYLES.soft);
  sheet.space(4);
  drawTable(
    sheet,
    [
      { head: words.file, width: FILE_WIDTH, namesRow: true },
      { head: words.player, width: 150 },
      { head: words.days, width: 110 },
      { head: words.outcome, width: sheet.width - FILE_WIDTH - 260 + 9 },
    ],
    unplaced.map(({ file, player, date, outcome }) => [
      file,
      player ?? words.unknown,
      date === null ? words.unknown : sheet.words.date(date),
      words.outcomes[outcome],
    ]),
  );
}

function drawFailures(sheet: ReportSheet, { failures }: ProgressResult): void {
  if (failures.length === 0) return;
  const words = wordsIn(sheet.language).weeks.labels;
  heading(sheet, words.failures);
  drawTable(
    sheet,
    [
      { head: words.file, width: FILE_WIDTH, namesRow: true },
      { head: words.whatNeeded, width: sheet.width - FILE_WIDTH + 9 },
    ],
    failures.map(({ file, message }) => [file, message]),
  );
}
