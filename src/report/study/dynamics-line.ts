import type { Part } from '../../score/index.js';
import type { StudyPlan } from '../../study/index.js';

/** Marks from soft to loud. Source: common practice. */
const SCALE = ['pppp', 'ppp', 'pp', 'p', 'mp', 'mf', 'f', 'ff', 'fff', 'ffff'];
/** How far a hairpin without an end mark leads, steps of the scale. Source: working choice. */
const OPEN_END_STEPS = 0.8;

/** The plan of loudness as a line: score time in quarters, level in steps of the scale of marks. */
export type DynamicsLine = readonly (readonly [quarters: number, level: number])[];

/**
 * @param mark dynamic mark
 * @returns its place on the scale from pppp to ffff
 *
 * Source: common practice.
 */
export function levelOf(mark: string): number {
  const place = SCALE.indexOf(mark);
  return place < 0 ? SCALE.indexOf('mf') : place;
}

/**
 * The levels of a part and what leads from one to the next.
 *
 * @param plan what the étude asks for
 * @param part the part, for its performed marks
 * @returns points of the line from the first mark on; empty when the part has none
 */
export function dynamicsLine({ hairpins }: Pick<StudyPlan, 'hairpins'>, part: Part): DynamicsLine {
  const marks = part.dynamics.map(({ atQuarters, mark }) => ({
    from: atQuarters,
    level: levelOf(mark),
    hairpin: null,
  }));
  const swells = hairpins.map((hairpin) => ({ from: hairpin.startQuarters, level: 0, hairpin }));
  const events = [...marks, ...swells].sort((a, b) => a.from - b.from || (a.hairpin === null ? -1 : 1));
  const points: [number, number][] = [];
  let level: number | null = null;
  for (const { from, level: marked, hairpin } of events) {
    if (level === null) {
      level = hairpin === null ? marked : levelOf('mf');
      points.push([from, level]);
    } else points.push([Math.max(from, points.at(-1)?.[0] ?? 0), level]);
    if (hairpin === null) level = marked;
    else {
      const target = hairpin.toMark;
      const sense = hairpin.kind === 'crescendo' ? 1 : -1;
      const reached: number = target === null ? level + sense * OPEN_END_STEPS : levelOf(target);
      const grows: boolean = (reached - level) * sense > 0;
      level = grows ? reached : level + sense * OPEN_END_STEPS;
      points.push([hairpin.endQuarters, level]);
      continue;
    }
    points.push([points.at(-1)?.[0] ?? from, level]);
  }
  const last = part.bars.at(-1);
  if (level !== null && last !== undefined) points.push([last.startQuarters + last.lengthQuarters, level]);
  return points;
}

/**
 * @param line the whole line
 * @param from start of the stretch, quarters
 * @param to end of the stretch, quarters
 * @returns the line within the stretch, cut at its ends
 *
 * Source: linear interpolation.
 */
export function cutLine(line: DynamicsLine, from: number, to: number): DynamicsLine {
  const cut: (readonly [number, number])[] = [];
  for (const [i, [quarters, level]] of line.entries()) {
    const before = line[i - 1];
    if (before !== undefined) {
      for (const edge of [from, to]) {
        if (before[0] < edge && quarters > edge) {
          cut.push([edge, before[1] + ((level - before[1]) * (edge - before[0])) / (quarters - before[0])]);
        }
      }
    }
    if (quarters >= from && quarters <= to) cut.push([quarters, level]);
  }
  return cut;
}
