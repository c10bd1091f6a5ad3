import { describe, expect, it } from 'vitest';
import type { AlignedNote } from '../../src/align/index.js';
import { isBeyond } from '../../src/judge/beyond.js';
import type { JudgeInput } from '../../src/judge/observed/judge-input.js';
import type { Observation } from '../../src/judge/observed/observation.js';
import { withoutConsequences } from '../../src/judge/one-cause.js';
import { withoutDoubtful } from '../../src/judge/without-doubtful.js';
import { STANDARDS } from '../../src/standards/index.js';

const at = (kind: Observation['kind'], index: number, more: object = {}): Observation =>
  ({
    kind,
    criterion: 'rhythm',
    weight: 'watch',
    size: 1,
    bar: '1',
    pass: 1,
    index,
    ...more,
  }) as unknown as Observation;
const told = (observations: readonly Observation[]) => observations.map(({ kind, index }) => `${kind} ${index}`);

describe('one slip', () => {
  it('is told once: a breath, and not the late entry it causes', () => {
    expect(told(withoutConsequences([at('late-entry', 12), at('breath-unmarked', 10), at('late-entry', 20)]))).toEqual([
      'breath-unmarked 10',
      'late-entry 20',
    ]);
  });

  it('is told once: a wait, and not the uneven group it tears apart', () => {
    const groups = [at('uneven-group', 4, { toIndex: 7 }), at('uneven-group', 8, { toIndex: 11 })];
    expect(told(withoutConsequences([...groups, at('hesitation', 5)]))).toEqual(['uneven-group 8', 'hesitation 5']);
  });

  it('leaves an entry alone that is late before the breath', () => {
    expect(told(withoutConsequences([at('late-entry', 9), at('breath-unmarked', 10)]))).toHaveLength(2);
  });
});

describe('what was not surely heard', () => {
  const notes = Array.from({ length: 30 }, (_, index): AlignedNote => {
    const confidence = index === 5 ? 0.3 : index === 18 ? 0.8 : 1;
    return { index, status: 'as-written', confidence };
  });
  const input = (resumed: number[]) =>
    ({
      alignment: { notes, restarts: resumed.map((resumedAtIndex) => ({ resumedAtIndex })) },
      standards: STANDARDS,
    }) as unknown as JudgeInput;

  it('is not worth a listen right before a place where the player began again', () => {
    expect(withoutDoubtful(input([]), [at('slur-broken', 18)])).toHaveLength(1);
    expect(withoutDoubtful(input([22]), [at('slur-broken', 18)])).toEqual([]);
    expect(withoutDoubtful(input([22]), [at('uneven-group', 17, { toIndex: 19 })])).toEqual([]);
    expect(withoutDoubtful(input([22]), [at('slur-broken', 19)])).toHaveLength(1);
    expect(withoutDoubtful(input([18]), [at('slur-broken', 18)])).toHaveLength(1);
  });

  it('may still be told where it is sure enough to be fixed, or is about other things', () => {
    const others = [at('slur-broken', 18, { weight: 'fix' }), at('missed-note', 18, { criterion: 'notes' })];
    expect(withoutDoubtful(input([22]), others)).toHaveLength(2);
  });
});

describe('a limit', () => {
  // 3.04 and 3 are both told as 3; 3.06 is told as 3.1. Source: rounding to one decimal.
  it.each([
    [3.04, 3, 1, false],
    [3.06, 3, 1, true],
    [25.4, 25, 0, false],
    [25.6, 25, 0, true],
    [3, 3, 1, false],
    [-1.249, -1.25, 2, false],
    [-1.2, -1.25, 2, true],
  ])('%d beside %d with %d decimals: %s', (value, limit, decimals, beyond) => {
    expect(isBeyond(value, limit, decimals)).toBe(beyond);
  });
});
