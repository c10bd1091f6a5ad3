import { type Cell, drawTable, STYLES, writeParagraph } from '../../page/index.js';
import type { ResultFinding, TakeResult } from '../../result/index.js';
import { concernsWholeTake } from '../../words/index.js';
import { MOST_SHOWN } from '../most-shown.js';
import type { ReportSheet } from '../report-sheet.js';
import { type RoomPlace, roomLink } from '../room-link.js';
import { notMeasuredLines } from './not-measured-lines.js';

/**
 * Every finding that has not been told yet, the most useful of them where they are very many, by bar; then the recording's cautions and what was not measured.
 *
 * @param sheet pages being filled
 * @param result the take, reviewed
 * @param told findings already told
 * @param room where the take can be heard; undefined where it cannot
 */
export function drawDetails(
  sheet: ReportSheet,
  result: TakeResult,
  told: readonly ResultFinding[],
  room?: RoomPlace,
): void {
  const praised = result.findings.filter((finding) => finding.weight === 'well').slice(0, 3);
  const rest = result.findings.filter(
    (finding) => !told.includes(finding) && !praised.includes(finding) && finding.ledByBar === undefined,
  );
  if (rest.length > 0) drawRest(sheet, rest.slice(0, MOST_SHOWN), result, room);
  if (rest.length > MOST_SHOWN) {
    sheet.space(6);
    writeParagraph(sheet, sheet.words.table.more(rest.length - MOST_SHOWN), STYLES.body);
  }
  drawList(sheet, sheet.words.table.recording, result.recording.cautions);
  drawList(sheet, sheet.words.table.notMeasured, notMeasuredLines(result));
}

function drawRest(
  sheet: ReportSheet,
  rest: readonly ResultFinding[],
  result: TakeResult,
  room: RoomPlace | undefined,
): void {
  sheet.space(16);
  sheet.ensure(STYLES.section.leading + 50);
  sheet.write('H2', sheet.words.table.everythingElse, STYLES.section);
  sheet.space(4);
  drawTable(
    sheet,
    [
      { head: sheet.words.table.where, width: 92, namesRow: true },
      { head: sheet.words.table.about, width: 66 },
      { head: sheet.words.table.to, width: 54 },
      { head: sheet.words.table.heard, width: sheet.width - 212 + 9 },
    ],
    inOrder(rest, result).map((finding) => [
      placeCell(sheet, finding, room),
      sheet.words.criterion(finding.criterion),
      sheet.words.table.weight[finding.weight],
      finding.weight === 'fix' && finding.practice !== ''
        ? sheet.words.table.withPractice(finding.text, finding.practice)
        : finding.text,
    ]),
  );
}

function placeCell(sheet: ReportSheet, finding: ResultFinding, room: RoomPlace | undefined): Cell {
  const link = roomLink(room, finding, sheet.words);
  return { text: sheet.words.place(finding), ...(link === undefined ? {} : { link }) };
}

/** The whole take first, then in the order of the part. */
function inOrder(findings: readonly ResultFinding[], result: TakeResult): ResultFinding[] {
  const firstIn = (bar: string, pass: number) =>
    result.notes.find((note) => note.bar === bar && note.pass === pass)?.index;
  const place = ({ kind, index, bar, pass }: ResultFinding) => {
    return concernsWholeTake(kind) ? -1 : (index ?? firstIn(bar, pass) ?? result.notes.length);
  };
  return findings.toSorted((a, b) => place(a) - place(b));
}

function drawList(sheet: ReportSheet, heading: string, lines: readonly string[]): void {
  const [first, ...rest] = lines;
  if (first === undefined) return;
  sheet.space(14);
  const firstHeight = sheet.set(first, STYLES.body, sheet.width).height;
  sheet.ensure(STYLES.section.leading + Math.min(firstHeight, 60));
  sheet.write('H2', heading, STYLES.section);
  for (const line of [first, ...rest]) {
    writeParagraph(sheet, line, STYLES.body);
    sheet.space(1.5);
  }
}
