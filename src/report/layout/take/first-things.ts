import type { ResultFinding, TakeResult } from '../../result/take-result-schema.js';
import { wordsFor } from '../../words/finding-words.js';
import { measuredInWords } from '../../words/numbers.js';
import { placeInWords } from '../../words/place.js';
import type { Sheet } from '../sheet.js';
import { STYLES } from '../styles.js';
import { drawEntry, type Entry, entryHeight, type Paragraph } from './margin-note.js';

const MOST = 3;

/**
 * The first three things to work on: where, what, measured, why and how to practise.
 *
 * @param sheet pages being filled
 * @param result the take, reviewed
 * @returns the findings told here
 *
 * Source: definition.
 */
export function drawFirstThings(sheet: Sheet, result: TakeResult): ResultFinding[] {
  const first = result.findings
    .filter((finding) => finding.weight !== 'well' && finding.ledByBar === undefined)
    .slice(0, MOST);
  const entries = first.map(entryOf);
  sheet.space(13);
  const needed = entries[0] === undefined ? 3 * STYLES.body.leading : entryHeight(sheet, entries[0]);
  sheet.ensure(Math.min(sheet.fullHeight, STYLES.section.leading + 8 + needed));
  sheet.write('H2', headingFor(first.length), STYLES.section);
  if (first.length === 0) {
    const text =
      'Nothing stood out clearly enough to name. Listen to the take yourself with the part in front of you: your own ear, and your teacher’s, hear more than measurements do.';
    sheet.write('P', text, STYLES.body);
  }
  for (const entry of entries) {
    sheet.space(8);
    drawEntry(sheet, entry);
  }
  return first;
}

function headingFor(count: number): string {
  if (count === 0) return 'What to work on';
  return (
    ['The first thing to work on', 'The first two things to work on', 'The first three things to work on'][count - 1] ??
    ''
  );
}

function entryOf(finding: ResultFinding, position: number): Entry {
  const words = wordsFor(finding);
  const paragraphs: Paragraph[] = [
    { tag: 'H3', text: words.headline, style: STYLES.headline },
    { tag: 'P', text: finding.text, style: STYLES.body },
  ];
  if (finding.measured !== undefined) {
    const text = `Measured: ${measuredInWords(finding.measured)}.`;
    paragraphs.push({ tag: 'P', text, style: STYLES.soft, before: 1 });
  }
  paragraphs.push({ tag: 'P', text: words.why, style: STYLES.body, before: 1 });
  if (finding.practice !== '') {
    paragraphs.push({ tag: 'P', text: `To practise: ${finding.practice}`, style: STYLES.practice, before: 1 });
  }
  return {
    numeral: String(position + 1),
    margin: placeInWords(finding),
    ...(finding.weight === 'watch' ? { marginNote: 'worth a listen' } : {}),
    paragraphs,
  };
}
