import { describe, expect, it } from 'vitest';
import { type Brief, defaultBrief } from '../../src/brief/index.js';
import { type Criterion, type CriterionLine, judgeTake } from '../../src/judge/index.js';
import { type Measurements, measureTake, type TransitionMeasure } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';
import type { JudgedOptions } from '../helpers/judged.js';

/**
 * What each criterion counts and says in its one line, counted by hand. Of places that count as asked for on one side of a
 * standard and not on the other there is one on each side, in absolute numbers.
 *
 * Source: definition: places measured, and those of them that are surely as asked for; doubt costs nothing.
 */
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PART = smallPart(QUARTERS);
const PLACE = { bar: '3', pass: 1 };

function line(
  criterion: Criterion,
  measurements: Partial<Measurements>,
  { part = PART, brief, aligned, alignment }: JudgedOptions & { part?: Part; brief?: Brief } = {},
): CriterionLine {
  const context = handContext(part, playEvenly(part));
  const notes = context.alignment.notes.map((note) => ({ ...note, ...aligned?.[note.index] }));
  const input = {
    part,
    alignment: { ...context.alignment, notes, ...alignment },
    measurements: { ...measureTake(context), ...measurements },
    ...(brief === undefined ? {} : { brief }),
  };
  return judgeTake(input).criteria.find((each) => each.criterion === criterion)!;
}

const counts = ({ of, met }: CriterionLine) => `${met} of ${of}`;
const facts = (of: CriterionLine, code: string) => of.sayings.find((saying) => saying.code === code)?.facts;

describe('notes', () => {
  it('are all but the unclear, and one more for each that was surely added', () => {
    expect(counts(line('notes', {}))).toBe('24 of 24');
    const unclear = { 5: { status: 'unclear' as const, confidence: 0 } };
    expect(counts(line('notes', {}, { aligned: unclear }))).toBe('23 of 23');
    expect(facts(line('notes', {}, { aligned: unclear }), 'notes-as-written')).toEqual({
      right: 23,
      of: 24,
      unclear: 1,
    });
    const added = (away: number) => {
      const midi = PART.notes[8]!.soundingMidi + away;
      return [{ onsetSeconds: 9.2, offsetSeconds: 9.5, midi, afterIndex: 8 }];
    };
    expect(counts(line('notes', {}, { alignment: { added: added(4) } }))).toBe('24 of 25');
    // a semitone away it may be a bent tone: to be watched, and no place of its own
    expect(counts(line('notes', {}, { alignment: { added: added(1) } }))).toBe('24 of 24');
  });
});

describe('rhythm', () => {
  const group = (off: number) => {
    const shares = [1 / 3 + off, 1 / 3 - off / 2, 1 / 3 - off / 2];
    const written = [1 / 3, 1 / 3, 1 / 3];
    return { index: 4, toIndex: 6, ...PLACE, tuplet: true, seconds: 1.5, shares, written };
  };
  const entry = (lateSeconds: number) => ({ index: 8, ...PLACE, restQuarters: 1, lateSeconds, secondsAQuarter: 1 });

  it('says how many groups are within 0.065 and how many entries within 0.085 of a beat', () => {
    const heard = line('rhythm', {
      groups: [group(0), group(0.064), group(0.066)],
      entries: [entry(-0.3), entry(0.084), entry(0.086), entry(0.3)],
    });
    expect(facts(heard, 'groups-even')).toEqual({ even: 2, of: 3 });
    expect(facts(heard, 'entries-in-time')).toEqual({ inTime: 2, of: 4 });
    // of seven places one entry is surely late; the others are at most to be watched
    expect(counts(heard)).toBe('6 of 7');
  });

  it('counts the fermatas that were measured', () => {
    const fermatas = [1.5, 3.3].map((ratio, k) => {
      return { index: 4 + k, ...PLACE, writtenSeconds: 1, heldSeconds: ratio, ratio };
    });
    expect(counts(line('rhythm', { groups: [group(0)], entries: [], fermatas }))).toBe('2 of 3');
  });
});

describe('tempo', () => {
  const tempo = (played: number, bars: readonly number[]) => ({
    markedQuarterBpm: 100,
    playedQuarterBpm: played,
    bars: bars.map((quarterBpm, i) => ({ bar: String(i + 1), pass: 1, startQuarters: 4 * i, quarterBpm })),
  });

  // Without a range the player's own tempo counts, give or take 7 %, and a bar may breathe 7 % more: 86.49 to 114.49.
  it('counts the bars near the player’s own', () => {
    expect(counts(line('tempo', { tempo: tempo(100, [86.4, 86.6, 100, 114.4, 114.6]) }))).toBe('3 of 5');
  });

  // A range of 90 to 105, and a bar may breathe 7 % more: 83.7 to 112.35.
  it('counts the bars within the range of a brief', () => {
    const range = { quarterBpm: 100, lowestQuarterBpm: 90, highestQuarterBpm: 105 };
    const brief: Brief = { ...defaultBrief(PART), tempo: range };
    expect(counts(line('tempo', { tempo: tempo(100, [83.6, 83.8, 112.3, 112.4]) }, { brief }))).toBe('2 of 4');
  });

  it.each([
    [97.1, 'as-marked'],
    [96.9, 'a-little-slower'],
    [94.1, 'a-little-slower'],
    [93.9, 'slower'],
    [102.9, 'as-marked'],
    [103.1, 'a-little-faster'],
    [105.9, 'a-little-faster'],
    [106.1, 'faster'],
  ])('of %d beside 100 is %s', (played, heard) => {
    expect(facts(line('tempo', { tempo: tempo(played, []) }), 'tempo-beside-mark')).toMatchObject({ heard });
  });
});

describe('dynamics', () => {
  const contrast = (differenceDb: number) => {
    const adjusted = { registerAdjustedDb: differenceDb, intervalDb: [differenceDb, differenceDb] as const };
    return { from: 'p', to: 'f', index: 8, ...PLACE, differenceDb, ...adjusted };
  };

  it('say how many changes are plain and how many go the other way', () => {
    const heard = line('dynamics', { contrasts: [-1.1, -0.9, 2.9, 3.1, 6].map(contrast), hairpins: [] });
    expect(facts(heard, 'contrasts-mixed')).toEqual({
      ...{ of: 5, plain: 2, reversed: 1 },
      ...{ usualDb: 2.9, smallestDb: -1.1, leastDb: 3 },
    });
    // 2.9 is at the limit: half a decibel is left to doubt
    expect(counts(heard)).toBe('3 of 5');
    const recording = { ...measureTake(handContext(PART, playEvenly(PART))).recording, levelRiding: true };
    expect(counts(line('dynamics', { contrasts: [contrast(6)], recording }))).toBe('0 of 0');
  });

  it.each([
    [[4, 5], 'contrasts-plain'],
    [[-2, -3], 'contrasts-reversed'],
    [[0, 1], 'contrasts-alike'],
    [[0, 5], 'contrasts-mixed'],
  ])('of %j are %s', (sizes, code) => {
    const [saying] = line('dynamics', { contrasts: sizes.map(contrast), hairpins: [] }).sayings;
    expect(saying!.code).toBe(code);
  });
});

describe('articulation and breath', () => {
  const slurred = smallPart(QUARTERS.map((note) => ({ ...note, slurredToNext: true, slurredFromPrevious: true })));
  const transitions = (gaps: readonly number[]): TransitionMeasure[] =>
    gaps.map((gapSeconds, k) => {
      const pace = { betweenOnsetsSeconds: 1, expectedSeconds: 1, secondsAQuarter: 1 };
      return { index: 2 * k, toIndex: 2 * k + 1, ...pace, gapSeconds, dipDb: 30, soundedShare: 1 - gapSeconds };
    });

  it('say how many slurs are joined, up to 28 ms, and count those that are surely broken', () => {
    const heard = line('articulation', { transitions: transitions([0, 0.027, 0.029, 0.1]) }, { part: slurred });
    expect(facts(heard, 'slurs-joined')).toEqual({ joined: 2, of: 4 });
    expect(counts(heard)).toBe('3 of 4');
  });

  it.each(['staccato', 'tenuto'] as const)('say how long notes with %s sound, of three or more', (way) => {
    const told = (count: number) => {
      const articulations = [{ way, count, soundedShare: 0.6, middleHalf: [0.5, 0.7] as const }];
      return facts(line('articulation', { articulations }), `${way}-sounds`);
    };
    expect([told(2), told(3)]).toEqual([undefined, { percent: 60 }]);
  });

  it('say how many breaths are heard, above 0.12 s, and how many full ones, below 0.3 s, were sips', () => {
    const breaths = [0.119, 0.121, 0.299, 0.301].map((gapSeconds, k) => {
      return { index: 4 * k, bar: '1', pass: 1, beat: 1, gapSeconds, lateSeconds: 0 };
    });
    const asked = breaths.map(({ index }) => ({ index, bar: '1', beat: 1, pass: 1, kind: 'full' as const }));
    const brief: Brief = { ...defaultBrief(PART), breaths: asked };
    const heard = line('breath', { breaths }, { brief });
    expect(facts(heard, 'breaths-heard')).toEqual({ heard: 3, of: 4 });
    expect(facts(heard, 'short-breaths')).toEqual({ count: 2 });
    expect(counts(heard)).toBe('4 of 4');
    // whose the breaths are is the teacher's: one of 0.121 s is surely no full one, one of 0.119 s may be one that was not heard
    expect(counts(line('breath', { breaths }, { brief: { ...brief, ownBreaths: true } }))).toBe('3 of 4');
  });

  it('count a breath where none is asked for as a place of its own', () => {
    const silent = transitions([0.5]).map((t) => ({ ...t, soundedShare: 0.4 }));
    expect(counts(line('breath', { transitions: silent, breaths: [] }))).toBe('0 of 1');
  });
});

describe('intonation', () => {
  const tuning = (centsFromA440: number) =>
    facts(line('intonation', { tuning: { centsFromA440, a4Hz: 440 } }), 'tuning');

  it.each([
    [0.4, 'exact'],
    [-0.6, 'close'],
    [10.4, 'close'],
    [-10.4, 'close'],
    [10.6, 'off'],
    [-10.6, 'off'],
  ])('of %d cents is %s, as they are told', (cents, heard) => {
    expect(tuning(cents)).toMatchObject({ heard });
  });

  it('tells of a register that leans by more than ten cents for sure, and not of the middle one', () => {
    const told = (register: 'low' | 'middle' | 'high', cents: number, intervalCents: [number, number]) => {
      const registers = [{ register, fromMidi: 60, toMidi: 66, cents, count: 9, intervalCents }];
      const none = { notMeasured: { code: 'loud-and-soft-alike', facts: {} } } as const;
      const intonation = { noteNames: [], registers, withLoudness: none } as unknown as Measurements['intonation'];
      return facts(line('intonation', { intonation }), 'register') !== undefined;
    };
    expect(told('high', 10.1, [2, 18])).toBe(true);
    expect(told('low', -10.1, [-18, -2])).toBe(true);
    expect(told('high', 9.9, [2, 18])).toBe(false);
    expect(told('high', 12, [-1, 25])).toBe(false);
    expect(told('middle', 20, [15, 25])).toBe(false);
  });

  it('tells of loud notes that lean by more than ten cents, beyond twice the error', () => {
    const told = (centsPerDb: number, errorCentsPerDb: number) => {
      const withLoudness = { centsPerDb, errorCentsPerDb, reachDb: 10, count: 20 };
      const heard = line('intonation', { intonation: { noteNames: [], registers: [], withLoudness } });
      return facts(heard, 'loud-notes') !== undefined;
    };
    expect([told(1.01, 0.1), told(-1.01, 0.1), told(0.99, 0.1)]).toEqual([true, true, false]);
    expect([told(2, 0.99), told(2, 1.01)]).toEqual([true, false]);
  });
});

describe('continuity', () => {
  it('counts bars, and the one in which the player began again', () => {
    expect(line('continuity', {}).sayings).toEqual([{ code: 'played-through', facts: {} }]);
    const restarts = [{ stoppedAtIndex: 13, resumedAtIndex: 8, onsetSeconds: 16 }];
    const heard = line('continuity', {}, { alignment: { restarts } });
    expect(counts(heard)).toBe('5 of 6');
    expect(heard.sayings).toEqual([{ code: 'restarts', facts: { count: 1 } }]);
  });

  it('counts the bars that were passed over as not played', () => {
    const left = { status: 'left-out' as const };
    const aligned = { 8: left, 9: left, 10: left, 11: left };
    const skips = [{ fromIndex: 8, toIndex: 11, onsetSeconds: 8.5 }];
    const heard = line('continuity', {}, { aligned, alignment: { skips } });
    expect([heard.of, heard.met, heard.notPlayed]).toEqual([6, 5, 1]);
    expect(heard.sayings).toEqual([{ code: 'skips', facts: { count: 1 } }]);
  });
});
