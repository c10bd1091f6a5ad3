import { describe, expect, it } from 'vitest';
import type { Measurements } from '../../src/measure/index.js';
import { toTakeResult } from '../../src/result/index.js';
import { timingOf } from '../../src/result/timing-of.js';
import { toldReasons } from '../../src/result/told-reason.js';
import type { Part, PartNote } from '../../src/score/index.js';
import { sampleReview } from '../helpers/sample-review.js';

const sample = sampleReview();
const { part } = sample;
const measurements = toldReasons('en', sample.measurements);
const transition = {
  index: 0,
  toIndex: 1,
  betweenOnsetsSeconds: 0.5,
  dipDb: 1,
  gapSeconds: 0.12345,
  soundedShare: 0.75,
};

/** The sample's part with its first two notes changed. */
function partWith(first: Partial<PartNote>, second: Partial<PartNote> = {}): Part {
  const plain = { slurredToNext: false, breathAfter: null, articulations: [], fermata: false, restBeforeQuarters: 0 };
  const notes = part.notes.map((note, i) => ({
    ...note,
    ...(i === 0 ? { ...plain, ...first } : i === 1 ? second : {}),
  }));
  return { ...part, notes };
}

/** The take's document, as far as it holds timing. */
function kept(measured: Partial<Measurements>, changed: Part = part) {
  const { groups, entries, transitions } = toTakeResult({
    ...sample,
    part: changed,
    measurements: { ...sample.measurements, ...measured },
  });
  return { groups, entries, transitions };
}

const asked = (changed: Part) => timingOf(changed, { ...measurements, transitions: [transition] }).transitions;

describe('what a result keeps of the timing', () => {
  // Source: definition; a dot before a rest or under a fermata does not show how short it is (common practice).
  it.each<[string, Part, string | undefined]>([
    ['a slur', partWith({ slurredToNext: true }), 'slur'],
    ['a dot', partWith({ articulations: ['staccato'] }), 'staccato'],
    ['a breath, also where a slur goes on', partWith({ slurredToNext: true, breathAfter: 'breath' }), 'breath'],
    ['a dot before a rest', partWith({ articulations: ['staccato'] }, { restBeforeQuarters: 1 }), undefined],
    ['a dot under a fermata', partWith({ articulations: ['staccato'], fermata: true }), undefined],
    ['nothing that is asked for', partWith({}), undefined],
  ])('of transitions: %s', (_what, changed, expected) => {
    expect(asked(changed).map((one) => one.asked)).toEqual(expected === undefined ? [] : [expected]);
  });

  it('rounds times to a tenth of a millisecond, shares to a hundredth of a percent', () => {
    expect(kept({ transitions: [transition] }, partWith({ slurredToNext: true })).transitions).toEqual([
      { index: 0, toIndex: 1, asked: 'slur', gapSeconds: 0.1235, soundedShare: 0.75 },
    ]);
    const group = { index: 0, toIndex: 2, bar: '1', pass: 1, tuplet: true, seconds: 1 };
    const groups = [{ ...group, shares: [0.4, 0.3, 0.3], written: [1 / 3, 1 / 3, 1 / 3] }];
    const entries = [{ index: 3, bar: '2', pass: 1, restQuarters: 1, lateSeconds: -0.01239, secondsAQuarter: 0.6 }];
    expect(kept({ groups, entries })).toMatchObject({
      groups: [{ bar: '1', shares: [0.4, 0.3, 0.3], written: [0.3333, 0.3333, 0.3333] }],
      entries: [{ bar: '2', lateSeconds: -0.0124, secondsAQuarter: 0.6 }],
    });
  });
});
