import { seededRandom } from '../../src/demo/random.js';
import type { Part } from '../../src/score/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';

/** A page of triplets, and which of its notes stand before a leap, at a change of slur and tongue, and first in their group. */
export interface Triplets {
  readonly part: Part;
  readonly leaps: readonly number[];
  readonly changes: readonly number[];
  readonly firsts: readonly number[];
}

const GROUPS = 40;
const LOWEST = 62;
const HIGHEST = 81;

/**
 * Ten bars of triplets at 80 quarters a minute: steps and, at places drawn by chance, leaps of a fifth or more; slurs over two to
 * five notes. `together` puts the changes of slur and tongue where the leaps are.
 */
export function triplets(seed: number, together = false): Triplets {
  const random = seededRandom(seed);
  const midis = [70];
  const leaps: number[] = [];
  while (midis.length < 3 * GROUPS + 1) {
    const last = midis.at(-1)!;
    const leap = random.uniform() < 0.3;
    const up = last - LOWEST < 8 || (HIGHEST - last >= 8 && random.uniform() < 0.5) ? 1 : -1;
    const size = leap ? 7 + Math.floor(2 * random.uniform()) : 1 + Math.floor(2 * random.uniform());
    if (leap) leaps.push(midis.length - 1);
    midis.push(last + up * size);
  }
  const joined = slurs(midis.length, random.uniform, together ? new Set(leaps) : null);
  const sketches = midis.map((midi, i): NoteSketch => {
    const slurredToNext = joined.has(i);
    return { ...tripletNote(i, midi, i === midis.length - 1), slurredToNext, slurredFromPrevious: joined.has(i - 1) };
  });
  const part = smallPart(sketches, { tempos: [{ atQuarters: 0, quarterBpm: 80, printed: true }] });
  const changes = sketches.flatMap((_, i) => (joined.has(i) !== joined.has(i - 1) ? [i] : []));
  const firsts = sketches.flatMap((_, i) => (i % 3 === 0 ? [i] : []));
  return { part, leaps, changes: changes.filter((i) => i < midis.length - 1), firsts };
}

/** A note of a page of triplets, or the long one at its end; places are exact, as sums of thirds are not. */
export function tripletNote(index: number, midi: number, last: boolean): NoteSketch {
  const [beat, place] = [Math.floor(index / 3), index % 3];
  const barIndex = Math.floor(beat / 4);
  return {
    midi,
    quarters: last ? 4 : 1 / 3,
    onsetQuarters: index / 3,
    barIndex,
    bar: String(barIndex + 1),
    beat: 1 + (index - 12 * barIndex) / 3,
    tuplet: last ? null : { group: beat, actualNotes: 3, normalNotes: 2, place },
  };
}

/** Notes that are slurred to the next one. */
function slurs(count: number, uniform: () => number, changes: ReadonlySet<number> | null): Set<number> {
  const joined = new Set<number>();
  let on = true;
  for (let i = 0; i < count - 1; i++) {
    if (changes === null ? i > 0 && uniform() < 0.35 : changes.has(i)) on = !on;
    if (on) joined.add(i);
  }
  return joined;
}
