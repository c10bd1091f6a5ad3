import { mapPath, type PathItem } from '../page/index.js';
import type { Words } from './place-words.js';
import type { Shape } from './read-shapes.js';
import type { BarsTaken } from './take-bars.js';

/**
 * @param bars taken out of a line
 * @param ratio how many times larger
 * @returns the same in another size
 */
export function scaleBars(bars: BarsTaken, ratio: number): BarsTaken {
  const path = (item: PathItem): PathItem => ({
    ...item,
    path: mapPath(item.path, [ratio, 0, 0, ratio, 0, 0]),
    ...(item.width === undefined ? {} : { width: item.width * ratio }),
    ...(item.dash === undefined ? {} : { dash: [item.dash[0] * ratio, item.dash[1] * ratio] }),
  });
  const words = (item: Words): Words => ({
    ...item,
    x: item.x * ratio,
    baseline: item.baseline * ratio,
    runs: item.runs.map((run) => ({ ...run, size: run.size * ratio })),
  });
  const shape = (one: Shape): Shape => ({
    ...one,
    item: one.item.kind === 'path' ? path(one.item) : words(one.item),
    x: one.x * ratio,
    y: one.y * ratio,
    sign: one.sign === null ? null : { ...one.sign, space: one.sign.space * ratio },
  });
  return {
    staffSpace: bars.staffSpace * ratio,
    opening: bars.opening.map(shape),
    openingWidth: bars.openingWidth * ratio,
    staff: bars.staff.map(path),
    number: bars.number.map(shape),
    content: bars.content.map(shape),
    spanners: bars.spanners.map(({ item, isLoudness }) => ({ item: path(item), isLoudness })),
    left: bars.left * ratio,
    right: bars.right * ratio,
    ends: bars.ends.map((x) => x * ratio),
  };
}
