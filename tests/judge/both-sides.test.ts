import { describe, expect, it } from 'vitest';
import { type Brief, defaultBrief } from '../../src/brief/index.js';
import { type FindingKind, judgeTake } from '../../src/judge/index.js';
import {
  type HeldNoteMeasure,
  type Measurements,
  measureTake,
  type TransitionMeasure,
} from '../../src/measure/index.js';
import { measureSteadiness } from '../../src/measure/measures/steadiness.js';
import type { Part, PartNote } from '../../src/score/index.js';
import { dynamic, type NoteSketch, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';
import { type JudgedOptions, judged, ofKind, weightOf } from '../helpers/judged.js';

/**
 * Each standard in absolute numbers, a little below and a little above, through the judge: a standard that moves by a fifth, or
 * a judge that asks another one, changes what is told here. Nothing is imported from the standards.
 *
 * Source: the numbers are those of the standards, which name their sources (`tests/standards/`); what follows from several of
 * them is worked out beside the case.
 */
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PART = smallPart(QUARTERS);
const PLACE = { bar: '3', pass: 1 };

type Told = 'fix' | 'watch' | null;
/** A value, and what is told of it. */
type Case = readonly [value: number, told: Told];

const partWith = (change: (i: number) => Partial<PartNote>): Part =>
  smallPart(QUARTERS.map((note, i) => ({ ...note, ...change(i) })));
const SLURRED = partWith((i) => ({ slurredToNext: i === 8, slurredFromPrevious: i === 9 }));
const DOTTED = partWith(() => ({ articulations: ['staccato'] }));
const BREATHED = partWith((i) => ({ breathAfter: i === 8 ? 'breath' : null }));

const measured = (measurements: Partial<Measurements>, more: JudgedOptions = {}, part: Part = PART) =>
  judged(part, { ...more, measurements });

const RECORDING = {
  peakDbfs: -6,
  clippedShare: 0,
  signalToNoiseDb: 40,
  reverberationSeconds: 0.5,
  levelRiding: false,
  breaksOff: false,
  onsetSpreadSeconds: 0,
  endsInSound: false,
  cautions: [],
};

/** Every note goes over into the next alike, a second apart, but for the one from note 8 to note 9. */
function goingOver(
  part: Part,
  change: Partial<TransitionMeasure>,
  others: number,
  { rings = 0.5, aligned = {} }: { rings?: number; aligned?: JudgedOptions['aligned'] } = {},
) {
  const pace = { betweenOnsetsSeconds: 1, expectedSeconds: 1, secondsAQuarter: 1 };
  const usual = { gapSeconds: 1 - others, soundedShare: others, dipDb: 30 };
  const transitions = PART.notes.slice(1).map(({ index }): TransitionMeasure => {
    return { index: index - 1, toIndex: index, ...pace, ...usual, ...(index === 9 ? change : {}) };
  });
  return judged(part, {
    measurements: { transitions, recording: { ...RECORDING, reverberationSeconds: rings } },
    aligned,
  });
}

/** Tries each value of a list. */
function sides(what: string, kind: FindingKind, tell: (value: number) => ReturnType<typeof judged>, ...cases: Case[]) {
  it.each(cases)(`${what} of %d: %s`, (value, told) => {
    expect(weightOf(tell(value), kind)).toBe(told);
  });
}

describe('sound', () => {
  const held = (change: Partial<HeldNoteMeasure>, others: Partial<HeldNoteMeasure> = {}, vibrato = 0) => {
    const usual = { seconds: 1.5, wobbleDb: 0.1, endCents: 0, endDb: -1, beforeBreath: false, pass: 1, wobbleCents: 2 };
    const heldNotes = Array.from({ length: 10 }, (_, index): HeldNoteMeasure => {
      const wave = index < vibrato ? { vibrato: { rateHz: 5, depthCents: 20 } } : {};
      return { index, bar: PART.notes[index]!.bar, ...usual, ...wave, ...others, ...(index === 9 ? change : {}) };
    });
    return { heldNotes, steadiness: measureSteadiness(heldNotes) };
  };
  const shaking = (change: Partial<HeldNoteMeasure>, others = {}, vibrato = 0, recording = RECORDING) =>
    measured({ ...held(change, others, vibrato), recording });

  sides(
    'a shaking note, cents',
    'unsteady-note',
    (wobbleCents) => shaking({ wobbleCents }),
    [11.9, null],
    [12, null],
    [12.1, 'watch'],
  );
  // two and a half times the upper quartile of the player's own, 8 cents, are 20
  sides(
    'a shaking note of a player who sways by 8 cents, cents',
    'unsteady-note',
    (wobbleCents) => shaking({ wobbleCents }, { wobbleCents: 8 }),
    [19.9, null],
    [20, null],
    [20.1, 'watch'],
  );
  sides(
    'a shaking note held for so many seconds',
    'unsteady-note',
    (seconds) => shaking({ wobbleCents: 30, seconds }),
    [0.54, null],
    [0.55, 'watch'],
    [0.56, 'watch'],
  );
  // a fifth of ten notes are two
  sides(
    'a shaking note among so many with vibrato',
    'unsteady-note',
    (count) => shaking({ wobbleCents: 30 }, {}, count),
    [2, 'watch'],
    [3, null],
  );
  sides(
    'a shaking note in a room of so many seconds',
    'unsteady-note',
    (rings) => shaking({ wobbleCents: 30 }, {}, 0, { ...RECORDING, reverberationSeconds: rings }),
    [0.69, 'watch'],
    [0.71, null],
  );
  it('says nothing of a note that moves as regularly as vibrato', () => {
    const vibrato = { rateHz: 6, depthCents: 60 };
    expect(weightOf(shaking({ wobbleCents: 30, vibrato }), 'unsteady-note')).toBeNull();
  });
  it.each([
    ['automatic gain', { ...RECORDING, levelRiding: true }, 'level-moved'],
    ['a lossy coding', { ...RECORDING, onsetSpreadSeconds: 0.0025 }, 'sound-coded'],
    ['speech coding', { ...RECORDING, cautions: [{ code: 'speech-coding', facts: {} }] }, 'sound-coded'],
    ['a wet room', { ...RECORDING, reverberationSeconds: 1.2 }, 'room-rings'],
  ] as const)('says nothing for %s, and why', (_, recording, code) => {
    const judgement = measured({
      ...held({ wobbleCents: 60, endCents: -60, endDb: -9, beforeBreath: true }),
      recording,
    });
    expect(judgement.findings.filter(({ criterion }) => criterion === 'sound')).toEqual([]);
    expect(judgement.criteria.at(-1)).toMatchObject({ criterion: 'sound', judged: false, reason: { code } });
  });

  const sinking = (change: Partial<HeldNoteMeasure>, others = {}) =>
    measured({ ...held({ beforeBreath: true, endCents: -30, endDb: -6, ...change }, others), recording: RECORDING });
  sides(
    'air that gives way, cents',
    'air-gives-way',
    (endCents) => sinking({ endCents }),
    [-14.9, null],
    [-15, null],
    [-15.1, 'watch'],
  );
  sides(
    'air that gives way, dB',
    'air-gives-way',
    (endDb) => sinking({ endDb }),
    [-1.9, null],
    [-2, null],
    [-2.1, 'watch'],
  );
  // the player's own long notes end 10 cents lower
  sides(
    'air that gives way beside notes that all end lower, cents',
    'air-gives-way',
    (endCents) => sinking({ endCents }, { endCents: -10 }),
    [-24.9, null],
    [-25.1, 'watch'],
  );
  it('is the player’s own way where no breath follows', () => {
    expect(weightOf(sinking({ beforeBreath: false }), 'air-gives-way')).toBeNull();
  });
  const cracking = (crack: { semitones: number; seconds: number }, more: JudgedOptions = {}) => {
    const cracks = [{ index: 9, ...PLACE, ...crack }];
    return measured({ ...held({}), cracks, recording: RECORDING }, more);
  };
  // note 9 lies 5 semitones below note 8
  const crackFor = (seconds: number) => cracking({ semitones: 7, seconds });
  sides(
    'a crack, seconds',
    'cracked-start',
    crackFor,
    [0.039, null],
    [0.04, null],
    [0.041, 'watch'],
    [0.149, 'watch'],
    [0.15, 'watch'],
    [0.151, null],
  );
  const crackTo = (semitones: number) => cracking({ semitones, seconds: 0.1 });
  sides(
    'a crack, semitones',
    'cracked-start',
    crackTo,
    [7, 'watch'],
    [12, 'watch'],
    [-12, 'watch'],
    [19, 'watch'],
    [-4, 'watch'],
  );
  sides(
    'a crack to the pitch of the note before, semitones',
    'cracked-start',
    crackTo,
    [5, null],
    [5.7, null],
    [5.8, 'watch'],
    [4, 'watch'],
  );
  it.each([
    ['the note before was not played', { aligned: { 8: { status: 'left-out' } } }],
    [
      'the player began again there',
      { alignment: { restarts: [{ stoppedAtIndex: 12, resumedAtIndex: 9, onsetSeconds: 9.5 }] } },
    ],
    ['the note itself is not sure', { aligned: { 9: { confidence: 0.3 } } }],
  ] as const)('is no crack where %s', (_, more) => {
    expect(weightOf(cracking({ semitones: 7, seconds: 0.1 }, more as JudgedOptions), 'cracked-start')).toBeNull();
  });
  it('is an added note where it is told as one', () => {
    const added = [{ onsetSeconds: 9.4, offsetSeconds: 9.5, midi: 70, afterIndex: 8 }];
    expect(weightOf(cracking({ semitones: 7, seconds: 0.1 }, { alignment: { added } }), 'cracked-start')).toBeNull();
  });

  const PROMPT = { ...PLACE, pitchSeconds: 0.01, levelSeconds: 0.02 };
  /** Notes 0 to 7 speak after so long, note 9 as the test says. */
  const late = (change: object, usual = 0.01, more: JudgedOptions = {}) => {
    const others = Array.from({ length: 8 }, (_, index) => ({
      index,
      ...PROMPT,
      pitchSeconds: usual,
      levelSeconds: usual,
    }));
    const starts = [...others, { index: 9, ...PROMPT, ...change }];
    return measured({ ...held({}), starts, recording: RECORDING }, more);
  };
  const both = (seconds: number) => ({ pitchSeconds: seconds, levelSeconds: seconds });
  sides('a note that speaks late, seconds', 'speaks-late', (s) => late(both(s)), [0.079, null], [0.081, 'watch']);
  // two and a half times the 40 ms that the player's others need are 100 ms
  sides(
    'a note that speaks late beside slow ones, seconds',
    'speaks-late',
    (s) => late(both(s), 0.04),
    [0.099, null],
    [0.101, 'watch'],
  );
  it.each([
    ['only its pitch is late', late({ pitchSeconds: 0.2 })],
    ['only its level is late', late({ levelSeconds: 0.2 })],
    ['it cracks', late({ ...both(0.2), crack: { semitones: 7, seconds: 0.02 } })],
    ['the note before was not played', late(both(0.2), 0.01, { aligned: { 8: { status: 'left-out' } } })],
    ['it is not sure', late(both(0.2), 0.01, { aligned: { 9: { confidence: 0.3 } } })],
  ] as const)('says nothing of a late note where %s', (_, judgement) => {
    expect(weightOf(judgement, 'speaks-late')).toBeNull();
  });
  it('says how many notes speak at once', () => {
    const of = (judgement: ReturnType<typeof late>) => judgement.criteria.at(-1)?.summary;
    expect(of(late(both(0.2)))).toContain('8 of 9 notes after a silence speak at once');
    expect(of(late({}))).toContain('notes after a silence speak at once');
  });

  /** Notes 0 to 7 are begun so far over their level, note 9 as the test says. */
  const beginning = (overDb: number, usual = 0) => {
    const others = Array.from({ length: 8 }, (_, index) => ({ index, ...PLACE, overDb: usual }));
    return { ...held({}), attacks: [...others, { index: 9, ...PLACE, overDb }], recording: RECORDING };
  };
  const begun = (overDb: number, usual = 0, more: JudgedOptions = {}) => measured(beginning(overDb, usual), more);
  sides('a note that is hit, dB', 'hit-start', (db) => begun(db), [4.9, null], [5.1, 'watch']);
  // four over the 3 dB of the player's others are 7
  sides(
    'a note that is hit beside others that are, dB',
    'hit-start',
    (db) => begun(db, 3),
    [6.9, null],
    [7.1, 'watch'],
  );
  it('says nothing of a hit that is no louder than the note before', () => {
    const levels = (before: number) => {
      const { notes } = measureTake(handContext(PART, playEvenly(PART)));
      return notes.map((note) => (note.index === 8 ? { ...note, levelDb: before } : note));
    };
    // notes are at −24 dB, the attack at −17: two over the note before, or not
    const of = (before: number) => weightOf(measured({ ...beginning(7), notes: levels(before) }), 'hit-start');
    expect([of(-19.1), of(-18.9)]).toEqual(['watch', null]);
  });
  it('is no hit where it cracks: another pitch may be louder by itself', () => {
    const cracks = [{ index: 9, ...PLACE, semitones: 19, seconds: 0.02 }];
    expect(weightOf(measured({ ...beginning(12), cracks }), 'hit-start')).toBeNull();
  });
  it('says nothing of a hit where the note before was not played', () => {
    expect(weightOf(begun(12, 0, { aligned: { 8: { status: 'left-out' } } }), 'hit-start')).toBeNull();
  });

  it('is never more than worth a listen, and costs nothing', () => {
    const { findings, criteria } = shaking({ wobbleCents: 90, endCents: -90, endDb: -20, beforeBreath: true });
    expect(findings.filter((f) => f.criterion === 'sound').map((f) => f.weight)).toEqual(['watch', 'watch']);
    expect(criteria.at(-1)).toMatchObject({ fix: 0, watch: 2, of: 10, met: 10 });
  });
});

describe('notes', () => {
  const other = (playedMidi: number, confidence = 1) =>
    judged(PART, { aligned: { 9: { status: 'other-pitch', playedMidi, confidence } } });
  const at = PART.notes[9]!.soundingMidi;
  sides('a wrong note with a confidence', 'wrong-note', (c) => other(at + 3, c), [0.79, 'watch'], [0.8, 'fix']);
  sides('semitones away', 'wrong-note', (away) => other(at + away), [11, 'fix'], [12, 'watch'], [13, 'watch']);
  // an octave, up or down, may be what rings strongest in the tone
  sides('octaves: semitones away', 'wrong-note', (away) => other(at + away), [-12, 'watch'], [-11, 'fix']);

  const before = PART.notes[8]!.soundingMidi;
  // from the first sample on, so that its end is its length to the last bit
  const added = (seconds: number, away: number) =>
    judged(PART, {
      alignment: { added: [{ onsetSeconds: 0, offsetSeconds: seconds, midi: before + away, afterIndex: 8 }] },
    });
  sides('an added note, seconds', 'added-note', (s) => added(s, 3), [0.078, 'watch'], [0.08, 'fix']);
  sides('an added note, seconds', 'added-note', (s) => added(s, 3), [1, 'fix'], [1.01, 'watch']);
  sides('an added note, semitones', 'added-note', (away) => added(0.3, away), [1, 'watch'], [2, 'fix']);
  sides('an added note, semitones', 'added-note', (away) => added(0.3, away), [12, 'fix'], [13, 'watch']);

  const PLAIN = { index: 9, silentSeconds: 1, writtenSeconds: 1, closedUpShare: 0, fallDb: 40 };
  const out = (change: Partial<typeof PLAIN>, part = PART) =>
    judged(part, {
      aligned: { 9: { status: 'left-out' } },
      measurements: { emptyPlaces: [{ ...PLAIN, ...change }] },
    });
  const silent = (silentSeconds: number) => out({ silentSeconds });
  sides('a missing note, silent share', 'missed-note', silent, [0.44, 'watch'], [0.45, 'fix']);
  sides('a missing note, fall in dB', 'missed-note', (fallDb) => out({ fallDb }), [9.9, 'watch'], [10, 'fix']);
  const closed = (closedUpShare: number) => out({ closedUpShare, silentSeconds: 0 });
  sides('a missing note, closed up by', 'missed-note', closed, [0.29, 'watch'], [0.3, 'fix']);
  // where the music has spread out instead, what is silent may be a wait
  const spread = (closedUpShare: number) => out({ closedUpShare });
  sides('a missing note, closed up by', 'missed-note', spread, [-0.3, 'watch'], [-0.29, 'fix']);
  const repeated = smallPart(QUARTERS.map((note, i) => (i === 9 ? QUARTERS[8]! : note)));
  const again = (silentSeconds: number) => out({ silentSeconds }, repeated);
  sides('a repeated note, silent share', 'missed-note', again, [0.79, null], [0.8, 'watch']);
  // nor is it in the note before where the music has closed up over it
  const closedUp = (closedUpShare: number) => out({ closedUpShare, silentSeconds: 0 }, repeated);
  sides('a repeated note, closed up by', 'missed-note', closedUp, [0.29, null], [0.3, 'watch']);
});

describe('dynamics', () => {
  const contrast = (raw: number, adjusted = raw) =>
    measured({
      contrasts: [
        {
          from: 'p',
          to: 'f',
          index: 8,
          ...PLACE,
          differenceDb: raw,
          registerAdjustedDb: adjusted,
          intervalDb: [raw, raw],
        },
      ],
    });
  // 3 dB, less the margin of 0.5
  sides('a contrast, dB', 'weak-contrast', (db) => contrast(db), [2.45, 'fix'], [2.5, null]);
  sides('a contrast, dB, with its register 2', 'weak-contrast', (db) => contrast(2, db), [2.95, 'fix'], [3, 'watch']);
  sides('a contrast, dB', 'reversed-contrast', (db) => contrast(db), [-1, null], [-1.05, 'fix']);
  const doubtful = (halfWidth: number) =>
    measured({
      contrasts: [
        {
          ...{ from: 'p', to: 'f', index: 8, ...PLACE, differenceDb: 2, registerAdjustedDb: 2 },
          intervalDb: [2 - halfWidth, 2 + halfWidth],
        },
      ],
    });
  // half of the half width is added to what was measured: 2 + 1.9 / 2 is below 3
  sides('a contrast of 2 dB, give or take', 'weak-contrast', doubtful, [1.9, 'fix'], [2, 'watch']);

  const hairpin = (riseDb: number, more: Partial<Measurements['hairpins'][number]> = {}) =>
    measured({
      hairpins: [
        {
          ...{ kind: 'crescendo', index: 4, toIndex: 11, bar: '2', toBar: '3', pass: 1, riseDb, errorDb: 0.1 },
          ...{ registerAdjustedRiseDb: riseDb, slopeDbPerBar: riseDb / 2, slopeDbPerSecond: riseDb / 8, ...more },
        },
      ],
    });
  sides('a hairpin, dB', 'weak-hairpin', (db) => hairpin(db), [2.45, 'fix'], [2.5, null]);
  sides('a hairpin, dB', 'reversed-hairpin', (db) => hairpin(db), [-1, null], [-1.05, 'fix']);
  // what goes the other way by the register alone is not called reversed, and is to be watched
  const byRegister = (db: number) => hairpin(-2, { registerAdjustedRiseDb: db });
  sides('a hairpin of −2 dB, without its register', 'reversed-hairpin', byRegister, [2.9, 'fix'], [3, null]);
  sides('a hairpin of −2 dB, without its register', 'weak-hairpin', byRegister, [2.9, null], [3, 'watch']);
  sides(
    'a contrast of −2 dB, without its register',
    'reversed-contrast',
    (db) => contrast(-2, db),
    [2.9, 'fix'],
    [3, null],
  );
  sides(
    'a contrast of −2 dB, without its register',
    'weak-contrast',
    (db) => contrast(-2, db),
    [2.9, null],
    [3, 'watch'],
  );
  // 95 of 100: 2 + 1.96 × error is below 4 up to an error of 1.02
  const unsure = (errorDb: number) => hairpin(2, { errorDb });
  sides('a hairpin of 2 dB with an error', 'weak-hairpin', unsure, [1.01, 'fix'], [1.03, 'watch']);
  const course = (halfwayShare: number, turnedBackDb: number) =>
    hairpin(8, { course: { halfwayShare, peakAt: 0.8, turnedBackDb, steadiness: 1 } });
  sides('a hairpin, there halfway', 'weak-hairpin', (share) => course(share, 0), [0.89, null], [0.9, 'watch']);
  sides('a hairpin, turned back', 'weak-hairpin', (db) => course(0.5, db), [2.9, null], [3, 'watch']);
});

describe('fermatas', () => {
  const held = (ratio: number) =>
    measured({ fermatas: [{ index: 5, ...PLACE, writtenSeconds: 1, heldSeconds: ratio, ratio }] });
  // told to one decimal: 3.04 reads as 3; 3 × 1.08 = 3.24
  sides('times', 'fermata-long', held, [3.04, null], [3.06, 'watch'], [3.23, 'watch'], [3.25, 'fix']);
  // told to two decimals; 1.25 × 0.92 = 1.15
  sides('times', 'fermata-short', held, [1.25, null], [1.24, 'watch'], [1.16, 'watch'], [1.14, 'fix']);
});

describe('intonation', () => {
  const whole = (centsFromA440: number) => measured({ tuning: { centsFromA440, a4Hz: 440 } });
  sides('a take, cents', 'tuning-off', whole, [15.4, null], [15.6, 'watch'], [-15.4, null], [-15.6, 'watch']);
  const oneNote = (cents: number, aligned: JudgedOptions['aligned'] = {}) => {
    const notes = PART.notes.map(({ index }) => {
      const own = index === 6 ? cents : 0;
      return { index, cents: own, centsFromOwnTuning: own, levelDb: -24 };
    });
    return measured({ notes }, { aligned });
  };
  sides('a note, cents', 'note-out-of-tune', (c) => oneNote(c), [25.4, null], [25.6, 'watch']);
  sides('a note, cents', 'note-out-of-tune', (c) => oneNote(c), [35, 'watch'], [35.1, 'fix'], [-35.1, 'fix']);
  const short = (seconds: number) => oneNote(60, { 6: { onsetSeconds: 0, offsetSeconds: seconds } });
  sides('a note, seconds', 'note-out-of-tune', short, [0.19, 'watch'], [0.2, 'fix']);
  const unsure = (confidence: number) => oneNote(60, { 6: { confidence } });
  sides('a note with a confidence', 'note-out-of-tune', unsure, [0.79, 'watch'], [0.8, 'fix']);

  // Praise of tuning tells the share of notes within the ten cents: at 9.9 all of them, at 10.1 none.
  it.each([
    [10, 1],
    [10.1, 0],
  ])('notes within %d cents are praised: %d', (cents, praised) => {
    const notes = PART.notes.map(({ index }) => ({ index, cents, centsFromOwnTuning: cents, levelDb: -24 }));
    const about = ofKind(measured({ notes }), 'went-well').filter((f) => f.criterion === 'intonation');
    expect(about).toHaveLength(praised);
  });
});

describe('tempo', () => {
  const tempo = (playedQuarterBpm: number, bars: readonly number[]) =>
    measured({
      tempo: {
        ...{ markedQuarterBpm: 100, playedQuarterBpm },
        bars: bars.map((quarterBpm, i) => ({ bar: String(i + 1), pass: 1, startQuarters: 4 * i, quarterBpm })),
      },
    });
  sides('a take, quarters a minute', 'off-tempo', (bpm) => tempo(bpm, []), [90.5, null], [89.5, 'watch']);
  sides('a take, quarters a minute', 'off-tempo', (bpm) => tempo(bpm, []), [109.5, null], [110.5, 'watch']);
  it('a take exactly a tenth off is within it, faster as well as slower, whatever the rounding', () => {
    expect([90, 110].map((bpm) => weightOf(tempo(bpm, []), 'off-tempo'))).toEqual([null, null]);
  });
  const ahead = (bpm: number) => tempo(100, [100, 100, bpm, bpm, bpm, 100]);
  sides('three bars', 'rushing', ahead, [106.9, null], [107.1, 'watch']);
  sides('three bars', 'dragging', ahead, [93.1, null], [92.9, 'watch']);
  it('two bars are no drift', () => {
    expect(weightOf(tempo(100, [100, 100, 112, 112, 100, 100]), 'rushing')).toBeNull();
  });
  // Nine bars, evenly from one end to the other: all of it is the change.
  const evenly = (change: number) =>
    tempo(
      100,
      Array.from({ length: 9 }, (_, i) => 100 + change * (i / 8 - 0.5)),
    );
  sides('from end to end, percent', 'rushing', evenly, [6.9, null], [7.1, 'watch']);
  it.each([
    [2.9, 1],
    [3.1, 0],
  ])('bars within %d percent are praised as steady: %d', (off, praised) => {
    const bars = [1, -1, 1, -1, 1, -1, 1, -1].map((way) => 100 + way * off);
    const about = ofKind(tempo(100, bars), 'went-well').filter((f) => f.criterion === 'tempo');
    expect(about).toHaveLength(praised);
  });
});

describe('rhythm', () => {
  const entry = (lateSeconds: number, secondsAQuarter = 1, aligned: JudgedOptions['aligned'] = {}) =>
    measured({ entries: [{ index: 8, ...PLACE, restQuarters: 1, lateSeconds, secondsAQuarter }] }, { aligned });
  sides('at 60, seconds late', 'late-entry', (s) => entry(s), [0.085, null], [0.086, 'watch']);
  sides('at 60, seconds late', 'late-entry', (s) => entry(s), [0.11, 'watch'], [0.111, 'fix']);
  sides('at 60, seconds late', 'late-entry', (s) => entry(s), [0.75, 'fix'], [0.76, 'watch']);
  sides('at 60, seconds late', 'early-entry', (s) => entry(s), [-0.15, null], [-0.151, 'watch']);
  // at 200 a hundredth of a second is a thirtieth of a beat: then it is the seconds that count
  sides('at 200, seconds late', 'late-entry', (s) => entry(s, 0.3), [0.045, null], [0.046, 'watch']);
  sides('at 120, seconds late', 'late-entry', (s) => entry(s, 0.5), [0.08, 'watch'], [0.081, 'fix']);
  sides('at 200, seconds late', 'early-entry', (s) => entry(s, 0.3), [-0.09, null], [-0.091, 'watch']);
  // both the note and the one before the rest have to be sure
  for (const index of [7, 8]) {
    const unsure = (confidence: number) => entry(0.3, 1, { [index]: { confidence } });
    sides(`late, note ${index} with a confidence`, 'late-entry', unsure, [0.54, 'watch'], [0.55, 'fix']);
  }

  const group = (off: number, seconds: number, aligned: JudgedOptions['aligned'] = {}) => {
    const shares = [1 / 3 + off, 1 / 3 - off / 2, 1 / 3 - off / 2];
    const written = [1 / 3, 1 / 3, 1 / 3];
    return measured(
      { groups: [{ index: 4, toIndex: 6, ...PLACE, tuplet: true, seconds, shares, written }] },
      { aligned },
    );
  };
  // 0.065, and 0.6 × 0.015 s of 10 s
  sides('in 10 s, off by', 'uneven-group', (off) => group(off, 10), [0.065, null], [0.067, 'watch']);
  // 0.085, and √2 × 0.015 s of 10 s
  sides('in 10 s, off by', 'uneven-group', (off) => group(off, 10), [0.0865, 'watch'], [0.0875, 'fix']);
  // 0.065 + 0.6 × 0.015 / 0.5 = 0.083, and 0.085 + √2 × 0.015 / 0.5 = 0.1274
  sides('in 0.5 s, off by', 'uneven-group', (off) => group(off, 0.5), [0.0825, null], [0.0835, 'watch']);
  sides('in 0.5 s, off by', 'uneven-group', (off) => group(off, 0.5), [0.127, 'watch'], [0.128, 'fix']);
});

describe('how notes go over into each other', () => {
  const slur = (gapSeconds: number, dipDb = 30) =>
    goingOver(SLURRED, { gapSeconds, soundedShare: 1 - gapSeconds, dipDb }, 0.9);
  sides('a slur, seconds', 'slur-broken', (s) => slur(s), [0.028, null], [0.029, 'watch']);
  sides('a slur, seconds', 'slur-broken', (s) => slur(s), [0.065, 'watch'], [0.066, 'fix']);
  sides('a slur, dB', 'slur-broken', (db) => slur(0.1, db), [15, 'watch'], [15.1, 'fix']);
  // longer than a breath it is one
  sides('a slur, seconds', 'slur-broken', (s) => slur(s), [0.22, 'fix'], [0.221, null]);

  const dot = (soundedShare: number, dipDb = 2, rings = 0.5, betweenOnsetsSeconds = 1) =>
    goingOver(DOTTED, { soundedShare, gapSeconds: 1 - soundedShare, dipDb, betweenOnsetsSeconds }, 0.45, { rings });
  sides(
    'a dot, sounding',
    'staccato-long',
    (x) => dot(x),
    [0.72, null],
    [0.73, 'watch'],
    [0.82, 'watch'],
    [0.83, 'fix'],
  );
  const apart = (seconds: number) => dot(0.95, 2, 0.2, seconds);
  sides('a dot, seconds to the next', 'staccato-long', apart, [0.149, null], [0.15, 'fix']);
  // a room of 0.26 s lets the level fall by 0.45 × 60 / 0.26 = 104 dB in the gap, one of 0.5 s by 54 dB; 0.4 of that counts
  sides('a dot that falls, room', 'staccato-long', (s) => dot(0.95, 45, s), [0.24, 'fix'], [0.25, 'watch']);
  sides('a dot, room', 'staccato-long', (s) => dot(0.95, 2, s), [0.79, 'fix'], [0.8, 'watch']);
  sides('a dot, fall in dB', 'staccato-long', (db) => dot(0.95, db), [21.5, 'fix'], [21.7, 'watch']);

  const accent = (overDb: number, spreadDb = 1) =>
    measured({ accents: [{ mark: 'accent', index: 8, ...PLACE, overDb, spreadDb }] });
  sides('an accent, dB', 'accent-weak', (db) => accent(db), [0.48, 'watch'], [0.5, null]);
  sides('an accent, spread', 'accent-weak', (db) => accent(0, db), [4, 'watch'], [4.1, null]);
  const drop = (fallDb: number) =>
    measured({ accents: [{ mark: 'fp', index: 8, ...PLACE, overDb: 6, spreadDb: 1, fallDb }] });
  sides('an fp, fall in dB', 'accent-weak', drop, [1.95, 'watch'], [2, null]);
});

describe('breaths', () => {
  const silence = (gapSeconds: number) => goingOver(PART, { gapSeconds, soundedShare: 0.4 }, 0.9);
  sides('a silence, seconds', 'breath-unmarked', silence, [0.22, null], [0.221, 'fix']);
  const late = (part: Part) => (excess: number) =>
    goingOver(part, { betweenOnsetsSeconds: 1 + excess, gapSeconds: 0.41, soundedShare: 0.6 }, 0.9);
  sides('at a mark, seconds late', 'breath-late', late(BREATHED), [0.34, null], [0.36, 'watch']);
  sides('a wait, seconds', 'hesitation', late(PART), [0.79, null], [0.81, 'watch']);

  const asked = (gapSeconds: number, kind: 'quick' | 'full', aligned: JudgedOptions['aligned'] = {}, rings = 0.3) => {
    const brief: Brief = {
      ...defaultBrief(PART),
      ownBreaths: true,
      breaths: [{ index: 8, bar: '3', beat: 1, pass: 1, kind }],
    };
    const context = handContext(PART, playEvenly(PART));
    const notes = context.alignment.notes.map((note) => ({ ...note, ...aligned[note.index] }));
    const recording = { ...RECORDING, reverberationSeconds: rings };
    const breaths = [{ index: 8, bar: '3', pass: 1, beat: 1, gapSeconds, lateSeconds: 0 }];
    const measurements: Measurements = { ...measureTake(context), breaths, recording };
    const { findings } = judgeTake({ part: PART, alignment: { ...context.alignment, notes }, measurements, brief });
    return (of: FindingKind) => findings.find(({ kind: found }) => found === of)?.weight ?? null;
  };
  it.each<[number, Told]>([
    [0.04, 'fix'],
    [0.041, 'watch'],
    [0.119, 'watch'],
    [0.12, null],
  ])('asked for, %d s: missed, %s', (gap, told) => {
    expect(asked(gap, 'quick')('breath-missed')).toBe(told);
  });
  it.each<[number, Told]>([
    [0.121, 'fix'],
    [0.199, 'fix'],
    [0.2, 'watch'],
    [0.299, 'watch'],
    [0.3, null],
  ])('a full one asked for, %d s: short, %s', (gap, told) => {
    expect(asked(gap, 'full')('breath-short')).toBe(told);
    expect(asked(gap, 'quick')('breath-short')).toBeNull();
  });
  it('asked for, but of which the notes around it or the room leave a doubt, are no fix', () => {
    for (const index of [8, 9]) {
      expect(asked(0, 'quick', { [index]: { confidence: 0.54 } })('breath-missed')).toBe('watch');
      expect(asked(0, 'quick', { [index]: { confidence: 0.55 } })('breath-missed')).toBe('fix');
      expect(asked(0, 'quick', { [index]: { status: 'unclear' } })('breath-missed')).toBe('watch');
    }
    expect(asked(0, 'quick', {}, 0.79)('breath-missed')).toBe('fix');
    expect(asked(0, 'quick', {}, 0.8)('breath-missed')).toBe('watch');
  });
});

describe('marks and praise', () => {
  const marked = smallPart(QUARTERS, { dynamics: [dynamic('p', 0, 0, 7), dynamic('f', 16, 16, 23)] });
  // Working values of the praise itself: six decibels are plain to hear.
  it.each([
    [5.9, 0],
    [6, 1],
  ])('a contrast of %d dB is praised: %d', (differenceDb, praised) => {
    const contrast = {
      from: 'p',
      to: 'f',
      index: 16,
      bar: '5',
      pass: 1,
      differenceDb,
      registerAdjustedDb: differenceDb,
    };
    const about = ofKind(measured({ contrasts: [contrast] }, {}, marked), 'went-well');
    expect(about.filter((f) => f.criterion === 'dynamics')).toHaveLength(praised);
  });
});
