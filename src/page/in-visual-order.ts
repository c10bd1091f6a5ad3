import { createRequire } from 'node:module';
import type { Bidi } from 'bidi-js';
import { RIGHT_TO_LEFT } from './right-to-left.js';
import type { Run } from './run.js';

const require = createRequire(import.meta.url);

let bidi: Bidi | undefined;

/** Letters of one face, to be read in one direction. */
interface Stretch {
  readonly run: Run;
  text: string;
  /** odd from right to left */
  readonly level: number;
}

/**
 * Puts a line with words from right to left in the order in which it is seen. The page itself reads from left to right.
 *
 * @param runs of one line, as they are read
 * @returns runs from left to right; each word from right to left is a run of its own, its letters as they are read, because
 * its face sets them from right to left by itself; their widths are those of the runs they come from
 *
 * Source: Unicode Standard Annex 9, rules L2 and L4.
 */
export function inVisualOrder(runs: readonly Run[]): Run[] {
  bidi ??= (require('bidi-js') as () => Bidi)();
  const { levels } = bidi.getEmbeddingLevels(runs.map(({ text }) => text).join(''), 'ltr');
  const stretches = stretchesOf(runs, levels);
  const highest = Math.max(...stretches.map(({ level }) => level));
  let ordered = stretches;
  for (let level = highest; level > 0; level--) ordered = turned(ordered, level);
  return ordered.map(({ run, text, level }) => ({ ...run, text: level % 2 === 1 ? asSeen(text, bidi as Bidi) : text }));
}

function stretchesOf(runs: readonly Run[], levels: Uint8Array): Stretch[] {
  const stretches: Stretch[] = [];
  let at = 0;
  for (const run of runs) {
    let last: Stretch | undefined;
    for (const letter of run.text) {
      const level = levels[at] ?? 0;
      const parts = level % 2 === 1 && (letter === ' ' || last?.text === ' ');
      if (last === undefined || last.level !== level || parts) {
        last = { run, text: letter, level };
        stretches.push(last);
      } else last.text += letter;
      at += letter.length;
    }
  }
  return stretches;
}

/** Turns round every row of stretches at this level or above. */
function turned(stretches: readonly Stretch[], level: number): Stretch[] {
  const order: Stretch[] = [];
  let row: Stretch[] = [];
  for (const stretch of stretches) {
    if (stretch.level >= level) row.unshift(stretch);
    else {
      order.push(...row, stretch);
      row = [];
    }
  }
  return [...order, ...row];
}

/** Signs between the words are not turned by their face, as the words are. */
function asSeen(text: string, { getMirroredCharacter }: Bidi): string {
  if (RIGHT_TO_LEFT.test(text)) return text;
  return [...text]
    .reverse()
    .map((sign) => getMirroredCharacter(sign) ?? sign)
    .join('');
}
