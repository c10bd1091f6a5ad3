import { describe, expect, it } from 'vitest';
import type { MaybeNumber } from '../../src/base/index.js';
import { notMeasured } from '../../src/base/index.js';
import type { FindingKind } from '../../src/judge/index.js';
import type { ContrastMeasure, HairpinMeasure, Measurements, TransitionMeasure } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { STANDARDS } from '../../src/standards/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { type JudgedOptions, judged, ofKind, weightOf } from '../helpers/judged.js';

/**
 * Each judge on both sides of its threshold. The thresholds are data with a source each; what is tested is that the
 * judge keeps to them, that doubt only ever makes a finding milder, and that a `fix` needs certainty.
 */
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PART = smallPart(QUARTERS);
const PLACE = { bar: '3', pass: 1 };
const even = judged(PART);

const withMeasured = (measurements: Partial<Measurements>, part: Part = PART, more: JudgedOptions = {}) =>
  judged(part, { ...more, measurements });

/** A recording without fault. */
const SOUND = {
  peakDbfs: -6,
  clippedShare: 0,
  signalToNoiseDb: 40,
  reverberationSeconds: 0.3,
  levelRiding: false,
  breaksOff: false,
  onsetSpreadSeconds: 0,
  endsInSound: false,
  cautions: [],
};

describe('an even take', () => {
  it('gives no occasion to find fault', () => {
    expect(even.findings.filter((f) => f.weight !== 'well')).toEqual([]);
  });
});

describe('standards', () => {
  it('each have a value, a unit and a source', () => {
    for (const standard of Object.values(STANDARDS)) {
      expect(standard.value).toBeGreaterThan(0);
      expect(standard.unit.length).toBeGreaterThan(0);
      expect(standard.source.length).toBeGreaterThan(3);
    }
  });

  // Source: named beside each: Hill & Summers 2007, Drake & Botte 1993, Slade et al. 2022, Larrouy-Maestri 2018.
  it('do not ask for more than can be heard', () => {
    expect(STANDARDS.inTune.value).toBeGreaterThanOrEqual(10);
    expect(STANDARDS.noteWatch.value).toBeGreaterThanOrEqual(25);
    expect(STANDARDS.noteFix.value).toBeGreaterThan(STANDARDS.noteWatch.value);
    expect(STANDARDS.tempoWatch.value).toBeGreaterThan(0.03);
    expect(STANDARDS.contrastLeast.value).toBeGreaterThan(1);
    expect(STANDARDS.contrastReversed.value).toBeGreaterThanOrEqual(1);
  });

  it('may be set by the teacher', () => {
    const fermatas = [{ index: 5, ...PLACE, writtenSeconds: 1, heldSeconds: 2.6, ratio: 2.6 }];
    expect(weightOf(withMeasured({ fermatas }), 'fermata-long')).toBeNull();
    const strict = { ...STANDARDS, fermataMost: { value: 2, unit: 'times', source: 'the teacher' } };
    expect(weightOf(withMeasured({ fermatas }, PART, { standards: strict }), 'fermata-long')).toBe('fix');
  });
});

describe('contrasts', () => {
  const least = STANDARDS.contrastLeast.value;
  const contrast = (differenceDb: number, more: Partial<ContrastMeasure> = {}) =>
    withMeasured({
      contrasts: [
        {
          from: 'p',
          to: 'f',
          index: 8,
          ...PLACE,
          differenceDb,
          registerAdjustedDb: differenceDb,
          intervalDb: [differenceDb - 0.2, differenceDb + 0.2],
          ...more,
        },
      ],
    });

  it('that are large enough are not mentioned, those that are not are', () => {
    expect(weightOf(contrast(least + 0.1), 'weak-contrast')).toBeNull();
    expect(weightOf(contrast(least - 1), 'weak-contrast')).toBe('fix');
    expect(weightOf(contrast(0), 'weak-contrast')).toBe('fix');
  });

  it('are weak downwards, too', () => {
    const down = (db: number) => contrast(db, { from: 'f', to: 'p', intervalDb: [db - 0.2, db + 0.2] });
    expect(weightOf(down(-least - 0.1), 'weak-contrast')).toBeNull();
    expect(weightOf(down(-1), 'weak-contrast')).toBe('fix');
    expect(weightOf(down(3), 'reversed-contrast')).toBe('fix');
  });

  it('that go the other way by more than can be heard are reversed', () => {
    expect(weightOf(contrast(-STANDARDS.contrastReversed.value - 0.5), 'reversed-contrast')).toBe('fix');
    expect(weightOf(contrast(-0.5), 'reversed-contrast')).toBeNull();
    expect(weightOf(contrast(-0.5), 'weak-contrast')).toBe('fix');
  });

  it('are only to be watched where raw and register-adjusted level do not agree, or the notes scatter', () => {
    expect(weightOf(contrast(1, { registerAdjustedDb: 6 }), 'weak-contrast')).toBe('watch');
    expect(weightOf(contrast(6, { registerAdjustedDb: 1 }), 'weak-contrast')).toBe('watch');
    expect(weightOf(contrast(2, { intervalDb: [-4, 8] }), 'weak-contrast')).toBe('watch');
  });

  it('say what is missing: a change that is the instrument’s own is not called small', () => {
    const [byRegister] = ofKind(contrast(13, { registerAdjustedDb: 1 }), 'weak-contrast');
    expect(byRegister!.text).not.toMatch(/13|hardly/);
    expect(byRegister!.text).toMatch(/only 1 decibels/);
    const [small] = ofKind(contrast(1.2), 'weak-contrast');
    expect(small!.text).toMatch(/hardly changes: 1\.2 decibels/);
  });

  it('are not judged when they were not measured or the recorder moved its level', () => {
    const why = notMeasured('too-few-under-mark', { mark: 'f' });
    expect(weightOf(contrast(0, { differenceDb: why, registerAdjustedDb: why }), 'weak-contrast')).toBeNull();
    const recording = { ...SOUND, levelRiding: true };
    const contrasts = [{ from: 'p', to: 'f', index: 8, ...PLACE, differenceDb: 0, registerAdjustedDb: 0 }];
    const riding = withMeasured({ contrasts, recording });
    expect(riding.findings.filter((f) => f.criterion === 'dynamics')).toEqual([]);
    expect(riding.criteria.find((c) => c.criterion === 'dynamics')!.summary).toMatch(/not judged/);
    expect(riding.criteria.find((c) => c.criterion === 'dynamics')!.judged).toBe(false);
  });
});

describe('hairpins', () => {
  const least = STANDARDS.hairpinLeast.value;
  const hairpin = (riseDb: number, more: Partial<HairpinMeasure> = {}) =>
    withMeasured({
      hairpins: [
        {
          kind: 'crescendo',
          index: 4,
          toIndex: 11,
          bar: '2',
          toBar: '3',
          pass: 1,
          riseDb,
          registerAdjustedRiseDb: riseDb,
          slopeDbPerBar: riseDb / 2,
          slopeDbPerSecond: riseDb / 8,
          errorDb: 0.2,
          ...more,
        },
      ],
    });

  it('that rise enough are not mentioned, those that do not are', () => {
    expect(weightOf(hairpin(least + 0.1), 'weak-hairpin')).toBeNull();
    expect(weightOf(hairpin(1), 'weak-hairpin')).toBe('fix');
    expect(weightOf(hairpin(-4), 'reversed-hairpin')).toBe('fix');
    expect(weightOf(hairpin(-4, { kind: 'diminuendo' }), 'weak-hairpin')).toBeNull();
    expect(weightOf(hairpin(1, { kind: 'diminuendo' }), 'weak-hairpin')).toBe('fix');
    expect(ofKind(hairpin(1), 'weak-hairpin')[0]).toMatchObject({ bar: '2', toBar: '3', index: 4, toIndex: 11 });
  });

  it('are only to be watched where the line is unsure or the registers explain it', () => {
    expect(weightOf(hairpin(1, { errorDb: 3 }), 'weak-hairpin')).toBe('watch');
    expect(weightOf(hairpin(1, { errorDb: Number.NaN }), 'weak-hairpin')).toBe('watch');
    expect(weightOf(hairpin(1, { registerAdjustedRiseDb: 7 }), 'weak-hairpin')).toBe('watch');
    expect(weightOf(hairpin(7, { registerAdjustedRiseDb: 1 }), 'weak-hairpin')).toBe('watch');
    expect(ofKind(hairpin(7, { registerAdjustedRiseDb: 1 }), 'weak-hairpin')[0]!.text).not.toMatch(/7|hardly/);
  });
});

describe('fermatas', () => {
  const { fermataLeast, fermataMost, fermataMargin } = STANDARDS;
  const held = (ratio: number) =>
    withMeasured({ fermatas: [{ index: 5, ...PLACE, writtenSeconds: 1, heldSeconds: ratio, ratio }] });

  it.each<[number, FindingKind, string | null]>([
    [fermataMost.value - 0.01, 'fermata-long', null],
    // what reads as exactly the limit is not beyond it
    [fermataMost.value + 0.01, 'fermata-long', null],
    [fermataMost.value + 0.06, 'fermata-long', 'watch'],
    [fermataMost.value * (1 + fermataMargin.value) + 0.01, 'fermata-long', 'fix'],
    [fermataLeast.value + 0.01, 'fermata-short', null],
    [fermataLeast.value - 0.01, 'fermata-short', 'watch'],
    [fermataLeast.value * (1 - fermataMargin.value) - 0.01, 'fermata-short', 'fix'],
  ])('held %d times: %s %s', (ratio, kind, weight) => {
    expect(weightOf(held(ratio), kind)).toBe(weight);
  });

  it('that were not measured are not judged', () => {
    const why = notMeasured('note-not-heard');
    const fermatas = [{ index: 5, ...PLACE, writtenSeconds: 1, heldSeconds: why, ratio: why }];
    expect(withMeasured({ fermatas }).findings.filter((f) => f.kind.startsWith('fermata'))).toEqual([]);
  });
});

describe('intonation', () => {
  const tuned = (centsFromA440: number) =>
    withMeasured({ tuning: { centsFromA440, a4Hz: 440 * 2 ** (centsFromA440 / 1200) } });
  const oneNote = (cents: number, aligned: JudgedOptions['aligned'] = {}) => {
    const notes = PART.notes.map(({ index }) =>
      index === 6
        ? { index, cents, centsFromOwnTuning: cents, levelDb: -24 }
        : { index, cents: 0, centsFromOwnTuning: 0, levelDb: -24 },
    );
    return withMeasured({ notes }, PART, { aligned });
  };

  it('of the whole take is told on both sides, as something to watch', () => {
    const { value } = STANDARDS.tuningWatch;
    expect([value - 1, 1 - value].map((cents) => weightOf(tuned(cents), 'tuning-off'))).toEqual([null, null]);
    expect([value + 1, -value - 1].map((cents) => weightOf(tuned(cents), 'tuning-off'))).toEqual(['watch', 'watch']);
    expect(ofKind(tuned(30), 'tuning-off')[0]!.text).toMatch(/too high: 30 cents/);
    expect(ofKind(tuned(-30), 'tuning-off')[0]!.text).toMatch(/too low: 30 cents/);
  });

  it('of a note is told where it is beyond the standard, and is a fix well beyond it', () => {
    const { noteWatch, noteFix } = STANDARDS;
    expect(weightOf(oneNote(noteWatch.value - 1), 'note-out-of-tune')).toBeNull();
    expect(weightOf(oneNote(noteWatch.value + 1), 'note-out-of-tune')).toBe('watch');
    expect(weightOf(oneNote(-noteFix.value - 1), 'note-out-of-tune')).toBe('fix');
  });

  it('of a short note is never a fix: the ear hears no tuning in it', () => {
    const short = { 6: { onsetSeconds: 6.5, offsetSeconds: 6.5 + STANDARDS.noteSeconds.value - 0.01 } };
    expect(weightOf(oneNote(60, short), 'note-out-of-tune')).toBe('watch');
    expect(weightOf(oneNote(STANDARDS.noteFix.value - 1, short), 'note-out-of-tune')).toBeNull();
  });

  it('of a note is never a fix where a second ear hears it further away than the standard is wide, and says so', () => {
    const { noteWatch, noteFix } = STANDARDS;
    const far = noteFix.value + 5;
    const heardAt = (secondEarCents: MaybeNumber) => {
      const notes = PART.notes.map(({ index }) => {
        const [cents, own] = index === 6 ? [far + 12, far] : [12, 0];
        const asked = index === 6 ? { secondEarCents } : {};
        return { index, cents, centsFromOwnTuning: own, levelDb: -24, ...asked };
      });
      return withMeasured({ notes }, PART);
    };
    for (const near of [12 + far, 12 + far - noteWatch.value, 12 + far + noteWatch.value]) {
      expect(weightOf(heardAt(near), 'note-out-of-tune')).toBe('fix');
      expect(ofKind(heardAt(near), 'note-out-of-tune')[0]!.text).not.toMatch(/second/);
    }
    expect(weightOf(heardAt(12 + far + noteWatch.value + 1), 'note-out-of-tune')).toBe('watch');
    // 15 is 3 above the player's own tuning of 12
    expect(ofKind(heardAt(15), 'note-out-of-tune')).toMatchObject([
      { weight: 'watch', text: expect.stringContaining('A second way of hearing puts it 3 cents too high') },
    ]);
    expect(weightOf(heardAt(notMeasured('second-ear-unclear')), 'note-out-of-tune')).toBe('fix');
  });

  it('of a wrong note is not told: it is wrong already', () => {
    expect(weightOf(oneNote(60, { 6: { status: 'other-pitch', playedMidi: 71 } }), 'note-out-of-tune')).toBeNull();
  });
});

describe('tempo', () => {
  const tempo = (playedQuarterBpm: number, bars: readonly number[], markedQuarterBpm: number | null = 100) =>
    withMeasured({
      tempo: {
        markedQuarterBpm,
        playedQuarterBpm,
        bars: bars.map((quarterBpm, i) => ({ bar: String(i + 1), pass: 1, startQuarters: 4 * i, quarterBpm })),
      },
    });

  it('off the mark is something to watch, well beyond the noticeable', () => {
    const { value } = STANDARDS.tempoWatch;
    expect(weightOf(tempo(100 * (1 - value) + 1, []), 'off-tempo')).toBeNull();
    expect(weightOf(tempo(100 * (1 - value) - 1, []), 'off-tempo')).toBe('watch');
    expect(weightOf(tempo(100 * (1 + value) + 1, []), 'off-tempo')).toBe('watch');
    expect(weightOf(tempo(60, [], null), 'off-tempo')).toBeNull();
  });

  it('that runs ahead or sinks for some bars in a row is told with its bars', () => {
    const bars = [100, 100, 112, 113, 112, 100, 100, 88, 87, 88];
    const judgement = tempo(100, bars);
    expect(ofKind(judgement, 'rushing')).toEqual([expect.objectContaining({ bar: '3', toBar: '5', weight: 'watch' })]);
    expect(ofKind(judgement, 'dragging')).toEqual([
      expect.objectContaining({ bar: '8', toBar: '10', weight: 'watch' }),
    ]);
    expect(ofKind(tempo(100, [100, 112, 100, 103, 97, 104]), 'rushing')).toEqual([]);
  });

  it('that changes evenly all through is told as such', () => {
    const bars = Array.from({ length: 20 }, (_, i) => 94.3 + 0.6 * i);
    const [rushing] = ofKind(tempo(100, bars), 'rushing');
    expect(rushing).toMatchObject({ bar: '1', toBar: '20', weight: 'watch' });
    expect(rushing!.text).toMatch(/faster from beginning to end/);
  });
});

describe('rhythm', () => {
  const entry = (lateSeconds: number, aligned: JudgedOptions['aligned'] = {}) =>
    withMeasured({ entries: [{ index: 8, ...PLACE, restQuarters: 1, lateSeconds, secondsAQuarter: 1 }] }, PART, {
      aligned,
    });

  it('entries after rests are late beyond the standard only, and a fix well beyond it', () => {
    const { entryWatch, entryFix, entryLeast } = STANDARDS;
    expect(weightOf(entry(Math.max(entryWatch.value, entryLeast.value) - 0.01), 'late-entry')).toBeNull();
    expect(weightOf(entry(Math.max(entryWatch.value, entryLeast.value) + 0.01), 'late-entry')).toBe('watch');
    expect(weightOf(entry(entryFix.value + 0.05), 'late-entry')).toBe('fix');
    expect(weightOf(entry(entryFix.value + 0.05, { 8: { confidence: 0.2 } }), 'late-entry')).toBe('watch');
  });

  it('entries are early only when that is plain, and never a fix', () => {
    expect(weightOf(entry(-0.02), 'early-entry')).toBeNull();
    expect(weightOf(entry(-0.4), 'early-entry')).toBe('watch');
    expect(weightOf(entry(-0.4), 'late-entry')).toBeNull();
  });

  const group = (shares: readonly number[], seconds = 1.5, aligned: JudgedOptions['aligned'] = {}) =>
    withMeasured(
      {
        groups: [
          {
            index: 4,
            toIndex: 6,
            ...PLACE,
            tuplet: true,
            seconds,
            shares,
            written: shares.map(() => 1 / shares.length),
          },
        ],
      },
      PART,
      { aligned },
    );

  it('groups are uneven beyond the standard and the error of their onsets', () => {
    expect(weightOf(group([1 / 3, 1 / 3, 1 / 3]), 'uneven-group')).toBeNull();
    expect(weightOf(group([0.36, 0.32, 0.32]), 'uneven-group')).toBeNull();
    expect(weightOf(group([0.5, 0.25, 0.25]), 'uneven-group')).toBe('fix');
    expect(weightOf(group([0.5, 0.25, 0.25], 1.5, { 5: { confidence: 0.1 } }), 'uneven-group')).toBe('watch');
    // in a fast group the same shares may be the error of two onsets
    expect(weightOf(group([0.44, 0.28, 0.28], 0.12), 'uneven-group')).not.toBe('fix');
  });

  it('groups are told which note strays furthest, and by how much', () => {
    expect(ofKind(group([0.5, 0.3, 0.2]), 'uneven-group')[0]).toMatchObject({
      index: 4,
      toIndex: 6,
      text: expect.stringMatching(/triplet.*first is too long. It takes 50 percent of the time instead of 33/),
    });
  });
});

describe('how notes go over into each other', () => {
  const slurred = smallPart(
    QUARTERS.map((note, i) => ({ ...note, slurredToNext: i === 8, slurredFromPrevious: i === 9 })),
  );
  const dotted = smallPart(QUARTERS.map((note) => ({ ...note, articulations: ['staccato' as const] })));
  const marked = smallPart(QUARTERS.map((note, i) => ({ ...note, breathAfter: i === 8 ? ('breath' as const) : null })));
  const transition = (
    part: Part,
    change: Partial<TransitionMeasure>,
    others = 0.5,
    aligned: JudgedOptions['aligned'] = {},
    reverberationSeconds: MaybeNumber = 0.5,
  ) => {
    const transitions = PART.notes.slice(1).map(({ index }): TransitionMeasure => {
      const plain = {
        index: index - 1,
        toIndex: index,
        betweenOnsetsSeconds: 1,
        expectedSeconds: 1,
        secondsAQuarter: 1,
      };
      const own = { gapSeconds: 1 - others, soundedShare: others, dipDb: 30 };
      return { ...plain, ...own, ...(index === 9 ? change : {}) };
    });
    const recording = { ...SOUND, reverberationSeconds };
    return judged(part, { measurements: { transitions, recording }, aligned });
  };

  it('a slur with a gap is broken', () => {
    const { slurGapWatch, slurGapFix } = STANDARDS;
    const gap = (gapSeconds: number, aligned: JudgedOptions['aligned'] = {}, dipDb = 30) =>
      weightOf(transition(slurred, { gapSeconds, soundedShare: 1 - gapSeconds, dipDb }, 0.9, aligned), 'slur-broken');
    expect(gap(0)).toBeNull();
    expect(gap(slurGapWatch.value - 0.001)).toBeNull();
    expect(gap(slurGapWatch.value + 0.001)).toBe('watch');
    expect(gap(slurGapFix.value + 0.01)).toBe('fix');
    expect(gap(slurGapFix.value + 0.01, { 9: { confidence: 0.2 } })).toBe('watch');
    // without a plain dip of the level it may be a soft change of notes
    expect(gap(slurGapFix.value + 0.01, {}, 1)).toBe('watch');
    expect(weightOf(transition(PART, { gapSeconds: 0.1 }, 0.9), 'slur-broken')).toBeNull();
  });

  it('a staccato is long when it is held and the player’s others are short', () => {
    const { staccatoWatch, staccatoFix } = STANDARDS;
    const share = (soundedShare: number, dipDb = 2, room: MaybeNumber = 0.5) => {
      const change = { soundedShare, gapSeconds: 1 - soundedShare, dipDb };
      return weightOf(transition(dotted, change, 0.45, {}, room), 'staccato-long');
    };
    expect(share(staccatoWatch.value - 0.01)).toBeNull();
    expect(share(staccatoFix.value + 0.05)).toBe('fix');
    // a level that falls as far as a ringing room lets it may be a short note in that room
    expect(share(staccatoFix.value + 0.05, 25)).toBe('watch');
    // and where the room rings long, or cannot be told, no note is accused of it
    expect(share(staccatoFix.value + 0.05, 2, STANDARDS.ringingLong.value)).toBe('watch');
    expect(share(staccatoFix.value + 0.05, 2, notMeasured('too-few-silences'))).toBe('watch');
    // where all of them sound long it may be the room
    const all = transition(dotted, {}, 0.95);
    expect(ofKind(all, 'staccato-long').filter((f) => f.weight === 'fix')).toEqual([]);
  });

  it('a breath where none is marked cuts a note short; at a mark it is none of our business', () => {
    const breath = { gapSeconds: 0.6, soundedShare: 0.4 };
    expect(weightOf(transition(PART, breath, 0.9), 'breath-unmarked')).toBe('fix');
    expect(weightOf(transition(PART, breath, 0.9, { 8: { confidence: 0.1 } }), 'breath-unmarked')).toBe('watch');
    expect(weightOf(transition(marked, breath, 0.9), 'breath-unmarked')).toBeNull();
    expect(weightOf(transition(PART, { gapSeconds: 0.1, soundedShare: 0.9 }, 0.9), 'breath-unmarked')).toBeNull();
    expect(weightOf(transition(dotted, breath, 0.5), 'breath-unmarked')).toBeNull();
  });

  it('a breath that holds up the next note comes late, a longer wait is a hesitation', () => {
    const late = (excess: number) => ({
      betweenOnsetsSeconds: 1 + excess,
      gapSeconds: 0.2 + excess,
      soundedShare: 0.6,
    });
    const { breathLate, hesitation } = STANDARDS;
    expect(weightOf(transition(marked, late(breathLate.value - 0.05), 0.9), 'breath-late')).toBeNull();
    expect(weightOf(transition(marked, late(breathLate.value + 0.05), 0.9), 'breath-late')).toBe('watch');
    expect(weightOf(transition(PART, late(hesitation.value + 0.2), 0.9), 'hesitation')).toBe('watch');
    expect(weightOf(transition(PART, late(0.1), 0.9), 'hesitation')).toBeNull();
  });
});

describe('what a coding does to times', () => {
  /** The telephone's coding moves 95 of 100 onsets by no more than 10 ms. */
  const SPREAD = 0.01;
  /** Each finding that rests on a time, with its time this many seconds beyond what makes it a fix. */
  const FINDINGS = {
    'late-entry': (beyond: number) => ({
      part: PART,
      entries: [
        { index: 8, ...PLACE, restQuarters: 1, lateSeconds: STANDARDS.entryFix.value + beyond, secondsAQuarter: 1 },
      ],
    }),
    'uneven-group': (beyond: number) => {
      // two onsets, each off by its error: as the judge has it
      const seconds = 1.5;
      const off = STANDARDS.groupFix.value + (Math.SQRT2 * (STANDARDS.onsetError.value + beyond)) / seconds;
      const shares = [1 / 3 + off, 1 / 3 - off / 2, 1 / 3 - off / 2];
      const written = [1 / 3, 1 / 3, 1 / 3];
      return { part: PART, groups: [{ index: 4, toIndex: 6, ...PLACE, tuplet: true, seconds, shares, written }] };
    },
    'slur-broken': (beyond: number) => ({
      part: smallPart(QUARTERS.map((n, i) => ({ ...n, slurredToNext: i === 8, slurredFromPrevious: i === 9 }))),
      transitions: joined({ gapSeconds: STANDARDS.slurGapFix.value + beyond, soundedShare: 0.9 }, 0.9),
    }),
    'staccato-long': (beyond: number) => ({
      part: smallPart(QUARTERS.map((note) => ({ ...note, articulations: ['staccato' as const] }))),
      // between the onsets lies a second
      transitions: joined({ soundedShare: STANDARDS.staccatoFix.value + beyond, dipDb: 2 }, 0.45),
    }),
    'breath-unmarked': (beyond: number) => ({
      part: PART,
      transitions: joined({ gapSeconds: STANDARDS.breathGap.value + beyond, soundedShare: 0.4 }, 0.9),
    }),
  } as const satisfies Partial<Record<FindingKind, (beyond: number) => { part: Part } & Partial<Measurements>>>;

  function joined(change: Partial<TransitionMeasure>, others: number): TransitionMeasure[] {
    const pace = { betweenOnsetsSeconds: 1, expectedSeconds: 1, secondsAQuarter: 1 };
    const usual = { gapSeconds: 1 - others, soundedShare: others, dipDb: 30 };
    return PART.notes.slice(1).map(({ index }) => {
      return { index: index - 1, toIndex: index, ...pace, ...usual, ...(index === 9 ? change : {}) };
    });
  }

  it.each(Object.keys(FINDINGS) as (keyof typeof FINDINGS)[])('is no reason for a fix: %s', (kind) => {
    const weighed = (beyond: number, onsetSpreadSeconds: number) => {
      const { part, ...measurements } = FINDINGS[kind](beyond);
      const recording = { ...SOUND, onsetSpreadSeconds };
      return weightOf(judged(part, { measurements: { ...measurements, recording } }), kind);
    };
    expect(weighed(SPREAD - 0.001, 0)).toBe('fix');
    expect(weighed(SPREAD - 0.001, SPREAD)).toBe('watch');
    expect(weighed(SPREAD + 0.001, SPREAD)).toBe('fix');
  });
});
