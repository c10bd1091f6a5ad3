import { type Sheet, STYLES } from '../../page/index.js';
import type { ResultFinding, TakeResult } from '../../result/index.js';
import { drawEntry } from './margin-note.js';

const MOST = 3;

/**
 * Two or three things that went well.
 *
 * @param sheet pages being filled
 * @param result the take, reviewed
 *
 * Source: definition.
 */
export function drawWentWell(sheet: Sheet, result: TakeResult): void {
  const praise = result.findings.filter((finding) => finding.weight === 'well').slice(0, MOST);
  if (praise.length === 0) return;
  sheet.space(10);
  sheet.ensure(STYLES.section.leading + 2 * STYLES.body.leading);
  sheet.write('H2', sheet.words.page.wentWell, STYLES.section);
  sheet.space(3);
  for (const finding of praise) {
    drawEntry(sheet, {
      margin: isOfWholeTake(finding) ? sheet.words.page.wholeTake : sheet.words.place(finding),
      paragraphs: [{ tag: 'P', text: finding.text, style: STYLES.body }],
    });
    sheet.space(2.5);
  }
}

/**
 * @param praise a finding that praises
 * @returns true when it is about the take as a whole
 *
 * Source: definition.
 */
export function isOfWholeTake({ index, toBar, beat }: ResultFinding): boolean {
  return index === undefined && toBar === undefined && beat === undefined;
}
