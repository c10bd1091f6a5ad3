import { isMeasured } from '../../../base/index.js';
import type { Criterion } from '../../../judge/index.js';
import { criterionSchema } from '../../result/take-result-schema.js';
import type { SectionResult, SectionTake } from '../../section/section-result-schema.js';
import { dateInWords } from '../../words/dates.js';
import { criterionInWords } from '../../words/finding-words.js';
import { numberInWords } from '../../words/numbers.js';
import { SECTION_WORDS } from '../../words/section-words.js';
import type { Sheet } from '../sheet.js';
import { STYLES } from '../styles.js';
import { type Cell, type Column, drawTable } from '../table.js';
import { takeLabels } from './take-labels.js';

const NONE = '–';

const WIDTHS: Record<Criterion, number> = {
  notes: 38,
  rhythm: 44,
  tempo: 40,
  dynamics: 52,
  articulation: 60,
  breath: 40,
  intonation: 56,
  continuity: 54,
};

/**
 * Who needs what: a row a take, a column a criterion.
 *
 * @param sheet pages being filled
 * @param section the section's document
 *
 * Source: definition.
 */
export function drawTakesTable(sheet: Sheet, section: SectionResult): void {
  if (section.takes.length === 0) return;
  const labels = takeLabels(section.takes).map((label, i) => {
    const take = section.takes[i];
    return section.score === null && take !== undefined ? SECTION_WORDS.takeOf(label, take.score) : label;
  });
  sheet.space(16);
  sheet.ensure(STYLES.section.leading + 70);
  sheet.write('H2', 'Who needs what', STYLES.section);
  const note =
    'Under each criterion: findings to fix / to watch. As written: notes, of those in the part. Beats are quarters. Cents are from A = 440 Hz.';
  sheet.write('P', note, STYLES.soft);
  sheet.space(4);
  drawTable(
    sheet,
    columnsFor(sheet),
    section.takes.map((take, i) => row(take, labels[i] as string)),
  );
}

function columnsFor(sheet: Sheet): Column[] {
  const facts: Column[] = [
    { head: 'Take', width: 0, namesRow: true },
    { head: 'Day', width: 78 },
    { head: 'As written', width: 52, align: 'right' },
    { head: 'Beats a minute', width: 44, align: 'right' },
    { head: 'Cents sharp', width: 42, align: 'right' },
  ];
  const criteria = criterionSchema.options.map(
    (criterion): Column => ({
      head: criterionInWords(criterion),
      width: WIDTHS[criterion],
      align: 'right',
    }),
  );
  const columns = [...facts, ...criteria];
  const taken = columns.reduce((sum, column) => sum + column.width, 0);
  return columns.map((column) => (column.width === 0 ? { ...column, width: sheet.width - taken + 9 } : column));
}

function row(take: SectionTake, label: string): Cell[] {
  return [
    label,
    take.date === null ? NONE : dateInWords(take.date),
    isMeasured<number>(take.notesAsWritten) ? `${take.notesAsWritten} / ${take.notesInPart}` : NONE,
    isMeasured<number>(take.playedQuarterBpm) ? numberInWords(take.playedQuarterBpm, 0) : NONE,
    isMeasured<number>(take.centsFromA440) ? signed(take.centsFromA440) : NONE,
    ...criterionSchema.options.map((criterion): Cell => {
      const line = take.criteria.find((one) => one.criterion === criterion);
      if (line === undefined || line.fix + line.watch === 0) return NONE;
      return { text: `${line.fix} / ${line.watch}`, style: line.fix > 0 ? STYLES.cellStrong : STYLES.cell };
    }),
  ];
}

function signed(cents: number): string {
  const text = numberInWords(cents, 0);
  return cents > 0 && text !== '0' ? `+${text}` : text;
}
