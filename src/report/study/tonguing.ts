import { type Engrave, type Excerpt, shifted } from '../../engrave/index.js';
import { type Sheet, STYLES } from '../../page/index.js';
import type { Part } from '../../score/index.js';
import type { ArticulationPattern, StudyPlan } from '../../study/index.js';
import type { StudyWords } from '../../words/index.js';
import { drawPlaces, sectionHead } from './places-table.js';

/** More patterns than these are not looked at; those of most bars go first. */
const MOST_PATTERNS = 6;
const COLUMNS = 2;
const GAP = 22;
const AFTER = 7;

/** A pattern shown in one bar of its own. */
interface Shown {
  readonly pattern: ArticulationPattern;
  readonly excerpt: Excerpt;
}

/**
 * How the bars are tongued and slurred, on the staff: one bar of each pattern, with all bars that are played so. What
 * cannot be engraved is told in words.
 *
 * @param sheet pages being filled
 * @param plan what the étude asks for
 * @param part the part as the teacher wants it
 * @param engrave engraves bars of the part
 * @param words what the sheet says
 */
export function drawTonguing(sheet: Sheet, plan: StudyPlan, part: Part, engrave: Engrave, words: StudyWords): void {
  const { articulation } = plan;
  if (articulation.length === 0) return;
  const said = words.page.tonguing;
  const dotted = articulation.some(({ groups }) => groups.some(({ dotOnLast }) => dotOnLast));
  const width = (sheet.width - (COLUMNS - 1) * GAP) / COLUMNS;
  const shown = ofMostBars(articulation).flatMap((pattern) => shownIn(pattern, part, engrave, width));
  const rows = Array.from({ length: Math.ceil(shown.length / COLUMNS) }, (_, i) =>
    shown.slice(i * COLUMNS, (i + 1) * COLUMNS),
  );
  sectionHead(sheet, said.heading, `${said.introduction}${dotted ? said.dotUnderSlur : ''}`, rowHeight(rows[0] ?? []));
  if (shown.length === 0) {
    const told = articulation.map(({ bars, groups }) => [words.places.barList(bars), inWords(groups, words)] as const);
    drawPlaces(sheet, words.page, said.head, told);
    return;
  }
  for (const row of rows) drawRow(sheet, row, width, words);
  const more = articulation.length - shown.length;
  if (more > 0) sheet.write('P', said.more(more), STYLES.soft);
}

/** In the order of the étude. */
function ofMostBars(patterns: readonly ArticulationPattern[]): ArticulationPattern[] {
  const first = patterns.toSorted((a, b) => b.bars.length - a.bars.length).slice(0, MOST_PATTERNS);
  return patterns.filter((pattern) => first.includes(pattern));
}

function shownIn(pattern: ArticulationPattern, part: Part, engrave: Engrave, width: number): Shown[] {
  const bar = part.bars.find((one) => one.bar === pattern.bars[0]);
  const excerpt = bar === undefined ? null : engrave(bar.barIndex, bar.barIndex, width);
  return excerpt === null ? [] : [{ pattern, excerpt }];
}

function rowHeight(row: readonly Shown[]): number {
  return STYLES.margin.leading + Math.max(0, ...row.map(({ excerpt }) => excerpt.height)) + AFTER;
}

function drawRow(sheet: Sheet, row: readonly Shown[], width: number, words: StudyWords): void {
  const height = rowHeight(row);
  sheet.ensure(height);
  const top = sheet.y + STYLES.margin.leading;
  for (const [i, { pattern, excerpt }] of row.entries()) {
    const left = sheet.left + i * (width + GAP);
    const bars = words.places.barList(pattern.bars);
    sheet.elements.push(sheet.element('P', sheet.set(bars, STYLES.margin, width), left, sheet.y));
    sheet.elements.push({
      tag: 'Figure',
      alternative: words.page.tonguing.alternative(bars, inWords(pattern.groups, words)),
      box: [left, top, left + excerpt.width, top + excerpt.height],
      children: [{ page: sheet.page, items: shifted(excerpt.items, left, top) }],
    });
  }
  sheet.y += height;
}

function inWords(groups: ArticulationPattern['groups'], { plan }: StudyWords): string {
  const told = plan.articulation(groups);
  return `${told.charAt(0).toUpperCase()}${told.slice(1)}`;
}
