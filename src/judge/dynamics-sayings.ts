import { median } from '../base/index.js';
import type { ContrastsHeard, Saying } from './criterion-sayings.js';
import { changeOf, type DirectedChange } from './judges/dynamics.js';
import type { JudgeInput } from './observed/judge-input.js';

/**
 * The dynamics of a take in one line: how many changes from one mark to the next are plain, then by how many decibels, and
 * how many hairpins are. The numbers one by one stand in the result.
 *
 * @param input one take
 * @returns what is said of it; empty when there was nothing to judge by
 *
 * Source: standards contrastLeast, contrastReversed and hairpinLeast, as the judge of dynamics uses them.
 */
export function dynamicsSayings({ measurements, standards }: JudgeInput): Saying[] {
  const { contrasts, hairpins, recording, markOrder } = measurements;
  if (recording.levelRiding) return [];
  const steps = contrasts.flatMap((contrast) => changeOf(contrast) ?? []);
  const wedges = hairpins.flatMap((hairpin) => changeOf(hairpin) ?? []);
  if (steps.length + wedges.length === 0) return [];
  const plainWedges = plain(wedges, standards.hairpinLeast.value);
  const wrong = markOrder.reversed.slice(0, 1);
  return [
    ...(steps.length === 0 ? [] : [contrastsSaying(heardOf(steps, standards))]),
    ...(wedges.length === 0 ? [] : [{ code: 'hairpins', facts: { plain: plainWedges, of: wedges.length } } as const]),
    ...wrong.map(({ softer, louder }) => ({ code: 'wrong-order', facts: { softer, louder } }) as const),
  ];
}

/**
 * @param heard the changes from one mark to the next, all together
 * @returns what is said of them: whether all, none or some are plain, or all go the other way
 */
export function contrastsSaying(heard: ContrastsHeard): Saying {
  if (heard.plain === heard.of) return { code: 'contrasts-plain', facts: heard };
  if (heard.reversed === heard.of) return { code: 'contrasts-reversed', facts: heard };
  return { code: heard.plain === 0 ? 'contrasts-alike' : 'contrasts-mixed', facts: heard };
}

function heardOf(
  steps: readonly DirectedChange[],
  { contrastLeast, contrastReversed }: JudgeInput['standards'],
): ContrastsHeard {
  const sizes = steps.map(({ raw, adjusted }) => Math.min(raw, adjusted));
  return {
    of: steps.length,
    plain: plain(steps, contrastLeast.value),
    reversed: steps.filter(({ raw, adjusted }) => raw < -contrastReversed.value && adjusted < contrastLeast.value)
      .length,
    usualDb: median(sizes),
    smallestDb: Math.min(...sizes),
    leastDb: contrastLeast.value,
  };
}

function plain(changes: readonly DirectedChange[], leastDb: number): number {
  return changes.filter(({ raw, adjusted }) => Math.min(raw, adjusted) >= leastDb).length;
}
