import { describe, expect, it } from 'vitest';
import type { Fault, VoiceName } from '../../src/demo/index.js';
import { seededRandom } from '../../src/demo/random.js';
import { judgeTake } from '../../src/judge/index.js';
import { leaningsOf } from '../../src/judge/leanings.js';
import { type MeasureContext, measureTake, type UnevennessMeasure } from '../../src/measure/index.js';
import { measureGroups } from '../../src/measure/measures/groups.js';
import { measureUnevenness } from '../../src/measure/measures/unevenness.js';
import type { UnevenCause } from '../../src/measure/types.js';
import type { GroupedNote } from '../../src/measure/uneven/grouped-notes.js';
import { lengthDifference, within } from '../../src/measure/uneven/within-groups.js';
import { STANDARDS } from '../../src/standards/index.js';
import { smallPart } from '../demo/small-part.js';
import { type HandNote, handContext, playEvenly } from '../helpers/hand-context.js';
import { hearTake } from '../helpers/heard-take.js';
import { type Triplets, tripletNote, triplets } from '../helpers/triplets.js';

const STEADY = { timingScatterSeconds: 0.012 };
const unevenness = (context: MeasureContext): UnevennessMeasure =>
  measureUnevenness(context, measureGroups(context)) as UnevennessMeasure;
const told = (context: MeasureContext): string[] =>
  leaningsOf({ measurements: { unevenness: unevenness(context) }, standards: STANDARDS }).map(({ causes }) =>
    causes.toSorted().join(' or '),
  );
const lean = (at: readonly number[], share: number): Fault => ({ kind: 'leans', at, share });

/** Lengthens notes of triplets exactly, and lets the others of their triplet make room. */
function leaning(notes: readonly HandNote[], at: ReadonlySet<number>, share: number): HandNote[] {
  return notes.map((note) => {
    const first = note.index - (note.index % 3);
    const weights = [first, first + 1, first + 2].map((i) => (at.has(i) ? 1 + share : 1));
    const before = weights.slice(0, note.index - first).reduce((sum, w) => sum + w, 0);
    const all = weights.reduce((sum, w) => sum + w, 0);
    return { ...note, onset: notes[first]!.onset + before / all };
  });
}

/** Triplets of which just one note stands before a leap of a sixth: the first, second, third and first again of each four. */
const LEAPS = new Set(Array.from({ length: 24 }, (_, group) => 3 * group + [0, 1, 2, 0][group % 4]!));
const ONE_LEAP = smallPart(
  Array.from({ length: 73 }, (_, i) => {
    const high = [...LEAPS].filter((leap) => leap < i).length % 2 === 1;
    // the last note is so high that all others lie in the lowest third of the range
    const midi = i === 72 ? 100 : 64 + (i % 2 === 0 ? 0 : 2) + (high ? 9 : 0);
    if (i === 72) return { ...tripletNote(75, midi, true), rest: 1 };
    return { ...tripletNote(i, midi, false), slurredToNext: i < 71, slurredFromPrevious: i > 0 };
  }),
);

describe('what triplets lean with, by hand', () => {
  it('nothing, when they are even', () => {
    const context = handContext(ONE_LEAP, playEvenly(ONE_LEAP));
    const { causes, groups } = unevenness(context);
    expect(groups).toBe(24);
    expect(causes.map(({ cause }) => cause)).toEqual(['leap', 'first', 'last']);
    for (const { differenceShare } of causes) expect(differenceShare).toBeCloseTo(0, 6);
    expect(told(context)).toEqual([]);
  });

  it('leaps, by so much as they lean', () => {
    const context = handContext(ONE_LEAP, leaning(playEvenly(ONE_LEAP), LEAPS, 0.2));
    const leap = unevenness(context).causes.find(({ cause }) => cause === 'leap')!;
    // of three notes one is 1.2 times as long as each other: 3.6 and 3 over 3.2, so 0.1875 of what is written apart
    expect(leap.differenceShare).toBeCloseTo(0.1875, 6);
    expect([leap.count, leap.others]).toEqual([24, 47]);
    expect(leap.noteSeconds).toBeCloseTo(1 / 3, 6);
    expect(told(context)).toEqual(['leap']);
  });

  it('and too short as well as too long', () => {
    const context = handContext(ONE_LEAP, leaning(playEvenly(ONE_LEAP), LEAPS, -0.2));
    // 2.4 and 3 over 2.8
    const leap = unevenness(context).causes.find(({ cause }) => cause === 'leap')!;
    expect(leap.differenceShare).toBeCloseTo(-0.6 / 2.8, 6);
    expect(told(context)).toEqual(['leap']);
  });

  it('not by less than a listener minds, however sure it is', () => {
    const small = handContext(ONE_LEAP, leaning(playEvenly(ONE_LEAP), LEAPS, 0.08));
    expect(told(small)).toEqual([]);
  });

  it('cannot be told of a few', () => {
    const { part } = triplets(1);
    const few = { ...part, notes: part.notes.slice(0, 16) };
    expect(measureTake(handContext(few, playEvenly(few))).unevenness).toEqual({
      notMeasured: { code: 'too-few-groups', facts: {} },
    });
    const none = smallPart(Array.from({ length: 24 }, (_, i) => ({ midi: 60 + ((7 * i) % 12), quarters: 1 })));
    expect(measureTake(handContext(none, playEvenly(none))).unevenness).toEqual({
      notMeasured: { code: 'no-groups', facts: {} },
    });
  });

  it('leaves out groups of which an onset is not sure', () => {
    const even = playEvenly(ONE_LEAP);
    const missing = even.map((note) => (note.index === 7 ? { ...note, status: 'left-out' as const } : note));
    expect(unevenness(handContext(ONE_LEAP, missing)).groups).toBe(23);
    const added = { added: [{ onsetSeconds: 3, offsetSeconds: 3.1, midi: 70, afterIndex: 10 }] };
    expect(unevenness(handContext(ONE_LEAP, even, { alignment: added })).groups).toBe(23);
  });

  // Source: Bonferroni's inequality: of takes that lean nowhere at most one in twenty has any joint interval without zero.
  it('takes chance for a cause in one take of twenty at most, and tells none', () => {
    const { part } = triplets(7);
    const even = playEvenly(part, 0.75);
    let [chance, claims] = [0, 0];
    const takes = 400;
    for (let seed = 0; seed < takes; seed++) {
      const random = seededRandom(seed);
      const context = handContext(
        part,
        even.map((note) => ({ ...note, onset: note.onset + 0.02 * random.normal() })),
      );
      const excludes = unevenness(context).causes.some(({ jointIntervalShare: [low, high] }) => low > 0 || high < 0);
      chance += excludes ? 1 : 0;
      claims += told(context).length;
    }
    // 5 % of 400, and two standard errors of such a count
    expect(chance).toBeLessThanOrEqual(20 + 2 * Math.sqrt(takes * 0.05 * 0.95));
    expect(claims / takes).toBeLessThan(0.02);
  });
});

it('is told with each group that shows it, and in the line of rhythm', () => {
  const context = handContext(ONE_LEAP, leaning(playEvenly(ONE_LEAP), LEAPS, 0.4));
  const { findings, criteria } = judgeTake({ ...context, measurements: measureTake(context) });
  const uneven = findings.filter((f) => f.kind === 'uneven-group');
  expect(uneven.length).toBeGreaterThan(20);
  // 1.4 over 3.4 of the triplet is 1.2353 times a third, 1 over 3.4 is 0.8824 times
  for (const { facts } of uneven) {
    expect(facts.cause).toMatchObject({ causes: ['leap'], count: 24 });
    expect(facts.cause!.differenceShare).toBeCloseTo(1.2353 - 0.8824, 3);
  }
  const sayings = criteria.find(({ criterion }) => criterion === 'rhythm')!.sayings;
  expect(sayings).toContainEqual({ code: 'groups-lean', facts: uneven[0]!.facts.cause });
});

describe.each(['clarinet', 'flute', 'brass'] as const satisfies readonly VoiceName[])('a %s', (voice) => {
  const heard = ({ part }: Triplets, ...faults: Fault[]) => hearTake(part, { voice, seed: 5, ...STEADY, faults });

  it('that leans at leaps, at changes of slur and tongue, at the first note, or nowhere', { timeout: 60_000 }, () => {
    const page = triplets(3);
    expect(told(heard(page))).toEqual([]);
    expect(told(heard(page, lean(page.leaps, 0.3)))).toEqual(['leap']);
    expect(told(heard(page, lean(page.changes, 0.3)))).toEqual(['articulation']);
    expect(told(heard(page, lean(page.firsts, 0.3)))).toEqual(['first']);
  });

  it('that leans where leaps and changes come together: it cannot be told which', { timeout: 60_000 }, () => {
    const page = triplets(3, true);
    expect(told(heard(page, lean(page.leaps, 0.3)))).toEqual(['articulation or leap']);
  });
});

// Only in the first group do the two causes come at different notes: how sure a difference between them is cannot be seen there.
it('cannot be told apart by what one group alone shows', () => {
  const note = (group: number, cause: UnevenCause | null, other: UnevenCause | null, longer: number): GroupedNote => {
    return { group, longer, seconds: 0.2, causes: new Set([cause, other].filter((one) => one !== null)) };
  };
  const alike = Array.from({ length: 12 }, (_, g) => [
    note(g + 1, 'leap', 'first', 0.2),
    note(g + 1, null, null, -0.2),
  ]);
  const apart = [note(0, 'leap', null, 0.2), note(0, null, 'first', -0.2)];
  const data = within([...apart, ...alike.flat()], ['leap', 'first']);
  expect(lengthDifference(data, 'leap', 'first')).toBeNull();
  expect(lengthDifference(data, 'leap')!.differenceShare).toBeCloseTo(0.4, 9);
});
