import { describe, expect, it } from 'vitest';
import { notMeasured } from '../../src/base/index.js';
import { defaultBrief } from '../../src/brief/index.js';
import { countPlaces } from '../../src/judge/count-places.js';
import { type Criterion, judgeTake } from '../../src/judge/index.js';
import type { Observation } from '../../src/judge/observed/observation.js';
import type { Measurements } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { crescendo, dynamic, type NoteSketch, smallPart } from '../demo/small-part.js';
import { type JudgedOptions, judgeInput } from '../helpers/judged.js';

/**
 * What a part asks for at notes that were passed over, counted by hand: it counts as asked for, and not as met.
 *
 * Source: definition: points possible × places as asked for ÷ places measured or not played.
 */
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PLACE = { bar: '3', pass: 1 };
const partWith = (change: (i: number) => Partial<NoteSketch>, marks: Partial<Part> = {}): Part =>
  smallPart(
    QUARTERS.map((note, i) => ({ ...note, ...change(i) })),
    marks,
  );
const PLAIN = partWith(() => ({}));
const WHY = notMeasured('too-few-under-this-mark');
const DRY = { reverberationSeconds: 0.3, levelRiding: false, onsetSpreadSeconds: 0, cautions: [] };

function count(
  criterion: Criterion,
  part: Part,
  notPlayed: readonly number[],
  options: JudgedOptions = {},
  observations: readonly Partial<Observation>[] = [],
): readonly [of: number, met: number, notPlayed: number] {
  const tally = countPlaces(judgeInput(part, options), observations as readonly Observation[], new Set(notPlayed));
  return [tally[criterion].of, tally[criterion].met, tally[criterion].notPlayed];
}

/** Places measured, as a take has them that was played to the end. */
const none: Partial<Measurements> = {
  groups: [],
  entries: [],
  fermatas: [],
  contrasts: [],
  hairpins: [],
  transitions: [],
  accents: [],
  breaths: [],
  notes: [],
  heldNotes: [],
};

describe('notes that were not played', () => {
  it('count, but for grace notes', () => {
    expect(count('notes', PLAIN, [8, 9])).toEqual([24, 22, 2]);
    const graced = partWith((i) => (i === 9 ? { grace: true } : {}));
    expect(count('notes', graced, [8, 9])).toEqual([23, 22, 1]);
  });

  it('count once more for each that was surely added, and less for each that is surely wrong', () => {
    const fix = { criterion: 'notes', weight: 'fix' } as const;
    expect(count('notes', PLAIN, [8, 9], {}, [{ kind: 'added-note', ...fix }])).toEqual([25, 22, 2]);
    expect(count('notes', PLAIN, [8, 9], {}, [{ kind: 'wrong-note', ...fix }])).toEqual([24, 21, 2]);
    const watch = { criterion: 'notes', weight: 'watch' } as const;
    expect(count('notes', PLAIN, [8, 9], {}, [{ kind: 'added-note', ...watch }])).toEqual([24, 22, 2]);
    expect(count('notes', PLAIN, [8, 9], {}, [{ kind: 'wrong-note', ...watch }])).toEqual([24, 22, 2]);
  });

  it('are never met less than not at all', () => {
    const slips = Array.from(
      { length: 30 },
      () => ({ kind: 'wrong-note', criterion: 'notes', weight: 'fix' }) as const,
    );
    expect(count('notes', PLAIN, [], {}, slips)).toEqual([24, 0, 0]);
  });
});

describe('rhythm that was not played', () => {
  const eighths = (i: number) =>
    i >= 4 && i <= 6 ? { quarters: 1 / 3, tuplet: { group: 't1', actualNotes: 3, normalNotes: 2 } } : {};
  const tripled = smallPart(QUARTERS.map((note, i) => ({ ...note, ...eighths(i) })) as unknown as NoteSketch[]);

  it('is a group of which any note is missing', () => {
    expect(count('rhythm', tripled, [], { measurements: none })[2]).toBe(0);
    for (const index of [4, 5, 6]) expect(count('rhythm', tripled, [index], { measurements: none })).toEqual([1, 0, 1]);
    expect(count('rhythm', tripled, [4, 5, 6], { measurements: none })).toEqual([1, 0, 1]);
    expect(count('rhythm', tripled, [3, 7], { measurements: none })).toEqual([0, 0, 0]);
  });

  it('is an entry after a rest', () => {
    const resting = partWith((i) => (i === 9 || i === 15 ? { rest: 1 } : {}));
    expect(count('rhythm', resting, [9], { measurements: none })).toEqual([1, 0, 1]);
    expect(count('rhythm', resting, [8], { measurements: none })).toEqual([0, 0, 0]);
    expect(count('rhythm', resting, [9, 15], { measurements: none })).toEqual([2, 0, 2]);
  });

  it('is a fermata, unless fermatas only close phrases', () => {
    const held = (ratio: Measurements['fermatas'][number]['ratio']): Partial<Measurements> => ({
      ...none,
      fermatas: [9, 15].map((index) => ({ index, ...PLACE, writtenSeconds: 1, heldSeconds: 2, ratio })),
    });
    const out = notMeasured('note-not-heard');
    expect(count('rhythm', PLAIN, [9], { measurements: held(out) })).toEqual([1, 0, 1]);
    expect(count('rhythm', PLAIN, [8], { measurements: held(out) })).toEqual([0, 0, 0]);
    const closing = notMeasured('fermatas-close-phrases');
    expect(count('rhythm', PLAIN, [9], { measurements: held(closing) })).toEqual([0, 0, 0]);
    expect(count('rhythm', PLAIN, [], { measurements: held(2) })).toEqual([2, 2, 0]);
  });
});

describe('tempo that was not played', () => {
  it('is a bar of which no note was', () => {
    const tempo = { markedQuarterBpm: 60, playedQuarterBpm: 60, bars: [] };
    expect(count('tempo', PLAIN, [8, 9, 10, 11], { measurements: { tempo } })).toEqual([1, 0, 1]);
    expect(count('tempo', PLAIN, [8, 9, 10], { measurements: { tempo } })).toEqual([0, 0, 0]);
    expect(count('tempo', PLAIN, [6, 7, 8, 9, 10, 11, 12], { measurements: { tempo } })).toEqual([1, 0, 1]);
  });
});

describe('dynamics that were not played', () => {
  const marked = partWith(() => ({}), {
    dynamics: [dynamic('p', 0, 0, 7), dynamic('f', 8, 8, 15), dynamic('mf', 16, 16, 23)],
  });
  const levels = [
    { mark: 'p', index: 0, toIndex: 7, bar: '1', pass: 1, levelDb: -30 },
    { mark: 'f', index: 8, toIndex: 15, bar: '3', pass: 1, levelDb: WHY },
    { mark: 'mf', index: 16, toIndex: 23, bar: '5', pass: 1, levelDb: -26 },
  ];
  const contrast = (from: string, to: string, index: number, differenceDb: number | typeof WHY) => {
    return { from, to, index, ...PLACE, differenceDb, registerAdjustedDb: differenceDb };
  };
  const left = (notPlayed: readonly number[], db: number | typeof WHY = WHY) => {
    const contrasts = [contrast('p', 'f', 8, db), contrast('f', 'mf', 16, db)];
    return count('dynamics', marked, notPlayed, { measurements: { ...none, levels, contrasts } });
  };
  const stretch = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, k) => from + k);

  it('are both changes around a mark of whose notes half were passed over', () => {
    expect(left(stretch(8, 15))).toEqual([2, 0, 2]);
    expect(left(stretch(8, 11))).toEqual([2, 0, 2]);
    expect(left(stretch(8, 10))).toEqual([0, 0, 0]);
  });

  it('are only the change that the mark at an edge takes part in', () => {
    expect(left(stretch(0, 3))).toEqual([1, 0, 1]);
    expect(left(stretch(20, 23))).toEqual([1, 0, 1]);
  });

  it('are none that could be measured all the same', () => {
    expect(left(stretch(8, 11), 8)).toEqual([2, 2, 0]);
  });

  it('are a hairpin of which half was passed over', () => {
    const wedge = { ...crescendo(4, 12, 4, 11), slopeDbPerBar: WHY, slopeDbPerSecond: WHY };
    const measurements = { ...none, hairpins: [{ ...wedge, riseDb: WHY, registerAdjustedRiseDb: WHY }] };
    expect(count('dynamics', marked, stretch(4, 7), { measurements })).toEqual([1, 0, 1]);
    expect(count('dynamics', marked, stretch(4, 6), { measurements })).toEqual([0, 0, 0]);
    expect(count('dynamics', marked, stretch(9, 14), { measurements })).toEqual([0, 0, 0]);
    expect(count('dynamics', marked, stretch(8, 14), { measurements })).toEqual([1, 0, 1]);
  });

  it('are nothing where the recorder moved its level', () => {
    const { recording } = judgeInput(marked).measurements;
    const measurements = { ...none, levels, contrasts: [contrast('p', 'f', 8, 8)] };
    const moved = { ...measurements, recording: { ...recording, levelRiding: true } };
    expect(count('dynamics', marked, [], { measurements })).toEqual([1, 1, 0]);
    expect(count('dynamics', marked, [], { measurements: moved })).toEqual([0, 0, 0]);
  });
});

describe('articulation that was not played', () => {
  const dotted = partWith((i) => ({
    articulations: i === 5 ? ['staccato'] : i === 12 ? ['accent'] : [],
    slurredToNext: i === 8,
    slurredFromPrevious: i === 9,
  }));

  it('is a slur or a dot with the note it leads to, and an accent', () => {
    const left = (...notPlayed: number[]) => count('articulation', dotted, notPlayed, { measurements: none });
    expect([left(5), left(6), left(4)]).toEqual([
      [1, 0, 1],
      [1, 0, 1],
      [0, 0, 0],
    ]);
    expect([left(8), left(9), left(10)]).toEqual([
      [1, 0, 1],
      [1, 0, 1],
      [0, 0, 0],
    ]);
    expect([left(12), left(11)]).toEqual([
      [1, 0, 1],
      [0, 0, 0],
    ]);
    expect(left(5, 8, 12)).toEqual([3, 0, 3]);
  });

  it('counts the slurs, dots and accents that were measured', () => {
    const pace = { betweenOnsetsSeconds: 1, gapSeconds: 0, soundedShare: 1, dipDb: 0 };
    const transitions = [5, 6, 8].map((index) => ({ index, toIndex: index + 1, ...pace }));
    const accents = [{ mark: 'accent', index: 12, ...PLACE, overDb: 3, spreadDb: 1 }];
    expect(count('articulation', dotted, [], { measurements: { ...none, transitions, accents } })).toEqual([3, 3, 0]);
  });
});

describe('breaths that were not played', () => {
  const breathing = (gapSeconds: Measurements['breaths'][number]['gapSeconds']): Partial<Measurements> => ({
    ...none,
    breaths: [{ index: 8, bar: '3', pass: 1, beat: 1, gapSeconds, lateSeconds: gapSeconds }],
  });
  const out = notMeasured('neighbours-not-heard');

  it('are those of which the note before or after was passed over', () => {
    const left = (index: number) => count('breath', PLAIN, [index], { measurements: breathing(out) });
    expect([left(7), left(8), left(9), left(10)]).toEqual([
      [0, 0, 0],
      [1, 0, 1],
      [1, 0, 1],
      [0, 0, 0],
    ]);
  });

  it('count one more for each where none is asked for', () => {
    const fix = { kind: 'breath-unmarked', criterion: 'breath', weight: 'fix' } as const;
    const measurements = breathing(0.3);
    expect(count('breath', PLAIN, [], { measurements })).toEqual([1, 1, 0]);
    expect(count('breath', PLAIN, [], { measurements }, [fix])).toEqual([2, 1, 0]);
    expect(count('breath', PLAIN, [], { measurements }, [{ ...fix, weight: 'watch' }])).toEqual([1, 1, 0]);
    expect(count('breath', PLAIN, [], { measurements }, [{ ...fix, kind: 'breath-missed' }])).toEqual([1, 0, 0]);
  });
});

describe('tuning and sound that were not played', () => {
  /** Notes 0 to 3 are halves of a quarter, 4 to 7 halves; the others are quarters. */
  const mixed = smallPart(QUARTERS.map((note, i) => ({ ...note, quarters: i < 4 ? 0.5 : i < 8 ? 2 : 1 })));
  const told = (...indexes: number[]) =>
    indexes.map((index) => ({ index, cents: 0, centsFromOwnTuning: 0, levelDb: -24 }));

  it('are notes at least as long as the shortest whose pitch this take tells', () => {
    const left = (notPlayed: readonly number[], ...heard: number[]) =>
      count('intonation', mixed, notPlayed, { measurements: { ...none, notes: told(...heard) } });
    expect(left([0, 4, 12], 10)).toEqual([3, 1, 2]);
    expect(left([0, 4, 12], 10, 1)).toEqual([5, 2, 3]);
    expect(left([0, 4, 12], 5)).toEqual([2, 1, 1]);
    expect(left([0, 4, 12])).toEqual([0, 0, 0]);
  });

  it('leave out grace notes, and notes whose pitch was not told', () => {
    const graced = { ...mixed, notes: mixed.notes.map((n) => (n.index < 2 ? { ...n, grace: true } : n)) };
    const why = notMeasured('note-unsteady');
    const untold = { index: 3, cents: why, centsFromOwnTuning: why, levelDb: -24 };
    const notes = [...told(1, 10), untold];
    expect(count('intonation', graced, [0, 2, 12], { measurements: { ...none, notes } })).toEqual([3, 2, 1]);
  });

  it('are notes at least as long as the shortest that was held', () => {
    const { recording } = judgeInput(mixed).measurements;
    const steadiness = { wobbleCents: 1, intervalCents: [0, 2] as const, count: 5, vibratoCount: 0 };
    const long = { bar: '3', pass: 1, seconds: 2, wobbleCents: 1, wobbleDb: 0.1, endCents: 0, endDb: 0 };
    const held = (...indexes: number[]) => indexes.map((index) => ({ index, ...long, beforeBreath: false }));
    const left = (levelRiding: boolean, ...indexes: number[]) => {
      const heard = { ...recording, ...DRY, levelRiding };
      const measurements = { ...none, heldNotes: held(...indexes), steadiness, recording: heard };
      return count('sound', mixed, [4, 12], { measurements });
    };
    expect(left(false, 5)).toEqual([2, 1, 1]);
    expect(left(false, 5, 10)).toEqual([4, 2, 2]);
    expect(left(true, 5)).toEqual([0, 0, 0]);
  });
});

describe('bars that were not played', () => {
  it('are those of which any note was passed over, each once', () => {
    expect(count('continuity', PLAIN, [])).toEqual([6, 6, 0]);
    expect(count('continuity', PLAIN, [8])).toEqual([6, 5, 1]);
    expect(count('continuity', PLAIN, [8, 9])).toEqual([6, 5, 1]);
    expect(count('continuity', PLAIN, [7, 8])).toEqual([6, 4, 2]);
  });

  it('count one less for each that was begun again, and none for skips twice', () => {
    const restart = { kind: 'restart', criterion: 'continuity', weight: 'fix' } as const;
    const skipped = { kind: 'skipped-bars', criterion: 'continuity', weight: 'fix' } as const;
    expect(count('continuity', PLAIN, [8], {}, [restart, skipped])).toEqual([6, 4, 1]);
    expect(count('continuity', PLAIN, [8], {}, [{ ...restart, weight: 'watch' }])).toEqual([6, 5, 1]);
  });
});

describe('the line of a criterion of which nothing was played', () => {
  /** Bars 4 to 6 were not come to; the only slur stands in bar 5. */
  const slurred = partWith((i) => ({ slurredToNext: i === 16, slurredFromPrevious: i === 17 }));
  const aligned = Object.fromEntries(
    Array.from({ length: 12 }, (_, k) => [12 + k, { status: 'left-out', confidence: 0 }] as const),
  );
  const alignment = { skips: [{ fromIndex: 12, toIndex: 23, onsetSeconds: 12.5 }] };
  const usual = defaultBrief(slurred);
  const lineOf = (criterion: Criterion, recording = {}, leftOut = false) => {
    const criteria = { ...usual.criteria, articulation: { judged: !leftOut, points: 10 } };
    const input = judgeInput(slurred, { aligned, alignment, brief: { ...usual, criteria } });
    const transitions = input.measurements.transitions.filter((t) => t.toIndex < 12);
    const heard = { ...input.measurements.recording, ...recording };
    const measurements = { ...input.measurements, transitions, recording: heard };
    return judgeTake({ ...input, measurements }).criteria.find((line) => line.criterion === criterion)!;
  };

  it('says so, and gives none of its points', () => {
    expect(lineOf('articulation')).toMatchObject({
      ...{ judged: false, of: 1, met: 0, notPlayed: 1, sayings: [] },
      ...{ reason: { code: 'not-played', facts: {} }, points: { possible: 10, given: 0 } },
    });
  });

  it('gives no points at all where the recorder cut the take off, or the brief leaves it out', () => {
    expect(lineOf('articulation', { breaksOff: true }).points).toEqual({ possible: 10, given: null });
    const out = lineOf('articulation', {}, true);
    expect(out).toMatchObject({ judged: false, reason: { code: 'brief-leaves-out' }, sayings: [] });
    expect(out.points).toEqual({ possible: 10, given: null });
  });

  it('is an ordinary one where something of it was played', () => {
    const line = lineOf('notes');
    expect([line.of, line.met, line.notPlayed, line.judged]).toEqual([24, 12, 12, true]);
    expect(line.reason).toBeUndefined();
  });
});
