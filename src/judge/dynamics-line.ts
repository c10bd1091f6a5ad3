import { median } from '../base/index.js';
import type { JudgeInput } from './judge-input.js';
import { changeOf, type DirectedChange } from './judges/dynamics.js';
import type { SummaryWords } from './wording/words.js';

/**
 * The dynamics of a take in one line: how many changes from one mark to the next are plain, then by how many decibels, and
 * how many hairpins are. The numbers one by one stand in the result.
 *
 * @param input one take
 * @param words in the language of the pages
 * @returns the line; says why when there was nothing to judge by
 *
 * Source: standards contrastLeast, contrastReversed and hairpinLeast, as the judge of dynamics uses them.
 */
export function dynamicsLine({ measurements, standards }: JudgeInput, words: SummaryWords): string {
  const { contrasts, hairpins, recording, markOrder } = measurements;
  if (recording.levelRiding) return words.levelRiding;
  const steps = contrasts.flatMap((contrast) => changeOf(contrast) ?? []);
  const wedges = hairpins.flatMap((hairpin) => changeOf(hairpin) ?? []);
  if (steps.length + wedges.length === 0) return words.noChange;
  const wrong = markOrder.reversed[0];
  return [
    ...(steps.length === 0 ? [] : [stepsInWords(steps, standards, words)]),
    ...(wedges.length === 0 ? [] : [words.hairpins(plain(wedges, standards.hairpinLeast.value), wedges.length)]),
    ...(wrong === undefined ? [] : [words.wrongOrder(wrong.softer, wrong.louder)]),
  ].join('; ');
}

function stepsInWords(
  steps: readonly DirectedChange[],
  { contrastLeast, contrastReversed }: JudgeInput['standards'],
  words: SummaryWords,
): string {
  const sizes = steps.map(({ raw, adjusted }) => Math.min(raw, adjusted));
  return words.contrasts({
    of: steps.length,
    plain: plain(steps, contrastLeast.value),
    reversed: steps.filter(({ raw, adjusted }) => raw < -contrastReversed.value && adjusted < contrastLeast.value)
      .length,
    usualDb: median(sizes),
    smallestDb: Math.min(...sizes),
    leastDb: contrastLeast.value,
  });
}

function plain(changes: readonly DirectedChange[], leastDb: number): number {
  return changes.filter(({ raw, adjusted }) => Math.min(raw, adjusted) >= leastDb).length;
}
