import { describe, expect, it } from 'vitest';
import type { Alignment } from '../../src/align/index.js';
import type { FindingKind } from '../../src/judge/index.js';
import type { JudgeInput } from '../../src/judge/observed/judge-input.js';
import type { Observation } from '../../src/judge/observed/observation.js';
import { withoutConsequences } from '../../src/judge/one-cause.js';
import { withoutDoubtful } from '../../src/judge/without-doubtful.js';
import type { Measurements, TransitionMeasure } from '../../src/measure/index.js';
import type { Part, PartNote } from '../../src/score/index.js';
import { crescendo, type NoteSketch, smallPart } from '../demo/small-part.js';
import { type JudgedOptions, judged, judgeInput, ofKind, weightOf } from '../helpers/judged.js';

/**
 * What keeps a player from being accused wrongly, guard by guard. Each case stands beside the same case without the doubt, which
 * is a fix: so a guard that is taken out, and a judge that accuses nobody of anything, both fail here.
 *
 * Source: a wrong accusation costs more than a missed slip; what a recorder or a program may mistake is to be watched at most.
 */
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PART = smallPart(QUARTERS);
const PLACE = { bar: '3', pass: 1 };
const partWith = (change: (i: number) => Partial<NoteSketch>): Part =>
  smallPart(QUARTERS.map((note, i) => ({ ...note, ...change(i) })));
const only = (index: number, change: Partial<NoteSketch>) => partWith((i) => (i === index ? change : {}));

type Aligned = NonNullable<JudgedOptions['aligned']>;
const UNSURE = { confidence: 0.5 } as const;
const UNCLEAR = { status: 'unclear', confidence: 0.9 } as const;

describe('a missing note', () => {
  const missing = (index: number, part = PART, aligned: Aligned = {}) =>
    weightOf(
      judged(part, {
        aligned: { ...aligned, [index]: { status: 'left-out' } },
        measurements: {
          emptyPlaces: [{ index, silentSeconds: 1, writtenSeconds: 1, closedUpShare: 0, fallDb: 40 }],
        },
      }),
      'missed-note',
    );

  it('is a fix where nothing speaks against it', () => {
    expect([1, 9, 22].map((index) => missing(index))).toEqual(['fix', 'fix', 'fix']);
  });

  it('is to be watched at the first note and at the last, which a recorder may cut off', () => {
    expect([0, 23].map((index) => missing(index))).toEqual(['watch', 'watch']);
  });

  it('is to be watched where a slur leads to it: it may not have spoken', () => {
    expect(missing(9, only(9, { slurredFromPrevious: true }))).toBe('watch');
    expect(missing(9, only(9, { slurredToNext: true }))).toBe('fix');
  });

  it('is to be watched where the note before or after has its pitch', () => {
    expect(missing(9, only(8, { midi: PART.notes[9]!.soundingMidi }))).toBe('watch');
    expect(missing(9, only(10, { midi: PART.notes[9]!.soundingMidi }))).toBe('watch');
  });

  it.each([8, 10])('is to be watched beside note %d when that is unclear, unsure or another pitch', (neighbour) => {
    expect(missing(9, PART, { [neighbour]: UNCLEAR })).toBe('watch');
    expect(missing(9, PART, { [neighbour]: UNSURE })).toBe('watch');
    expect(missing(9, PART, { [neighbour]: { status: 'other-pitch', playedMidi: 90 } })).toBe('watch');
  });

  it('is nothing where it may be in the note before, which has its pitch, and a rest after it is silent anyhow', () => {
    const before = { midi: PART.notes[9]!.soundingMidi };
    const change = (rest: number) => partWith((i) => (i === 8 ? before : i === 10 ? { rest } : {}));
    expect(missing(9, change(0))).toBe('watch');
    expect(missing(9, change(1))).toBeNull();
  });
});

describe('a note at another pitch', () => {
  const at = PART.notes[9]!.soundingMidi;
  const other = (aligned: Aligned = {}, playedMidi = at + 3) =>
    weightOf(
      judged(PART, { aligned: { ...aligned, 9: { status: 'other-pitch', playedMidi, confidence: 1 } } }),
      'wrong-note',
    );

  it('is a fix beside one note that was heard, and to be watched where neither was', () => {
    expect(other()).toBe('fix');
    expect(other({ 8: UNCLEAR })).toBe('fix');
    expect(other({ 10: UNCLEAR })).toBe('fix');
    expect(other({ 8: UNCLEAR, 10: UNCLEAR })).toBe('watch');
  });

  it('is to be watched where the room may have sent it back, softer by 5 dB, but not by less', () => {
    const { onsetSeconds } = judgeInput(PART).alignment.notes[9]!;
    const echo = (softerDb: number, later = 0) => {
      const aligned = { 9: { status: 'other-pitch', playedMidi: at + 3, confidence: 1 } } as const;
      const measurements = { echoes: [{ onsetSeconds: onsetSeconds! + later, softerDb }] };
      return weightOf(judged(PART, { aligned, measurements }), 'wrong-note');
    };
    expect([echo(4.9), echo(5), echo(5, 0.1)]).toEqual(['fix', 'watch', 'fix']);
  });

  it('is to be watched an octave away, which may be what rings strongest in the tone', () => {
    expect([-24, -12, 12, 24].map((away) => other({}, at + away))).toEqual(['watch', 'watch', 'watch', 'watch']);
    expect([-11, 11].map((away) => other({}, at + away))).toEqual(['fix', 'fix']);
  });
});

describe('an added note', () => {
  const before = PART.notes[8]!.soundingMidi;
  const extra = (
    change: Partial<Alignment['added'][number]> = {},
    aligned: Aligned = {},
    alignment: Partial<Alignment> = {},
  ) => {
    const added = [{ onsetSeconds: 9.2, offsetSeconds: 9.5, midi: before + 4, afterIndex: 8, ...change }];
    return judged(PART, { aligned, alignment: { added, ...alignment } });
  };
  const weight = (...given: Parameters<typeof extra>) => weightOf(extra(...given), 'added-note');

  it('is a fix between two notes that were surely heard, and to be watched beside one that was not', () => {
    expect(weight()).toBe('fix');
    expect(weight({}, { 8: UNSURE })).toBe('watch');
    expect(weight({}, { 9: UNSURE })).toBe('watch');
  });

  it('is to be watched where it leads into the next note, as an ornament may', () => {
    expect(weight({ leadsIn: true })).toBe('watch');
  });

  it('is to be watched where it may be an echo, and is nothing where a second one is heard', () => {
    const told = (...softerDb: readonly number[]) => {
      const added = [{ onsetSeconds: 9.2, offsetSeconds: 9.5, midi: before + 4, afterIndex: 8 }];
      const echoes = softerDb.map((db, k) => ({ onsetSeconds: 9.2 + 3 * k, softerDb: db }));
      return weightOf(judged(PART, { alignment: { added }, measurements: { echoes } }), 'added-note');
    };
    expect([told(), told(4.9), told(5)]).toEqual(['fix', 'fix', 'watch']);
    expect([told(9, 9), told(9, 4.9), told(4.9, 9)]).toEqual([null, 'watch', 'fix']);
  });

  it('is nothing where it is the note before begun anew, and to be watched where it is the next one', () => {
    expect(weight({ midi: before })).toBeNull();
    const next = PART.notes[9]!.soundingMidi;
    expect(weight({ midi: next })).toBe('watch');
  });

  it.each([
    [7.3, null],
    [7.1, 'fix'],
    [11.1, null],
    [11.3, 'fix'],
  ])('at 9.2 s, with a new beginning at %d s: %s', (onsetSeconds, told) => {
    const restarts = [{ stoppedAtIndex: 20, resumedAtIndex: 19, onsetSeconds }];
    expect(weight({}, {}, { restarts })).toBe(told);
  });

  it('in a written rest is to be watched, and not told twice', () => {
    const rest = { index: 8, toIndex: 9, ...PLACE, beat: 1, quarters: 1, seconds: 1 };
    const inRest = (change: Partial<Measurements['rests'][number]>, alignment: Partial<Alignment> = {}) =>
      ofKind(
        judged(PART, {
          alignment,
          measurements: { rests: [{ ...rest, state: 'played-into', onsetSeconds: 9.3, midi: 72, ...change }] },
        }),
        'added-note',
      ).map((f) => f.weight);
    expect(inRest({})).toEqual(['watch']);
    expect(inRest({ state: 'rung-over' })).toEqual([]);
    expect(inRest({ state: 'silent' })).toEqual([]);
    const added = [{ onsetSeconds: 9.3, offsetSeconds: 9.6, midi: before + 4, afterIndex: 8 }];
    expect(inRest({}, { added })).toEqual(['fix']);
  });
});

/** Every note goes over into the next alike, a second apart, but for the one from note 8 to note 9. */
function goingOver(part: Part, change: Partial<TransitionMeasure>, others: number, more: JudgedOptions = {}) {
  const pace = { betweenOnsetsSeconds: 1, expectedSeconds: 1, secondsAQuarter: 1 };
  const usual = { gapSeconds: 1 - others, soundedShare: others, dipDb: 30 };
  const transitions = PART.notes.slice(1).map(({ index }): TransitionMeasure => {
    return { index: index - 1, toIndex: index, ...pace, ...usual, ...(index === 9 ? change : {}) };
  });
  return judged(part, { ...more, measurements: { transitions, ...more.measurements } });
}

describe('a silence', () => {
  const silence = (part: Part, more: JudgedOptions = {}, change: Partial<TransitionMeasure> = {}) =>
    goingOver(part, { gapSeconds: 0.5, soundedShare: 0.45, ...change }, 0.9, more);
  const breath = (...given: Parameters<typeof silence>) => weightOf(silence(...given), 'breath-unmarked');

  it('is an unmarked breath where the music goes on', () => {
    expect(breath(PART)).toBe('fix');
  });

  it('is to be watched where the level hardly dips, as after an attack on which a recorder turns down', () => {
    expect([15, 16].map((dipDb) => breath(PART, {}, { dipDb }))).toEqual(['watch', 'fix']);
  });

  it('is no breath in a written rest, and no hesitation either', () => {
    expect(breath(only(9, { rest: 1 }))).toBeNull();
    const wait = { gapSeconds: 2, betweenOnsetsSeconds: 3, soundedShare: 0.3 };
    expect(weightOf(silence(PART, {}, wait), 'hesitation')).toBe('watch');
    expect(weightOf(silence(only(9, { rest: 1 }), {}, wait), 'hesitation')).toBeNull();
  });

  it('is no breath after a fermata, nor where a rest is held before the next note', () => {
    expect(breath(only(8, { fermata: true }))).toBeNull();
    expect(breath(only(9, { heldRestBefore: true }))).toBeNull();
  });

  it('is no breath where a breath is marked', () => {
    expect(breath(only(8, { breathAfter: 'breath' }))).toBeNull();
  });

  it.each(['staccato', 'staccatissimo', 'detached-legato'] as const)('is no breath after a note with %s', (mark) => {
    expect(breath(only(8, { articulations: [mark] }))).toBeNull();
    // but it is one where the next note comes late by half of a breath
    const late = { betweenOnsetsSeconds: 1.12 };
    expect(breath(only(8, { articulations: [mark] }), {}, late)).toBe('fix');
    expect(breath(only(8, { articulations: [mark] }), {}, { betweenOnsetsSeconds: 1.1 })).toBeNull();
  });

  it('is no breath where the note sounds for more than 0.55 of its time, but inside a slur', () => {
    expect(breath(PART, {}, { soundedShare: 0.54 })).toBe('fix');
    expect(breath(PART, {}, { soundedShare: 0.56 })).toBeNull();
    const slurred = partWith((i) => ({ slurredToNext: i === 8, slurredFromPrevious: i === 9 }));
    expect(breath(slurred, {}, { soundedShare: 0.56 })).toBe('fix');
  });

  it.each([8, 9])('is to be watched where note %d is unsure, unclear or another pitch', (index) => {
    expect(breath(PART, { aligned: { [index]: UNSURE } })).toBe('watch');
    expect(breath(PART, { aligned: { [index]: UNCLEAR } })).toBe('watch');
    expect(breath(PART, { aligned: { [index]: { status: 'other-pitch', playedMidi: 90 } } })).toBe('watch');
  });
});

describe('a broken slur', () => {
  const change = (i: number): Partial<PartNote> => ({ slurredToNext: i === 8, slurredFromPrevious: i === 9 });
  const broken = (part: Part, aligned: Aligned = {}) =>
    weightOf(goingOver(part, { gapSeconds: 0.1, soundedShare: 0.9, dipDb: 30 }, 0.9, { aligned }), 'slur-broken');

  it('is a fix between two notes that were surely heard', () => {
    expect(broken(partWith(change))).toBe('fix');
    for (const index of [8, 9]) {
      expect(broken(partWith(change), { [index]: UNSURE })).toBe('watch');
      expect(broken(partWith(change), { [index]: UNCLEAR })).toBeNull();
      expect(broken(partWith(change), { [index]: { status: 'other-pitch', playedMidi: 90 } })).toBeNull();
    }
  });

  it('is to be watched after a note that hardly spoke, more than 12 dB below the next', () => {
    const spoken = (levelDb: number) => {
      const notes = judgeInput(PART).measurements.notes.map((n) => (n.index === 8 ? { ...n, levelDb } : n));
      const gap = { gapSeconds: 0.1, soundedShare: 0.9, dipDb: 30 };
      return weightOf(goingOver(partWith(change), gap, 0.9, { measurements: { notes } }), 'slur-broken');
    };
    // the next one is at −24 dBFS
    expect([spoken(-35.9), spoken(-36.1)]).toEqual(['fix', 'watch']);
  });

  it('is less sure on low notes, where three periods are longer than any onset is wrong by', () => {
    const low = (midi: number, gapSeconds: number) => {
      const part = partWith((i) => ({ ...change(i), ...(i === 9 ? { midi } : {}) }));
      return weightOf(goingOver(part, { gapSeconds, soundedShare: 0.9, dipDb: 30 }, 0.9), 'slur-broken');
    };
    // 33 is 55 Hz: three periods take 54.5 ms, 39.5 more than 15; 57 is 220 Hz: 13.6 ms, less than 15
    expect([low(33, 0.067), low(33, 0.068), low(33, 0.104), low(33, 0.105)]).toEqual([null, 'watch', 'watch', 'fix']);
    expect([low(57, 0.028), low(57, 0.029), low(57, 0.065), low(57, 0.066)]).toEqual([null, 'watch', 'watch', 'fix']);
  });

  it('is nothing between notes of one pitch, nor where one slur ends and another begins', () => {
    expect(broken(partWith((i) => ({ ...change(i), ...(i === 9 ? { midi: PART.notes[8]!.soundingMidi } : {}) })))).toBe(
      null,
    );
    expect(broken(partWith((i) => ({ slurredToNext: i === 8 })))).toBeNull();
    expect(broken(partWith((i) => ({ slurredFromPrevious: i === 9 })))).toBeNull();
  });
});

describe('a held dot', () => {
  const DRY = { recording: { ...judgedRecording(), reverberationSeconds: 0.2 } };
  const held = (part: Part, others: number | ((index: number) => number) = 0.45) => {
    const shares = typeof others === 'number' ? () => others : others;
    const transitions = PART.notes.slice(1).map(({ index }): TransitionMeasure => {
      const soundedShare = index === 9 ? 0.95 : shares(index);
      const pace = { betweenOnsetsSeconds: 1, expectedSeconds: 1, secondsAQuarter: 1 };
      return { index: index - 1, toIndex: index, ...pace, soundedShare, gapSeconds: 1 - soundedShare, dipDb: 2 };
    });
    const found = ofKind(judged(part, { measurements: { ...DRY, transitions } }), 'staccato-long');
    return found.find((f) => f.index === 8)?.weight ?? null;
  };
  const dots = (change: Partial<NoteSketch> = {}) =>
    partWith((i) => ({ articulations: ['staccato'], ...(i === 8 ? change : {}) }));

  it('is a fix among short ones', () => {
    expect(held(dots())).toBe('fix');
  });

  it('is nothing under a slur, at a fermata, before a breath or before a rest', () => {
    expect(held(dots({ slurredToNext: true }))).toBeNull();
    expect(held(dots({ fermata: true }))).toBeNull();
    expect(held(dots({ breathAfter: 'breath' }))).toBeNull();
    expect(held(partWith((i) => ({ articulations: ['staccato'], ...(i === 9 ? { rest: 1 } : {}) })))).toBeNull();
  });

  it('is to be watched where fewer than three others are dotted, or a fifth of the others are held, too', () => {
    const few = (count: number) =>
      partWith((i) => ({ articulations: i === 8 || (i > 12 && i <= 12 + count) ? ['staccato'] : [] }));
    expect(held(few(2))).toBe('watch');
    expect(held(few(3))).toBe('fix');
    // 22 others: four that are held leave the fifth of them below, five do not
    const many = (count: number) => held(dots(), (index) => (index > 9 && index <= 9 + count ? 0.9 : 0.45));
    expect([many(4), many(5)]).toEqual(['fix', 'watch']);
  });
});

/** The recording of an even take, as it is measured. */
function judgedRecording(): Measurements['recording'] {
  return {
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
}

describe('dynamics', () => {
  const contrasts = (from: string, to: string) => [
    { from, to, index: 8, ...PLACE, differenceDb: 0, registerAdjustedDb: 0, intervalDb: [0, 0] as const },
  ];
  const accents = [{ mark: 'accent', index: 8, ...PLACE, overDb: -3, spreadDb: 1 }];

  it('are not judged where the recorder moved its level', () => {
    const told = (levelRiding: boolean) => {
      const recording = { ...judgedRecording(), levelRiding };
      const judgement = judged(PART, { measurements: { contrasts: contrasts('p', 'f'), accents, recording } });
      return ['weak-contrast', 'accent-weak'].map((kind) => weightOf(judgement, kind as FindingKind));
    };
    expect(told(false)).toEqual(['fix', 'watch']);
    expect(told(true)).toEqual([null, null]);
  });

  it('are not judged between marks that ask for no change', () => {
    expect(weightOf(judged(PART, { measurements: { contrasts: contrasts('f', 'f') } }), 'weak-contrast')).toBeNull();
  });

  it('are not judged by an accent on a note that was not played as written', () => {
    const judgement = judged(PART, { measurements: { accents }, aligned: { 8: UNCLEAR } });
    expect(weightOf(judgement, 'accent-weak')).toBeNull();
  });

  it('of a hairpin within one bar say nothing of where in it they happen', () => {
    const part = smallPart(QUARTERS, { hairpins: [crescendo(4, 8, 4, 7)] });
    const course = { halfwayShare: 1, peakAt: 0.5, turnedBackDb: 5, steadiness: 1 };
    const hairpin = { kind: 'crescendo', index: 4, toIndex: 7, bar: '2', pass: 1, riseDb: 8, errorDb: 0.1 } as const;
    const told = (toBar: string) => {
      const slopes = { registerAdjustedRiseDb: 8, slopeDbPerBar: 8, slopeDbPerSecond: 2 };
      const hairpins = [{ ...hairpin, ...slopes, toBar, course }];
      return weightOf(judged(part, { measurements: { hairpins } }), 'weak-hairpin');
    };
    expect([told('2'), told('3')]).toEqual([null, 'watch']);
  });
});

describe('an uneven group', () => {
  const group = (part: Part, more: JudgedOptions = {}, shares: readonly number[] = [0.5, 0.25, 0.25]) => {
    const written = [1 / 3, 1 / 3, 1 / 3];
    const groups = [{ index: 4, toIndex: 6, ...PLACE, tuplet: true, seconds: 1.5, shares, written }];
    return weightOf(judged(part, { ...more, measurements: { groups } }), 'uneven-group');
  };

  it('is a fix where its notes and both notes beside it were heard', () => {
    expect(group(PART)).toBe('fix');
    for (const index of [3, 7]) expect(group(PART, { aligned: { [index]: UNCLEAR } })).toBe('watch');
    for (const index of [4, 5, 6]) {
      expect(group(PART, { aligned: { [index]: UNCLEAR } })).toBe('watch');
      expect(group(PART, { aligned: { [index]: UNSURE } })).toBe('watch');
    }
    for (const index of [2, 8]) expect(group(PART, { aligned: { [index]: UNCLEAR } })).toBe('fix');
  });

  it('is to be watched where more was played in it', () => {
    const added = (afterIndex: number) => [{ onsetSeconds: 4.7, offsetSeconds: 4.8, midi: 90, afterIndex }];
    for (const index of [4, 5, 6]) expect(group(PART, { alignment: { added: added(index) } })).toBe('watch');
    for (const index of [3, 7]) expect(group(PART, { alignment: { added: added(index) } })).toBe('fix');
  });

  it('is to be watched where a pitch is repeated: that onset is the least sure of all', () => {
    for (const index of [5, 6, 7]) {
      expect(group(only(index, { midi: PART.notes[index - 1]!.soundingMidi }))).toBe('watch');
    }
    expect(group(only(4, { midi: PART.notes[3]!.soundingMidi }))).toBe('fix');
  });

  it('is less sure on low notes', () => {
    // off by a sixth of 1.5 s: 0.25 s. 21 is 27.5 Hz: three periods take 109 ms, times √2 is 0.1 of 1.5 s; 0.085 are needed
    const low = (midi: number) => only(6, { midi });
    expect([group(low(21)), group(low(33))]).toEqual(['watch', 'fix']);
  });

  it('is to be watched where a note has less than 0.4 of its time: it was misheard rather than rushed', () => {
    expect(group(PART, {}, [0.54, 0.14, 0.32])).toBe('fix');
    expect(group(PART, {}, [0.54, 0.13, 0.33])).toBe('watch');
  });
});

describe('a room that echoes', () => {
  const at = PART.notes[9]!.soundingMidi;
  const misreadings = [{ kind: 'accidental-forgotten', soundingMidi: at + 1 }] as unknown as PartNote['misreadings'];
  const told = (recording: Partial<Measurements['recording']>, playedMidi: number, kind: FindingKind) => {
    const aligned = { 9: { status: 'other-pitch', playedMidi, confidence: 1 } } as const;
    const measurements = { recording: { ...judgedRecording(), ...recording } };
    return weightOf(judged(only(9, { misreadings }), { aligned, measurements }), kind);
  };

  it('leaves what is told of single notes to be watched, but for a misread sign, which predicts its pitch', () => {
    expect([told({}, at + 3, 'wrong-note'), told({}, at + 1, 'accidental')]).toEqual(['fix', 'fix']);
    const echo = { echoSeconds: 0.3 };
    expect([told(echo, at + 3, 'wrong-note'), told(echo, at + 1, 'accidental')]).toEqual(['watch', 'fix']);
  });
});

describe('a late entry', () => {
  const late = (aligned: Aligned = {}) => {
    const entries = [{ index: 8, ...PLACE, restQuarters: 1, lateSeconds: 0.3, secondsAQuarter: 1 }];
    return weightOf(judged(PART, { aligned, measurements: { entries } }), 'late-entry');
  };

  it('is to be watched where it, or the note before the rest, was not surely heard', () => {
    expect(late()).toBe('fix');
    for (const index of [7, 8]) {
      expect(late({ [index]: UNCLEAR })).toBe('watch');
      expect(late({ [index]: UNSURE })).toBe('watch');
    }
  });

  const observation = (kind: FindingKind, index: number, more: object = {}) =>
    ({ kind, criterion: 'rhythm', weight: 'watch', size: 1, ...PLACE, index, ...more }) as unknown as Observation;

  it.each(['breath-unmarked', 'breath-late', 'hesitation'] as const)(
    'is a stop’s: %s up to four notes before',
    (kind) => {
      const left = (stop: number) =>
        withoutConsequences([observation('late-entry', 12), observation(kind, stop)]).length;
      expect([7, 8, 11, 12].map(left)).toEqual([2, 1, 1, 2]);
    },
  );

  it('is no worth a listen on a note below 0.9 among the twelve before a new beginning', () => {
    const left = (confidence: number, resumedAtIndex: number) => {
      const notes = PART.notes.map(({ index }) => ({
        index,
        status: 'as-written',
        confidence: index === 4 ? confidence : 1,
      }));
      const alignment = { notes, restarts: [{ resumedAtIndex }] };
      return withoutDoubtful({ alignment } as unknown as JudgeInput, [observation('late-entry', 4)]).length;
    };
    expect([left(0.89, 16), left(0.89, 17), left(0.91, 16)]).toEqual([0, 1, 1]);
  });
});

describe('a new beginning and bars jumped over', () => {
  it('from the first note is no stumble only where the last bar had been played', () => {
    const weight = (stoppedAtIndex: number, resumedAtIndex: number) =>
      weightOf(
        judged(PART, { alignment: { restarts: [{ stoppedAtIndex, resumedAtIndex, onsetSeconds: 30 }] } }),
        'restart',
      );
    expect([weight(23, 0), weight(20, 0), weight(19, 0), weight(23, 1)]).toEqual(['watch', 'watch', 'fix', 'fix']);
  });

  it('are not the player’s where the file breaks off or ends in a tone', () => {
    const skip = (fromIndex: number, toIndex: number, recording: Partial<Measurements['recording']> = {}) =>
      weightOf(
        judged(PART, {
          alignment: { skips: [{ fromIndex, toIndex, onsetSeconds: 20 }] },
          measurements: { recording: { ...judgedRecording(), ...recording } },
        }),
        'skipped-bars',
      );
    expect(skip(20, 23)).toBe('fix');
    expect(skip(20, 23, { breaksOff: true })).toBe('watch');
    expect(skip(20, 23, { endsInSound: true })).toBe('watch');
    expect(skip(16, 19, { breaksOff: true })).toBe('fix');
  });

  it('are one thing where an attempt was given up', () => {
    const skips = [{ fromIndex: 8, toIndex: 11, onsetSeconds: 12 }];
    const restarts = (resumedAtIndex: number) => [{ stoppedAtIndex: 14, resumedAtIndex, onsetSeconds: 16 }];
    const told = (at: number) => ofKind(judged(PART, { alignment: { skips, restarts: restarts(at) } }), 'skipped-bars');
    expect([told(12).length, told(13).length]).toEqual([0, 1]);
  });
});

describe('a note out of tune', () => {
  const strays = (count: number, aligned: Aligned = {}, second?: number) => {
    const notes = PART.notes.map(({ index }) => {
      const cents = [0, 12, 4, 16].slice(0, count).includes(index) ? 40 : 0;
      const asked = cents > 0 && second !== undefined ? { secondEarCents: second } : {};
      return { index, cents, centsFromOwnTuning: cents, levelDb: -24, ...asked };
    });
    return ofKind(judged(PART, { aligned, measurements: { notes } }), 'note-out-of-tune');
  };

  it('is to be watched where a second ear hears it more than 25 cents away', () => {
    // 40 − 25 = 15 and 40 + 25 = 65
    const weights = [14, 15, 65, 66].map((second) => strays(1, {}, second)[0]!.weight);
    expect(weights).toEqual(['watch', 'fix', 'fix', 'watch']);
  });

  it('is not told of a note that is unclear', () => {
    expect(strays(1, { 0: UNCLEAR })).toEqual([]);
  });
});

describe('the order', () => {
  const both = judged(PART, {
    aligned: {
      3: { status: 'other-pitch', playedMidi: 90, confidence: 1 },
      5: { status: 'other-pitch', playedMidi: PART.notes[5]!.soundingMidi + 3, confidence: 1 },
    },
    alignment: { skips: [{ fromIndex: 16, toIndex: 19, onsetSeconds: 17 }] },
    measurements: {
      tuning: { centsFromA440: 400, a4Hz: 554 },
      entries: [{ index: 8, ...PLACE, restQuarters: 1, lateSeconds: 0.3, secondsAQuarter: 1 }],
    },
  });

  it('is fixes, watches, praise, whatever their size; within each the larger first', () => {
    // 400 cents are the largest by far, and still to be watched: after every fix. 90 is too far away to be sure of.
    expect(both.findings.filter((f) => f.weight !== 'well').map((f) => `${f.weight} ${f.kind}`)).toEqual([
      'fix skipped-bars',
      'fix wrong-note',
      'fix late-entry',
      'watch tuning-off',
      'watch wrong-note',
    ]);
    expect(both.findings.at(-1)!.weight).toBe('well');
  });

  it('is by place among alike, and only what comes after the seventh fix is watched', () => {
    const wrong = [20, 2, 14, 4, 8, 6, 10, 12].map((index) => {
      const playedMidi = PART.notes[index]!.soundingMidi + 3;
      return [index, { status: 'other-pitch', playedMidi, confidence: 1 }] as const;
    });
    const found = ofKind(judged(PART, { aligned: Object.fromEntries(wrong) }), 'wrong-note');
    expect(found.map((f) => f.index)).toEqual([2, 4, 6, 8, 10, 12, 14, 20]);
    expect(found.map((f) => f.weight)).toEqual([...Array<string>(7).fill('fix'), 'watch']);
    expect(found.map((f) => f.ownWeight)).toEqual([...Array<undefined>(7).fill(undefined), 'fix']);
  });
});
