import { isMeasured } from '../../base/index.js';
import { STANDARDS } from '../../standards/index.js';
import { isBeyond } from '../beyond.js';
import { type JudgeInput, placeOf } from '../observed/judge-input.js';
import type { Observation } from '../observed/observation.js';
import { askedFor } from '../standards-for.js';

/**
 * @param input one take
 * @returns fermatas held too long or not held
 *
 * Source: standards fermataLeast and fermataMost.
 */
export function judgeFermatas(input: JudgeInput): Observation[] {
  const { fermataLeast, fermataMost, fermataMargin } = input.standards;
  return input.measurements.fermatas.flatMap((f): Observation[] => {
    if (!isMeasured(f.ratio)) return [];
    const note = input.part.notes[f.index]!;
    const expected = { code: 'between', facts: { least: fermataLeast.value, most: fermataMost.value } } as const;
    const measured = { value: f.ratio, unit: 'times the written length', expected } as const;
    const place = { criterion: 'rhythm', ...placeOf(input, note), measured } as const;
    if (isBeyond(f.ratio, fermataMost.value, 1)) {
      const weight = f.ratio > fermataMost.value * (1 + fermataMargin.value) ? 'fix' : 'watch';
      return [
        {
          kind: 'fermata-long',
          weight,
          size: f.ratio / fermataMost.value,
          ...place,
          facts: { ratio: f.ratio, most: fermataMost.value, ...askedFor(fermataMost, STANDARDS.fermataMost) },
        },
      ];
    }
    if (isBeyond(-f.ratio, -fermataLeast.value, 2)) {
      const weight = f.ratio < fermataLeast.value * (1 - fermataMargin.value) ? 'fix' : 'watch';
      return [
        {
          kind: 'fermata-short',
          weight,
          size: 0.8,
          ...place,
          facts: { ratio: f.ratio, least: fermataLeast.value, ...askedFor(fermataLeast, STANDARDS.fermataLeast) },
        },
      ];
    }
    return [];
  });
}
