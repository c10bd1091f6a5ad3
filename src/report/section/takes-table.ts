import { isMeasured } from '../../base/index.js';
import { type Cell, type Column, drawTable, STYLES } from '../../page/index.js';
import { criterionSchema, type SectionResult, type SectionTake } from '../../result/index.js';
import { QUARTERS_OF_BEAT } from '../../score/index.js';
import { type SectionWords, wordsIn } from '../../words/index.js';
import type { ReportSheet } from '../report-sheet.js';
import { scoreNames } from './score-names.js';
import { takeLabels } from './take-labels.js';

/** The white beside a head. */
const GAP = 10;
/** Where nothing was found the eye passes on. */
const QUIET = { ...STYLES.cell, ink: 'soft' } as const;

/** Points a column takes, more where its head is wider: room for “10 / 10”. */
const NARROWEST = 38;

/**
 * Who needs what: a row a take, a column a criterion.
 *
 * @param sheet pages being filled
 * @param section the section's document, with the takes to show
 * @param older how many takes are not shown
 */
export function drawTakesTable(sheet: ReportSheet, section: SectionResult, older: number): void {
  if (section.takes.length === 0) return;
  const words = wordsIn(sheet.language).section;
  const nameOf = scoreNames(section);
  const labels = takeLabels(section.takes, words).map((label, i) => {
    const take = section.takes[i];
    return section.score === null && take !== undefined ? words.takeOf(label, nameOf(take.score)) : label;
  });
  sheet.space(16);
  sheet.ensure(STYLES.section.leading + 82);
  sheet.write('H2', words.needs, STYLES.section);
  if (older > 0) sheet.write('P', words.older(older), STYLES.soft);
  const beats = new Set(section.takes.flatMap(({ countedIn }) => countedIn ?? []));
  for (const note of words.needsNotes([...beats])) sheet.write('P', note, STYLES.soft);
  sheet.space(4);
  drawTable(
    sheet,
    columnsFor(sheet, words),
    section.takes.map((take, i) => row(sheet, words, take, labels[i] as string)),
  );
}

function columnsFor(sheet: ReportSheet, words: SectionWords): Column[] {
  const facts: Column[] = [
    { head: words.take, width: 0, namesRow: true },
    { head: words.day, width: 78 },
    { head: words.asWritten, width: 52, align: 'right' },
    { head: words.beats, width: 44, align: 'right' },
    { head: words.cents, width: 42, align: 'right' },
  ];
  const criteria = criterionSchema.options.map(
    (criterion): Column => ({
      head: sheet.words.criterion(criterion),
      width: Math.max(NARROWEST, wordWidth(sheet, sheet.words.criterion(criterion)) + GAP),
      align: 'right',
    }),
  );
  const columns = [...facts, ...criteria];
  const taken = columns.reduce((sum, column) => sum + column.width, 0);
  return columns.map((column) => (column.width === 0 ? { ...column, width: sheet.width - taken + 9 } : column));
}

const wordWidth = (sheet: ReportSheet, word: string) =>
  sheet.typesetter.widthOf(word, STYLES.head.face, STYLES.head.size);

function row(sheet: ReportSheet, words: SectionWords, take: SectionTake, label: string): Cell[] {
  const none = words.notJudged;
  const { notesAsWritten: right, playedQuarterBpm: beats, centsFromA440: cents } = take;
  return [
    label,
    take.date === null ? none : sheet.words.date(take.date),
    isMeasured<number>(right) ? words.notesOf(right, take.notesInPart) : none,
    isMeasured<number>(beats) ? sheet.words.number(beats / QUARTERS_OF_BEAT[take.countedIn ?? 'quarter'], 0) : none,
    isMeasured<number>(cents) ? signed(sheet, cents) : none,
    ...criterionSchema.options.map((criterion): Cell => {
      const line = take.criteria.find((one) => one.criterion === criterion);
      if (line === undefined) return take.notPlayed?.includes(criterion) ? words.notPlayed : none;
      if (line.fix + line.watch === 0) return { text: words.nothingFound, style: QUIET };
      const text = words.findings(line.fix, line.watch);
      return { text, style: line.fix > 0 ? STYLES.cellStrong : STYLES.cell };
    }),
  ];
}

function signed(sheet: ReportSheet, cents: number): string {
  const text = sheet.words.number(cents, 0);
  return cents > 0 && text !== '0' ? `+${text}` : text;
}
