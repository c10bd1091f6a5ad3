import { drawDocument } from './draw-document.js';
import { type EngravedLine, type LineBar, readLine } from './engraved-line.js';
import { lineHeight } from './line-height.js';
import { openingSigns } from './opening-signs.js';
import type { Shape } from './read-shapes.js';

/** Points a staff space takes in an excerpt; a staff is four of them. */
export const STAFF_SPACE = 4.4;

/** A part laid out once, from which excerpts are taken. Plain data that can be sent to a worker. Lengths are points. */
export interface EngravedPart extends EngravedLine {
  /** clef and key at the beginning of a line, by the first bar from which they hold on, in order of bars */
  readonly openings: readonly Opening[];
}

/** Clef and key, as they stand at the beginning of a line. */
interface Opening {
  readonly fromBar: number;
  readonly signs: readonly Shape[];
}

/**
 * Lays a part out in one line that is never broken, and finds the clef and key that hold in each bar.
 *
 * @param musicXml the part as `engravingCopy` of the room `score` makes it
 * @returns what excerpts are taken from; null when the part cannot be engraved
 */
export async function engravePart(musicXml: string): Promise<EngravedPart | null> {
  const [svg, ...others] = (await drawDocument(musicXml)) ?? [];
  if (svg === undefined || others.length > 0) return null;
  const line = readLine(svg, STAFF_SPACE);
  const begin = line.bars[0];
  // Bars are known by their place: were one left out, the excerpts after it would show other bars than they say.
  const barsWritten = musicXml.match(/<measure[\s>]/g)?.length ?? 0;
  if (begin === undefined || line.bars.length !== barsWritten) return null;
  const changes = changesIn(line.bars);
  const more = changes.length === 0 ? [] : await openingsAt(musicXml, changes, begin);
  return more === null ? null : { ...line, openings: [{ fromBar: 0, signs: openingSigns(begin) }, ...more] };
}

/** Bars at whose beginning another clef or key may hold than before: those with a sign, and those after them. */
function changesIn(bars: readonly LineBar[]): number[] {
  const found = new Set<number>();
  for (const [i, bar] of bars.entries()) {
    const usual = i === 0 ? openingSigns(bar).length : 0;
    if (bar.shapes.filter(({ role }) => role === 'opening').length === usual) continue;
    if (i > 0) found.add(i);
    if (i + 1 < bars.length) found.add(i + 1);
  }
  return [...found].sort((a, b) => a - b);
}

/** The engraving program knows what holds where a line begins; heights are brought to those of the one line. */
async function openingsAt(musicXml: string, changes: readonly number[], begin: LineBar): Promise<Opening[] | null> {
  const pages = await drawDocument(musicXml, changes);
  if (pages === null) return null;
  const bars = pages.flatMap((svg) => readLine(svg, STAFF_SPACE).bars);
  return changes.flatMap((fromBar) => {
    const bar = bars[fromBar];
    if (bar === undefined) return [];
    const up = topOf(begin) - topOf(bar);
    const signs = openingSigns(bar).map((shape) => ({ ...shape, y: shape.y + up }));
    return [{ fromBar, signs }];
  });
}

/** Height of the uppermost staff line. */
function topOf({ shapes }: LineBar): number {
  const heights = shapes.flatMap(({ role, item }) =>
    role === 'staff' && item.kind === 'path' ? [lineHeight(item)] : [],
  );
  return Math.min(...heights);
}
