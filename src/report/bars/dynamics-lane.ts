import { type Item, joinPaths, lineAcross, lineThrough, STYLES, type Typesetter } from '../../page/index.js';
import type { Hairpin, Part } from '../../score/index.js';
import type { BarRow } from './bar-rows.js';

/** Height of the lane, points. */
export const DYNAMICS_LANE_HEIGHT = 22;

const MARK_SIZE = 15;
const OPENING = 3.1;
const GAP = 2;
/** Slanted letters reach this far to the left of where they are set. */
const OVERHANG = 2.1;

/** Letters of dynamic marks in the music face. Source: SMuFL 1.4, Dynamics (U+E520 to U+E526). */
const LETTERS: Readonly<Record<string, string>> = {
  p: '\u{E520}',
  m: '\u{E521}',
  f: '\u{E522}',
  r: '\u{E523}',
  s: '\u{E524}',
  z: '\u{E525}',
  n: '\u{E526}',
};

interface MarkBox {
  readonly text: string;
  readonly left: number;
  readonly right: number;
}

/**
 * The dynamics as printed, under the bars of a row: letters, hairpins and words in their places.
 *
 * @param typesetter widths of the music face
 * @param part the part
 * @param row the bars
 * @param left x of the row's start, points
 * @param top y of the lane's upper edge, points
 * @returns what to draw
 */
export function dynamicsLane(typesetter: Typesetter, part: Part, row: BarRow, left: number, top: number): Item[] {
  const xOf = (quarters: number) => left + (quarters - row.fromQuarters) * row.scale;
  const inRow = (quarters: number) => quarters >= row.fromQuarters && quarters < row.toQuarters;
  const events = part.dynamicEvents.map(({ mark, index }) => ({
    mark,
    atQuarters: part.notes[index]?.onsetQuarters ?? -1,
  }));
  const marks = [...part.dynamics, ...events]
    .filter(({ atQuarters }) => inRow(atQuarters))
    .sort((a, b) => a.atQuarters - b.atQuarters);
  const boxes: MarkBox[] = [];
  for (const { mark, atQuarters } of marks) {
    const text = [...mark].map((letter) => LETTERS[letter] ?? '').join('');
    const start = Math.max(xOf(atQuarters), (boxes.at(-1)?.right ?? 0) + GAP);
    boxes.push({ text, left: start, right: start + OVERHANG + typesetter.widthOf(text, 'music', MARK_SIZE) });
  }
  const baseline = top + 11;
  const letters = boxes.map(({ text, left: start }): Item => {
    return { kind: 'text', x: start + OVERHANG, baseline, text, face: 'music', size: MARK_SIZE, ink: 'text' };
  });
  const hairpins = part.hairpins
    .filter(({ startQuarters, endQuarters }) => endQuarters > row.fromQuarters && startQuarters < row.toQuarters)
    .flatMap((hairpin) => drawHairpin(typesetter, hairpin, row, xOf, boxes, baseline - 2));
  return [...letters, ...hairpins];
}

function drawHairpin(
  typesetter: Typesetter,
  hairpin: Hairpin,
  row: BarRow,
  xOf: (quarters: number) => number,
  boxes: readonly MarkBox[],
  middle: number,
): Item[] {
  const from = Math.max(hairpin.startQuarters, row.fromQuarters);
  const to = Math.min(hairpin.endQuarters, row.toQuarters);
  const [x0, x1] = between(boxes, xOf(from), xOf(to));
  if (hairpin.from === 'words') return drawWords(typesetter, hairpin, x0, x1, middle);
  if (x1 - x0 < 1) return [];
  const length = hairpin.endQuarters - hairpin.startQuarters;
  const open = (quarters: number) => {
    const share = (quarters - hairpin.startQuarters) / length;
    return OPENING * (hairpin.kind === 'crescendo' ? share : 1 - share);
  };
  const side = (sign: 1 | -1) =>
    lineThrough([
      [x0, middle + sign * open(from)],
      [x1, middle + sign * open(to)],
    ]);
  return [{ kind: 'path', path: joinPaths([side(-1), side(1)]), stroke: 'text', width: 0.7 }];
}

/** Words between the letters; where there is no room, on a line of their own below them. */
function drawWords(typesetter: Typesetter, hairpin: Hairpin, x0: number, x1: number, middle: number): Item[] {
  const { face, size } = { face: 'italic' as const, size: STYLES.small.size };
  const text = hairpin.kind === 'crescendo' ? 'cresc.' : 'dim.';
  const width = typesetter.widthOf(text, face, size);
  const baseline = middle + (width > x1 - x0 ? 11.5 : 2.5);
  const word: Item = { kind: 'text', x: x0, baseline, text, face, size, ink: 'text' };
  const dashFrom = x0 + width + 3;
  if (x1 - dashFrom < 6) return [word];
  const path = lineAcross(middle + 1, dashFrom, x1);
  return [word, { kind: 'path', path, stroke: 'soft', width: 0.5, dash: [2, 3] }];
}

/** The free stretch between the letters at both ends. */
function between(boxes: readonly MarkBox[], from: number, to: number): [number, number] {
  let [x0, x1] = [from, to];
  for (const box of boxes) {
    if (box.right < from || box.left > to + GAP) continue;
    if ((box.left + box.right) / 2 < (from + to) / 2) x0 = Math.max(x0, box.right + GAP);
    else x1 = Math.min(x1, box.left - GAP);
  }
  return [x0, x1];
}
