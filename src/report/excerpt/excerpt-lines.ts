import { type Engrave, engraveLines, type LineOfBars } from '../../engrave/index.js';
import type { ResultFinding } from '../../result/index.js';
import type { Part, PerformedBar } from '../../score/index.js';
import { type BarsShown, barsShown } from './marks/bars-shown.js';
import { isAboutTempo, type TempoLine, tempoBars } from './marks/tempo-bars.js';

/** Longer excerpts are not read. */
const MOST_LINES = 3;

/** One line of an excerpt. */
export interface ExcerptLine extends LineOfBars {
  /** the performed bars it shows when the finding is about tempo over bars */
  readonly bars: readonly PerformedBar[];
}

/**
 * Engraves the bars of a finding in lines of one system each.
 *
 * @param engrave engraves bars of the part
 * @param finding of the take
 * @param part the part
 * @param width points a line may take
 * @returns lines from top to bottom; none when the finding names no bars that can be shown
 */
export function excerptLines(engrave: Engrave, finding: ResultFinding, part: Part, width: number): ExcerptLine[] {
  if (isAboutTempo(finding.kind)) {
    const stretches = tempoBars(finding, part);
    return stretches.flatMap((stretch) =>
      stretches.length === 1 && finding.kind !== 'off-tempo'
        ? wholeStretch(engrave, stretch, width)
        : oneLine(engrave, stretch, width),
    );
  }
  const bars = barsShown(finding, part);
  return bars === null ? [] : linesOf(engrave, bars, width);
}

/** The bars in lines; the bar before them as well where it fits. */
function linesOf(engrave: Engrave, { from, to }: BarsShown, width: number): ExcerptLine[] {
  if (from === to && from > 0) {
    const wider = engrave(from - 1, to, width);
    if (wider !== null && wider.barsOfSystems.length === 1) return [{ excerpt: wider, from: from - 1, to, bars: [] }];
  }
  return engraveLines(engrave, from, to, width)
    .slice(0, MOST_LINES)
    .map((line) => ({ ...line, bars: [] }));
}

function wholeStretch(engrave: Engrave, { bars }: TempoLine, width: number): ExcerptLine[] {
  const [from, to] = ends(bars);
  const here = (line: ExcerptLine) => bars.filter(({ barIndex }) => barIndex >= line.from && barIndex <= line.to);
  return linesOf(engrave, { from, to }, width).map((line) => ({ ...line, bars: here(line) }));
}

/** As many bars of a stretch as fit one line. */
function oneLine(engrave: Engrave, { bars, keep }: TempoLine, width: number): ExcerptLine[] {
  for (let count = bars.length; count > 0; count--) {
    const kept = keep === 'first' ? bars.slice(0, count) : bars.slice(-count);
    const [from, to] = ends(kept);
    const excerpt = engrave(from, to, width);
    if (excerpt !== null && excerpt.barsOfSystems.length === 1) return [{ excerpt, from, to, bars: kept }];
  }
  return [];
}

function ends(bars: readonly PerformedBar[]): [number, number] {
  return [bars[0]?.barIndex ?? 0, bars.at(-1)?.barIndex ?? 0];
}
