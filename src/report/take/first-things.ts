import { MARGIN_COLUMN, MARGIN_GAP, STYLES } from '../../page/index.js';
import type { ResultFinding, TakeResult } from '../../result/index.js';
import { type ExcerptSource, findingExcerpt } from '../excerpt/finding-excerpt.js';
import { drawEntry, type Entry, type EntryFigure, entryHeight, type Paragraph } from '../margin-note.js';
import type { ReportSheet } from '../report-sheet.js';
import { type RoomPlace, roomLink } from '../room-link.js';
import type { Density } from './density.js';

const MOST = 3;
const LEAST_GAP = 8;
const MOST_GAP = 14;

/**
 * @param result the take, reviewed
 * @returns the findings told first, most useful first
 */
export function firstFindings(result: TakeResult): ResultFinding[] {
  return result.findings
    .filter((finding) => finding.weight !== 'well' && finding.ledByBar === undefined)
    .slice(0, MOST);
}

/**
 * The first three things to work on: where, what, measured, why and how to practise.
 *
 * @param sheet pages being filled
 * @param source the take, its part, what engraves it, and the room in which it can be heard
 * @param density how much white there may be between them
 * @returns the findings told here
 */
export function drawFirstThings(
  sheet: ReportSheet,
  source: ExcerptSource & { readonly room?: RoomPlace | undefined },
  density: Density,
): ResultFinding[] {
  const { result } = source;
  const first = firstFindings(result);
  const entries = first.map((finding, i): Entry => {
    const link = roomLink(source.room, finding, sheet.words);
    return { ...entryOf(sheet, source, finding, i), ...(link === undefined ? {} : { link }) };
  });
  sheet.space(13);
  const needed = entries[0] === undefined ? 3 * STYLES.body.leading : entryHeight(sheet, entries[0]);
  sheet.ensure(Math.min(sheet.fullHeight, STYLES.section.leading + 8 + needed));
  sheet.write('H2', sheet.words.page.workOn[first.length] ?? '', STYLES.section);
  if (first.length === 0) {
    sheet.write('P', sheet.words.page.nothing, STYLES.body);
  }
  const gap = density === 'tight' ? LEAST_GAP : gapBetween(sheet, entries);
  for (const [i, entry] of entries.entries()) {
    sheet.space(i === 0 ? LEAST_GAP : gap);
    drawEntry(sheet, entry);
  }
  return first;
}

/** White between entries: more where all of them stand on this page and leave some over. */
function gapBetween(sheet: ReportSheet, entries: readonly Entry[]): number {
  const heights = entries.map((entry) => entryHeight(sheet, entry));
  const left = sheet.room - LEAST_GAP - heights.reduce((sum, height) => sum + height, 0);
  return Math.max(LEAST_GAP, Math.min(MOST_GAP, left / Math.max(1, entries.length - 1)));
}

function entryOf(sheet: ReportSheet, source: ExcerptSource, finding: ResultFinding, position: number): Entry {
  const words = sheet.words.finding(finding);
  const paragraphs: (Paragraph | EntryFigure)[] = [
    { tag: 'H3', text: words.headline, style: STYLES.headline },
    ...pictureOf(sheet, source, finding),
    { tag: 'P', text: finding.text, style: STYLES.body },
  ];
  paragraphs.push({ tag: 'P', text: words.why, style: STYLES.body, before: 1 });
  if (finding.practice !== '') {
    paragraphs.push({
      tag: 'P',
      text: sheet.words.page.toPractise(finding.practice),
      style: STYLES.practice,
      before: 1,
    });
  }
  if (finding.measured !== undefined) {
    const text = sheet.words.page.measured(sheet.words.measured(finding.measured, finding.kind));
    paragraphs.push({ tag: 'P', text, style: STYLES.soft, before: 1 });
  }
  return {
    numeral: String(position + 1),
    margin: sheet.words.place(finding),
    ...(finding.weight === 'watch' ? { marginNote: sheet.words.page.worthAListen } : {}),
    paragraphs,
  };
}

/** The bars in notes with their marks, and what the marks mean. */
function pictureOf(sheet: ReportSheet, source: ExcerptSource, finding: ResultFinding): EntryFigure[] {
  const excerpt = findingExcerpt(sheet, finding, source, sheet.width - MARGIN_COLUMN - MARGIN_GAP);
  if (excerpt === null) return [];
  const { items, width, height, alternative, caption } = excerpt;
  return [{ tag: 'Figure', items, width, height, alternative, caption, before: 5, after: 5 }];
}
