import type { Item } from '../../../page/index.js';
import type { MarkPlace } from './mark-place.js';
import { FINE_WIDTH, NOTE_HEIGHT, pencilNote, stroke } from './pencil.js';

const POINTS_A_DECIBEL = 1.3;
const MOST_STEP = 18;
const LEAST_LENGTH = 14;
const LEVEL_WIDTH = 2;

/**
 * Two level strokes under the change from one dynamic mark to the next: how loud the playing was before it and after it.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: definition: the step between the strokes is in proportion to the difference in decibels.
 */
export function levelStrokes(place: MarkPlace): Item[] {
  const { sheet, room, finding, result, excerpt } = place;
  const contrast = result.contrasts.find(({ index }) => index === finding.index);
  const head = place.headOf(finding.index);
  if (contrast === undefined || head === null || typeof contrast.differenceDb !== 'number') return [];
  const step = Math.max(-MOST_STEP, Math.min(MOST_STEP, POINTS_A_DECIBEL * contrast.differenceDb));
  const before = levelled(place, (level) => level.toIndex < contrast.index, -1);
  const after = levelled(place, (level) => level.index === contrast.index, 1);
  const at = head.left - 1;
  const from = Math.max(0, Math.min(before ?? at - 3 * LEAST_LENGTH, at - LEAST_LENGTH));
  const to = Math.min(excerpt.width, Math.max(after ?? at + 3 * LEAST_LENGTH, at + LEAST_LENGTH));
  const note = pencilNote(sheet, sheet.words.marks.played);
  const height = Math.max(Math.abs(step) + LEVEL_WIDTH, NOTE_HEIGHT);
  const top = room.below(from - note.width - 5, to + 1, height);
  const middle = top + height / 2;
  const [first, second] = [middle + step / 2, middle - step / 2];
  const line = (x0: number, x1: number, y: number): Item =>
    stroke(
      [
        [x0, y],
        [x1, y],
      ],
      LEVEL_WIDTH,
    );
  const join = stroke(
    [
      [at, first],
      [at, second],
    ],
    FINE_WIDTH,
  );
  return [
    line(from, at - 1.5, first),
    line(at + 1.5, to, second),
    join,
    ...note.at(from - note.width - 4, first - NOTE_HEIGHT / 2),
  ];
}

/** Where in this line the first note of the level before begins, or the last note of the level after ends. */
function levelled(
  { result, headOf, finding }: MarkPlace,
  wanted: (level: { readonly index: number; readonly toIndex: number }) => boolean,
  side: -1 | 1,
): number | undefined {
  const levels = result.levels.filter(wanted);
  const level = side < 0 ? levels.at(-1) : levels[0];
  if (level === undefined || finding.index === undefined) return undefined;
  const [from, to] = side < 0 ? [level.index, finding.index - 1] : [finding.index, level.toIndex];
  const heads = Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => headOf(from + i)).filter(
    (head) => head !== null,
  );
  return side < 0 ? heads[0]?.left : heads.at(-1)?.right;
}
