import { areaOf, circle, type Item, joinPaths, lineAcross, placeText, STYLES, setOneLine } from '../../page/index.js';
import type { SectionResult, SectionTake } from '../../result/index.js';
import { type SectionWords, wordsIn } from '../../words/index.js';
import type { ReportSheet } from '../report-sheet.js';
import { scoreNames } from './score-names.js';
import { takeLabels } from './take-labels.js';

const LABEL_WIDTH = 128;
const ROW_HEIGHT = 11.5;
const HEAD_HEIGHT = 12;
const SUM_HEIGHT = 26;
const WIDEST_BAR = 26;
const MOST_BARS = 60;

/** One take's line of the map. */
interface MapRow {
  readonly label: string;
  readonly troubles: SectionTake['barTroubles'];
}

/** A stretch of bars and where it is drawn. */
interface MapBlock {
  readonly bars: readonly string[];
  readonly barWidth: number;
  /** players with trouble in each bar, and the most in any bar of the part */
  readonly sums: readonly number[];
  readonly most: number;
}

/** The takes of one score, and its bars in order. */
interface MapOfScore {
  readonly heading: string;
  readonly bars: readonly string[];
  readonly rows: readonly MapRow[];
}

/**
 * Which bars trouble whom: a row a take, a column a bar, a dot that grows with the number of findings. With several scores
 * each has a map of its own.
 *
 * @param sheet pages being filled
 * @param section the section's document
 */
export function drawTroubleMap(sheet: ReportSheet, section: SectionResult): void {
  const { whichBarsNote } = wordsIn(sheet.language).section;
  const maps = mapsOf(sheet, section).filter(({ rows, bars }) => rows.length > 0 && bars.length > 0);
  for (const [i, { heading, bars, rows }] of maps.entries()) {
    sheet.space(16);
    const words = STYLES.section.leading + (i === 0 ? 2 : 0) * STYLES.soft.leading;
    sheet.ensure(words + HEAD_HEIGHT + SUM_HEIGHT + Math.min(rows.length, 6) * ROW_HEIGHT);
    sheet.write('H2', heading, STYLES.section);
    if (i === 0) sheet.write('P', whichBarsNote, STYLES.soft);
    for (const block of blocksOf(sheet, bars, rows)) drawBlock(sheet, block, rows);
  }
}

function mapsOf(sheet: ReportSheet, { score, scores, bars, takes }: SectionResult): MapOfScore[] {
  const words = wordsIn(sheet.language).section;
  const nameOf = scoreNames({ scores });
  const labels = takeLabels(takes, words);
  const dated = new Set(labels).size < labels.length;
  const rows = takes.flatMap((take, i) => {
    const label = rowLabel(sheet, labels[i] as string, dated ? take.date : null);
    return take.outcome === 'reviewed' ? [{ label, troubles: take.barTroubles, file: take.score }] : [];
  });
  if (score !== null) return [{ heading: words.whichBars, bars, rows }];
  return [...new Set(scores.map(({ file }) => file))].map((file) => ({
    heading: words.whichBarsOf(nameOf(file)),
    bars: fullest(scores.filter((one) => one.file === file).map(({ barNumbers }) => barNumbers ?? [])),
    rows: rows.filter((row) => row.file === file),
  }));
}

/** Versions of one file may differ in bars; the one with most holds the others. */
function fullest(versions: readonly (readonly string[])[]): readonly string[] {
  return versions.toSorted((a, b) => b.length - a.length)[0] ?? [];
}

/** The day stands first, where a long name cannot push it out. */
function rowLabel(sheet: ReportSheet, label: string, date: string | null): string {
  return date === null ? label : `${sheet.words.shortDay(date)}  ${label}`;
}

function blocksOf(sheet: ReportSheet, bars: readonly string[], rows: readonly MapRow[]): MapBlock[] {
  const count = Math.ceil(bars.length / MOST_BARS);
  const perBlock = Math.ceil(bars.length / Math.max(1, count));
  const sums = bars.map((bar) => rows.filter(({ troubles }) => troubles.some((trouble) => trouble.bar === bar)).length);
  const barWidth = Math.min(WIDEST_BAR, (sheet.width - LABEL_WIDTH) / perBlock);
  return Array.from({ length: count }, (_, block) => {
    const [from, to] = [block * perBlock, (block + 1) * perBlock];
    return { bars: bars.slice(from, to), barWidth, sums: sums.slice(from, to), most: Math.max(1, ...sums) };
  });
}

/** A block over as many pages as its rows need. */
function drawBlock(sheet: ReportSheet, block: MapBlock, rows: readonly MapRow[]): void {
  let next = 0;
  sheet.space(8);
  while (next < rows.length) {
    sheet.ensure(HEAD_HEIGHT + SUM_HEIGHT + Math.min(rows.length - next, 3) * ROW_HEIGHT);
    const fitting = Math.max(1, Math.floor((sheet.room - HEAD_HEIGHT - SUM_HEIGHT) / ROW_HEIGHT));
    const here = rows.slice(next, next + fitting);
    const withSums = rows.length > 1 && block.sums.some((sum) => sum > 0) && next + here.length === rows.length;
    const height = HEAD_HEIGHT + here.length * ROW_HEIGHT + (withSums ? SUM_HEIGHT : 0);
    sheet.elements.push({
      tag: 'Figure',
      alternative: inWords(block, here, wordsIn(sheet.language).section),
      box: [sheet.left, sheet.y, sheet.left + sheet.width, sheet.y + height],
      children: [{ page: sheet.page, items: blockItems(sheet, block, here, withSums) }],
    });
    sheet.y += height;
    next += here.length;
  }
}

function blockItems(sheet: ReportSheet, block: MapBlock, rows: readonly MapRow[], withSums: boolean): Item[] {
  const left = sheet.left + LABEL_WIDTH;
  const top = sheet.y + HEAD_HEIGHT;
  const xOf = (bar: number) => left + (bar + 0.5) * block.barWidth;
  const right = left + block.bars.length * block.barWidth;
  const foot = top + rows.length * ROW_HEIGHT;
  const lines = rows.map((_, row) => lineAcross(top + row * ROW_HEIGHT, sheet.left, right));
  lines.push(lineAcross(foot, sheet.left, right));
  const items: Item[] = [{ kind: 'path', path: joinPaths(lines), stroke: 'rule', width: 0.35 }];
  items.push(...barNumbers(sheet, block, xOf, sheet.y));
  for (const [i, row] of rows.entries()) {
    const middle = top + (i + 0.5) * ROW_HEIGHT;
    const label = setOneLine(sheet.typesetter, row.label, STYLES.axis, LABEL_WIDTH - 6);
    items.push(...placeText(label, sheet.left, middle - STYLES.axis.leading / 2));
    items.push(...dots(block, row, xOf, middle));
  }
  if (withSums) items.push(...sumItems(sheet, block, xOf, foot));
  return items;
}

function barNumbers(sheet: ReportSheet, block: MapBlock, xOf: (bar: number) => number, top: number): Item[] {
  const widest = Math.max(
    ...block.bars.map((bar) => sheet.typesetter.widthOf(bar, STYLES.axis.face, STYLES.axis.size)),
  );
  const step = [1, 2, 5, 10].find((bars) => bars * block.barWidth >= widest + 3) ?? 20;
  return block.bars.flatMap((bar, i) => {
    const number = Number(bar);
    if ((Number.isInteger(number) ? number : i) % step !== 0) return [];
    return placeText(sheet.set(bar, { ...STYLES.axis, align: 'centre' }, 40), xOf(i) - 20, top);
  });
}

function dots(block: MapBlock, row: MapRow, xOf: (bar: number) => number, middle: number): Item[] {
  const largest = Math.min(block.barWidth, ROW_HEIGHT) * 0.46;
  return row.troubles.flatMap(({ bar, fix, watch }): Item[] => {
    const place = block.bars.indexOf(bar);
    if (place < 0) return [];
    const radius = Math.min(largest, largest * 0.45 * Math.sqrt(fix + watch));
    const path = circle(xOf(place), middle, radius);
    return [fix > 0 ? { kind: 'path', path, fill: 'text' } : { kind: 'path', path, stroke: 'text', width: 0.7 }];
  });
}

function sumItems(sheet: ReportSheet, block: MapBlock, xOf: (bar: number) => number, foot: number): Item[] {
  const base = foot + SUM_HEIGHT - 4;
  const tallest = SUM_HEIGHT - 8;
  const width = Math.min(8, block.barWidth * 0.6);
  const columns = block.sums.flatMap((sum, i) => {
    if (sum === 0) return [];
    const [left, top] = [xOf(i) - width / 2, base - (sum / block.most) * tallest];
    return [
      areaOf([
        [left, base],
        [left, top],
        [left + width, top],
        [left + width, base],
      ]),
    ];
  });
  const label = sheet.set(wordsIn(sheet.language).section.sums(block.most), STYLES.axis, LABEL_WIDTH);
  return [
    ...(columns.length === 0 ? [] : [{ kind: 'path' as const, path: joinPaths(columns), fill: 'accent' as const }]),
    ...placeText(label, sheet.left, base - 9),
  ];
}

function inWords(block: MapBlock, rows: readonly MapRow[], words: SectionWords): string {
  const said = rows.map(({ label, troubles }) => {
    const here = troubles
      .filter(({ bar }) => block.bars.includes(bar))
      .map(({ bar, fix, watch }) => words.barFindings(bar, fix, watch));
    return words.rowInWords(label, here.length === 0 ? words.noFindings : here.join(', '));
  });
  return words.mapInWords(block.bars[0] ?? '', block.bars.at(-1) ?? '', said);
}
