import { describe, expect, it } from 'vitest';
import type { Alignment } from '../../src/align/index.js';
import { type Criterion, judgeTake } from '../../src/judge/index.js';
import { measureTake } from '../../src/measure/index.js';
import type { Misreading } from '../../src/score/index.js';
import { STANDARDS } from '../../src/standards/index.js';
import { crescendo, dynamic, type NoteSketch, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';
import { judged, ofKind, weightOf } from '../helpers/judged.js';
import { said } from '../helpers/said.js';

const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PART = smallPart(QUARTERS);

/** In D major, bar 3, an F sharp; the sounding pitch is two semitones below the written one, as on a B♭ clarinet. */
const misreadings: readonly Misreading[] = [
  { kind: 'key-signature-forgotten', writtenMidi: 65, soundingMidi: 63 },
  { kind: 'carried-past-barline', writtenMidi: 67, soundingMidi: 65 },
];
const F_SHARP: NoteSketch = {
  midi: 64,
  quarters: 1,
  written: { step: 'F', alter: 1, octave: 4 },
  writtenMidi: 66,
  soundingMidi: 64,
  misreadings,
};
const TRAPPED = smallPart(QUARTERS.map((note, i) => (i === 9 ? F_SHARP : note)));

describe('a note at another pitch', () => {
  const played = (playedMidi: number, confidence = 1) =>
    judged(TRAPPED, { aligned: { 9: { status: 'other-pitch', playedMidi, confidence } } });

  it('is an accidental when a misreading gives exactly that pitch', () => {
    const [finding] = ofKind(played(63), 'accidental');
    expect(finding).toMatchObject({
      facts: expect.objectContaining({ misreading: 'key-signature-forgotten' }),
      bar: '3',
      beat: 2,
      index: 9,
      weight: 'fix',
    });
    // named as the player reads it: F, not the E flat that sounds
    expect(finding!.text).toMatch(/\bF\b/);
    expect(finding!.text).toMatch(/F sharp/);
    expect(ofKind(played(65), 'accidental')[0]).toMatchObject({ facts: { misreading: 'carried-past-barline' } });
  });

  it('is a wrong note when none does', () => {
    const [finding] = ofKind(played(67), 'wrong-note');
    expect(finding).toMatchObject({ index: 9, weight: 'fix', measured: { value: 3, unit: 'semitones' } });
    expect(finding!.text).toMatch(/F sharp; you played A\./);
    expect(finding).not.toHaveProperty('misreading');
  });

  it('an octave off is told as that', () => {
    expect(ofKind(played(76), 'wrong-note')[0]!.text).toMatch(/octave higher/);
    expect(ofKind(played(52), 'wrong-note')[0]!.text).toMatch(/octave lower/);
  });

  it('is only to be watched when it is not sure', () => {
    const { value } = STANDARDS.slipConfidence;
    expect(weightOf(played(63, value + 0.01), 'accidental')).toBe('fix');
    expect(weightOf(played(63, value - 0.01), 'accidental')).toBe('watch');
    expect(weightOf(played(67, value - 0.01), 'wrong-note')).toBe('watch');
  });
});

describe('a note left out', () => {
  const out = { status: 'left-out' as const };

  const place = { index: 9, silentSeconds: 1, writtenSeconds: 1, closedUpShare: 0, fallDb: 40 };
  const empty = (change: Partial<typeof place> = {}) => ({
    aligned: { 9: out },
    measurements: { emptyPlaces: [{ ...place, ...change }] },
  });

  it('is a fix when its neighbours are sure and its place is silent, or closed up', () => {
    expect(weightOf(judged(PART, empty()), 'missed-note')).toBe('fix');
    expect(weightOf(judged(PART, empty({ silentSeconds: 0, fallDb: 0, closedUpShare: 0.5 })), 'missed-note')).toBe(
      'fix',
    );
  });

  it('is to be watched where something sounds in its place: it may only not have been made out', () => {
    expect(weightOf(judged(PART, empty({ silentSeconds: 0.2 })), 'missed-note')).toBe('watch');
    expect(weightOf(judged(PART, empty({ fallDb: 4 })), 'missed-note')).toBe('watch');
    expect(weightOf(judged(PART, { aligned: { 9: out } }), 'missed-note')).toBe('watch');
  });

  it('is to be watched under a slur, in a repetition or beside doubtful notes', () => {
    const slurred = smallPart(QUARTERS.map((note, i) => ({ ...note, slurredFromPrevious: i === 9 })));
    const repeated = smallPart(QUARTERS.map((note, i) => (i === 9 ? QUARTERS[8]! : note)));
    expect(weightOf(judged(slurred, empty()), 'missed-note')).toBe('watch');
    expect(weightOf(judged(repeated, empty()), 'missed-note')).toBe('watch');
    const doubtful = { ...empty(), aligned: { 9: out, 10: { confidence: 0.1 } } };
    expect(weightOf(judged(PART, doubtful), 'missed-note')).toBe('watch');
  });

  it('inside a skip belongs to the skip', () => {
    const aligned = { 8: out, 9: out, 10: out, 11: out };
    const skips = [{ fromIndex: 8, toIndex: 11, onsetSeconds: 12 }];
    const judgement = judged(PART, { aligned, alignment: { skips } });
    expect(ofKind(judgement, 'missed-note')).toEqual([]);
    expect(ofKind(judgement, 'skipped-bars')).toEqual([
      expect.objectContaining({ bar: '3', toBar: '3', weight: 'fix', index: 8, toIndex: 11, onset: 12 }),
    ]);
  });
});

describe('an added note', () => {
  const added = (change: Partial<Alignment['added'][number]>, alignment: Partial<Alignment> = {}) =>
    judged(PART, {
      alignment: {
        added: [{ onsetSeconds: 9.2, offsetSeconds: 9.4, midi: 66, afterIndex: 8, ...change }],
        ...alignment,
      },
    });

  it('is a fix when it lasts, to be watched when it is a flick', () => {
    const { value } = STANDARDS.addedSeconds;
    expect(weightOf(added({ offsetSeconds: 9.2 + value + 0.01 }), 'added-note')).toBe('fix');
    expect(weightOf(added({ offsetSeconds: 9.2 + value - 0.01 }), 'added-note')).toBe('watch');
    expect(ofKind(added({}), 'added-note')[0]).toMatchObject({ bar: '3', onset: 9.2 });
  });

  it('is to be watched when it may be a bent tone, a far echo, or far too long for a slip', () => {
    const before = PART.notes[8]!.soundingMidi;
    const { addedLongest, slipWidest } = STANDARDS;
    expect(weightOf(added({ midi: before + 1 }), 'added-note')).toBe('watch');
    expect(weightOf(added({ midi: before + slipWidest.value + 1 }), 'added-note')).toBe('watch');
    expect(weightOf(added({ offsetSeconds: 9.2 + addedLongest.value + 0.1 }), 'added-note')).toBe('watch');
  });

  it('before the first note is no fault to fix', () => {
    expect(weightOf(added({ afterIndex: -1, onsetSeconds: 0.1, offsetSeconds: 0.4 }), 'added-note')).toBe('watch');
  });

  it('around a restart is part of the attempt that was given up', () => {
    const restarts = [{ stoppedAtIndex: 8, resumedAtIndex: 4, onsetSeconds: 10 }];
    expect(ofKind(added({}, { restarts }), 'added-note')).toEqual([]);
  });
});

describe('continuity', () => {
  it('a piece that is played twice has not been stumbled over', () => {
    const restarts = [{ stoppedAtIndex: PART.notes.length - 1, resumedAtIndex: 0, onsetSeconds: 30 }];
    const [finding] = ofKind(judged(PART, { alignment: { restarts } }), 'restart');
    expect(finding).toMatchObject({ bar: '1', weight: 'watch' });
    expect(finding!.text).toMatch(/^You played to the last bar and then began again/);
  });

  it('a restart says where it stopped and where it went on', () => {
    const restarts = [{ stoppedAtIndex: 13, resumedAtIndex: 8, onsetSeconds: 16 }];
    const judgement = judged(PART, { alignment: { restarts } });
    const [finding] = ofKind(judgement, 'restart');
    expect(finding).toMatchObject({
      bar: '3',
      toBar: '4',
      index: 8,
      onset: 16,
      weight: 'fix',
      criterion: 'continuity',
    });
    expect(finding!.text).toMatch(/bar 4/);
    expect(judgement.criteria.find((c) => c.criterion === 'continuity')!.summary).not.toBe('played through');
  });

  it('an end that is missing is told as an end', () => {
    const out = Object.fromEntries([20, 21, 22, 23].map((i) => [i, { status: 'left-out' as const }]));
    const skips = [{ fromIndex: 20, toIndex: 23, onsetSeconds: 20.4 }];
    const [finding] = ofKind(judged(PART, { aligned: out, alignment: { skips } }), 'skipped-bars');
    expect(finding!.text).toMatch(/stops here/);
  });
});

describe('the list of findings', () => {
  const many = Object.fromEntries(
    Array.from({ length: 12 }, (_, i) => [
      2 * i,
      { status: 'other-pitch' as const, playedMidi: PART.notes[2 * i]!.soundingMidi + 3, confidence: 1 },
    ]),
  );
  const judgement = judged(PART, { aligned: many });

  it('has no more than seven fixes: a handful helps, more does not', () => {
    expect(judgement.findings.filter((f) => f.weight === 'fix')).toHaveLength(7);
    expect(ofKind(judgement, 'wrong-note').length).toBe(12);
    expect(ofKind(judgement, 'wrong-note').filter((f) => f.weight === 'watch')).toHaveLength(5);
  });

  it('begins with what to fix, goes on with what to watch and ends with praise', () => {
    const order = { fix: 0, watch: 1, well: 2 };
    const mixed = judged(PART, {
      aligned: { 3: { status: 'other-pitch', playedMidi: 70, confidence: 1 } },
      measurements: { tuning: { centsFromA440: 40, a4Hz: 450.3 } },
    });
    for (const { findings } of [judgement, mixed]) {
      const ranks = findings.map((f) => order[f.weight]);
      expect(ranks).toEqual([...ranks].sort());
      expect(new Set(ranks).size).toBeGreaterThan(1);
    }
  });

  it('puts what matters more first: a jump before a single note', () => {
    const both = judged(PART, {
      aligned: { 3: { status: 'other-pitch', playedMidi: 70, confidence: 1 } },
      alignment: { skips: [{ fromIndex: 16, toIndex: 19, onsetSeconds: 17 }] },
    });
    expect(both.findings[0]!.kind).toBe('skipped-bars');
  });

  it('is the same every time', () => {
    expect(judged(PART, { aligned: many })).toEqual(judgement);
  });

  it.each(['other', 'nothing'] as const)('is empty for a take that is not of this part (%s)', (fit) => {
    const result = judged(PART, { alignment: { fit }, aligned: many });
    expect(result.findings).toEqual([]);
    expect(result.criteria).toHaveLength(9);
  });

  it('has a place for every finding that the part has', () => {
    for (const { bar } of judgement.findings) expect(PART.bars.map((each) => each.bar)).toContain(bar);
    const atNotes = judgement.findings.filter((f) => f.index !== undefined);
    expect(atNotes.length).toBeGreaterThanOrEqual(12);
    for (const { index, bar } of atNotes) expect(PART.notes[index!]!.bar).toBe(bar);
  });
});

describe('the lines of the criteria', () => {
  // Source: the order in which a result document lists them.
  const ALL: readonly Criterion[] = [
    'notes',
    'rhythm',
    'tempo',
    'dynamics',
    'articulation',
    'breath',
    'intonation',
    'continuity',
    'sound',
  ];

  it('are always nine, in one order, and count the findings', () => {
    const aligned = { 3: { status: 'other-pitch' as const, playedMidi: 70, confidence: 1 } };
    for (const { findings, criteria } of [judged(PART), judged(PART, { aligned })]) {
      expect(criteria.map((line) => line.criterion)).toEqual(ALL);
      for (const line of criteria) {
        const own = findings.filter((f) => f.criterion === line.criterion);
        expect(line.fix).toBe(own.filter((f) => f.weight === 'fix').length);
        expect(line.watch).toBe(own.filter((f) => f.weight === 'watch').length);
        expect(line.summary).toMatch(/^\S.*\S$/);
      }
    }
  });

  it('say how many notes were right', () => {
    const aligned = { 3: { status: 'other-pitch' as const, playedMidi: 70, confidence: 1 } };
    expect(judged(PART, { aligned }).criteria[0]!.summary).toMatch(/^23 of 24 notes/);
  });

  // Marks after the notes 3, 7 and 11; all from note 7 on was left out, so only the first can be a breath taken or not.
  it('count a marked breath only where the notes on both sides were played', () => {
    const breaths = {
      ...PART,
      notes: PART.notes.map((note) =>
        [3, 7, 11].includes(note.index) ? { ...note, breathAfter: 'breath' as const } : note,
      ),
    };
    const left = Array.from({ length: 17 }, (_, i) => [i + 7, { status: 'left-out' as const }] as const);
    const summary = (played: ReturnType<typeof judged>) =>
      played.criteria.find((c) => c.criterion === 'breath')!.summary;
    expect(summary(judged(breaths))).toMatch(/^no breath was heard where they are marked: /);
    const context = handContext(
      breaths,
      playEvenly(breaths).map((note, i) => ({ ...note, ...Object.fromEntries(left)[i] })),
    );
    const { alignment } = context;
    const stopped = said(judgeTake({ part: breaths, alignment, measurements: measureTake(context) }));
    expect(summary(stopped)).toMatch(
      /^no breath was heard where it is marked: .*; 2 more stand where not all was played$/,
    );
  });

  it('say why where nothing could be measured', () => {
    const silent = playEvenly(PART).map((note) => ({ ...note, status: 'left-out' as const }));
    const context = handContext(PART, silent);
    const { alignment } = context;
    const { criteria } = said(judgeTake({ part: PART, alignment, measurements: measureTake(context) }));
    const summary = (criterion: Criterion): string => criteria.find((c) => c.criterion === criterion)!.summary;
    expect(summary('notes')).toMatch(/^0 of 24/);
    const reason = (criterion: Criterion) => criteria.find((c) => c.criterion === criterion)!.reason;
    expect(reason('notes')).toBeUndefined();
    expect(reason('tempo')).toEqual({ code: 'too-few-bars', facts: {} });
    expect(reason('intonation')).toEqual({ code: 'too-few-pitches', facts: {} });
    for (const { summary: text } of criteria) expect(text).not.toMatch(/NaN|undefined|null|Infinity/);
  });
});

describe('praise', () => {
  const praiseIn = (judgement: ReturnType<typeof judged>): string =>
    ofKind(judgement, 'went-well')
      .map((f) => f.text)
      .join(' ');
  const marked = smallPart(QUARTERS, {
    dynamics: [dynamic('p', 0, 0, 7), dynamic('f', 16, 16, 23)],
    hairpins: [crescendo(8, 16, 8, 15)],
  });
  const dynamics = (differenceDb: number, riseDb: number) =>
    judged(marked, {
      measurements: {
        contrasts: [
          { from: 'p', to: 'f', index: 16, bar: '5', pass: 1, differenceDb, registerAdjustedDb: differenceDb },
        ],
        hairpins: [
          {
            kind: 'crescendo',
            index: 8,
            toIndex: 15,
            bar: '3',
            toBar: '4',
            pass: 1,
            riseDb,
            registerAdjustedRiseDb: riseDb,
            slopeDbPerBar: riseDb / 2,
            slopeDbPerSecond: riseDb / 8,
            errorDb: 0.1,
          },
        ],
      },
    });

  it('is specific, at most three things, and has no homework', () => {
    const praise = ofKind(judged(PART), 'went-well');
    expect(praise.length).toBeGreaterThan(0);
    expect(praise.length).toBeLessThanOrEqual(3);
    for (const { text, practice, weight } of praise) {
      expect(text).toMatch(/\d/);
      expect([practice, weight]).toEqual(['', 'well']);
    }
  });

  it('of dynamics is earned by dynamics', () => {
    expect(praiseIn(dynamics(11, 9))).toMatch(/from p to f is plain to hear: 11 decibels/);
    expect(praiseIn(dynamics(11, 9))).toMatch(/crescendo really grows, by 9 decibels/);
    expect(praiseIn(dynamics(1, 1))).not.toMatch(/decibels/);
    expect(praiseIn(dynamics(-11, -9))).not.toMatch(/decibels/);
  });

  it('of tempo needs a steady tempo and no restart', () => {
    const wobbly = {
      markedQuarterBpm: 60,
      playedQuarterBpm: 60,
      bars: [55, 66, 58, 63, 54, 67].map((quarterBpm, i) => ({
        bar: `${i + 1}`,
        pass: 1,
        startQuarters: 4 * i,
        quarterBpm,
      })),
    };
    expect(praiseIn(judged(PART))).toMatch(/steady/);
    expect(praiseIn(judged(PART, { measurements: { tempo: wobbly } }))).not.toMatch(/steady/);
    const restarts = [{ stoppedAtIndex: 13, resumedAtIndex: 8, onsetSeconds: 16 }];
    expect(praiseIn(judged(PART, { alignment: { restarts } }))).not.toMatch(/steady/);
  });

  it('of notes, accidentals, tuning and fermatas is not given for many faults', () => {
    const wrong = Object.fromEntries(
      Array.from({ length: 8 }, (_, i) => [3 * i, { status: 'other-pitch' as const, playedMidi: 61, confidence: 1 }]),
    );
    const out = PART.notes.map(({ index }) => ({
      index,
      cents: index % 2 === 0 ? 22 : -22,
      centsFromOwnTuning: index % 2 === 0 ? 22 : -22,
      levelDb: -24,
    }));
    const praise = praiseIn(judged(PART, { aligned: wrong, measurements: { notes: out } }));
    expect(praise).not.toMatch(/notes were as written|in tune|accidental|fermata/);
  });
});
