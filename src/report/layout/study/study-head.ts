import type { StudyPlan } from '../../../study/index.js';
import { numberInWords } from '../../words/numbers.js';
import { drawHeadRule } from '../head-rule.js';
import type { Sheet } from '../sheet.js';
import { STYLES } from '../styles.js';
import { drawEntry } from '../take/margin-note.js';
import { barsInWords } from './places-in-words.js';

/**
 * The head of a study sheet: title, part, length, tempo and range; then what the teacher wants looked at.
 *
 * @param sheet pages being filled, at the top of the first
 * @param plan what the étude asks for
 * @param title the étude's title
 * @param firstBar printed number of the first bar
 *
 * Source: definition.
 */
export function drawStudyHead(sheet: Sheet, plan: StudyPlan, title: string, firstBar: string): void {
  sheet.write('H1', title, STYLES.title);
  sheet.space(2);
  sheet.write('P', ['Study sheet', plan.partName].filter(Boolean).join('  ·  '), STYLES.subtitle);
  for (const line of factsOf(plan, firstBar)) sheet.write('P', line, STYLES.soft);
  drawHeadRule(sheet);
  drawWatch(sheet, plan);
}

function factsOf({ bars, seconds, range, tempo }: StudyPlan, firstBar: string): string[] {
  const bpm = numberInWords(tempo.quarterBpm, 1);
  const from = numberInWords(tempo.lowestQuarterBpm, 0);
  const to = numberInWords(tempo.highestQuarterBpm, 0);
  const speed = tempo.marked
    ? `at ${bpm} quarter notes a minute; ${from} to ${to} is fine`
    : `if ${bpm} quarter notes a minute are assumed: no tempo is marked`;
  return [
    `${bars} ${bars === 1 ? 'bar' : 'bars'}, about ${lengthInWords(seconds)} ${speed}.`,
    `Written range from ${range.lowest.name} (bar ${range.lowest.bar}) up to ${range.highest.name} (bar ${range.highest.bar}).${firstBar === '0' ? ' Bar 0 is the pick-up.' : ''}`,
  ];
}

function lengthInWords(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole} seconds`;
  return `${Math.floor(whole / 60)} min${whole % 60 === 0 ? '' : ` ${whole % 60} s`}`;
}

function drawWatch(sheet: Sheet, { watch }: StudyPlan): void {
  if (watch.length === 0) return;
  sheet.space(10);
  sheet.ensure(STYLES.section.leading + 30);
  sheet.write('H2', 'Your teacher asks you to watch', STYLES.section);
  sheet.space(3);
  for (const { bar, toBar, reason } of watch) {
    const text = reason === '' ? 'Look at this place with care.' : reason;
    drawEntry(sheet, { margin: barsInWords(bar, toBar), paragraphs: [{ tag: 'P', text, style: STYLES.body }] });
    sheet.space(2);
  }
}
