import { describe, expect, it } from 'vitest';
import { notMeasured } from '../../src/base/index.js';
import { type Brief, defaultBrief } from '../../src/brief/index.js';
import { type Criterion, judgeTake } from '../../src/judge/index.js';
import { tempoSaying, tuningSaying } from '../../src/judge/pitch-and-tempo-sayings.js';
import { soundSayings } from '../../src/judge/sound-sayings.js';
import type { HeldNoteMeasure, Measurements, TransitionMeasure } from '../../src/measure/index.js';
import type { Part } from '../../src/score/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { type JudgedOptions, judgeInput } from '../helpers/judged.js';

/**
 * What the line of each criterion says, and why it says nothing.
 *
 * Source: definition; limits in absolute numbers, as the standards give them with their sources.
 */
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PLAIN = smallPart(QUARTERS);
const PLACE = { bar: '3', pass: 1 };
const RECORDING = {
  ...{ peakDbfs: -6, clippedShare: 0, signalToNoiseDb: 40, reverberationSeconds: 0.3, levelRiding: false },
  ...{ breaksOff: false, onsetSpreadSeconds: 0, endsInSound: false, cautions: [] },
};
const NOTHING = {
  ...{ groups: [], entries: [], contrasts: [], hairpins: [], transitions: [], breaths: [], accents: [] },
  ...{ articulations: [], heldNotes: [], fermatas: [] },
};

function line(criterion: Criterion, measurements: Partial<Measurements>, part: Part = PLAIN, more: JudgedOptions = {}) {
  const input = judgeInput(part, { ...more, measurements: { recording: RECORDING, ...measurements } });
  return judgeTake(input).criteria.find((each) => each.criterion === criterion)!;
}
const briefly = ({ judged, reason }: ReturnType<typeof line>) => [judged, reason?.code ?? null];

describe('a criterion of which there is nothing in the part', () => {
  it.each([
    ['rhythm', NOTHING, 'no-groups-or-rests'],
    ['tempo', { tempo: notMeasured('too-few-bars') }, 'too-few-bars'],
    ['dynamics', NOTHING, 'no-level-change'],
    ['dynamics', { ...NOTHING, recording: { ...RECORDING, levelRiding: true } }, 'level-moved'],
    ['articulation', NOTHING, 'no-slur-or-staccato'],
    ['breath', NOTHING, 'no-breath-marked'],
    ['intonation', { tuning: notMeasured('too-few-pitches'), notes: [] }, 'too-few-pitches'],
    ['sound', { steadiness: notMeasured('too-few-held-notes') }, 'too-few-held-notes'],
  ] as const)('%s is not judged, and says why', (criterion, measurements, code) => {
    expect(briefly(line(criterion, measurements as Partial<Measurements>))).toEqual([false, code]);
  });

  it('says that no breath was heard where one is marked', () => {
    const why = notMeasured('neighbours-not-heard');
    const breaths = [{ index: 8, bar: '3', pass: 1, beat: 1, gapSeconds: why, lateSeconds: why }];
    expect(briefly(line('breath', { ...NOTHING, breaths }))).toEqual([false, 'no-breath-heard']);
  });

  it('notes and continuity always have something to say', () => {
    expect(briefly(line('notes', NOTHING))).toEqual([true, null]);
    expect(briefly(line('continuity', NOTHING))).toEqual([true, null]);
  });
});

describe('a criterion of which there is something', () => {
  const pace = { betweenOnsetsSeconds: 1, expectedSeconds: 1, secondsAQuarter: 1 };
  const over: TransitionMeasure = { index: 8, toIndex: 9, ...pace, gapSeconds: 0.1, soundedShare: 0.9, dipDb: 20 };
  const group = {
    ...{ index: 4, toIndex: 6, ...PLACE, tuplet: true, seconds: 1.5 },
    ...{ shares: [1 / 3, 1 / 3, 1 / 3], written: [1 / 3, 1 / 3, 1 / 3] },
  };
  const entry = { index: 8, ...PLACE, restQuarters: 1, lateSeconds: 0, secondsAQuarter: 1 };

  it('is rhythm by one group or one entry', () => {
    expect(line('rhythm', { ...NOTHING, groups: [group] })).toMatchObject({
      judged: true,
      sayings: [{ code: 'groups-even', facts: { even: 1, of: 1 } }],
    });
    expect(line('rhythm', { ...NOTHING, entries: [entry] })).toMatchObject({
      judged: true,
      sayings: [{ code: 'entries-in-time', facts: { inTime: 1, of: 1 } }],
    });
  });

  it('is breath and articulation by one pair of notes, articulation only where the part has some', () => {
    const dotted = smallPart(QUARTERS.map((n, i) => (i === 3 ? { ...n, articulations: ['staccato'] } : n)));
    const slurred = smallPart(QUARTERS.map((n, i) => (i === 3 ? { ...n, slurredToNext: true } : n)));
    const measurements = { ...NOTHING, transitions: [over] };
    expect(line('breath', measurements).judged).toBe(true);
    expect(line('articulation', measurements).judged).toBe(false);
    expect(line('articulation', measurements, dotted).judged).toBe(true);
    expect(line('articulation', measurements, slurred).judged).toBe(true);
    expect(line('articulation', NOTHING, slurred).judged).toBe(false);
  });

  it('is dynamics by one change that was measured', () => {
    const why = notMeasured('too-few-in-hairpin');
    const contrast = (db: number | typeof why) => {
      return { from: 'p', to: 'f', index: 8, ...PLACE, differenceDb: db, registerAdjustedDb: db };
    };
    expect(line('dynamics', { ...NOTHING, contrasts: [contrast(why)] }).judged).toBe(false);
    expect(line('dynamics', { ...NOTHING, contrasts: [contrast(why), contrast(9)] }).judged).toBe(true);
    const recording = { ...RECORDING, levelRiding: true };
    expect(line('dynamics', { ...NOTHING, contrasts: [contrast(9)], recording }).judged).toBe(false);
  });

  it('is judged by a finding alone', () => {
    const silence = { ...over, gapSeconds: 0.6, soundedShare: 0.4 };
    expect(line('breath', { ...NOTHING, transitions: [silence] })).toMatchObject({ judged: true, fix: 1, watch: 0 });
  });
});

describe('what is left out by a brief', () => {
  const usual = defaultBrief(PLAIN);
  const out = (criterion: Criterion, more: Partial<Brief> = {}) => {
    const criteria = { ...usual.criteria, [criterion]: { judged: false, points: 0 } };
    const brief = { ...usual, ...more, criteria };
    return line(criterion, {}, PLAIN, { brief });
  };

  it.each([
    ['articulation', {}, 'brief-leaves-out'],
    ['articulation', { played: 'all-slurred' }, 'brief-all-slurred'],
    ['tempo', { played: 'all-slurred' }, 'brief-leaves-out'],
    ['tempo', { played: 'under-tempo' }, 'brief-under-tempo'],
    ['articulation', { played: 'under-tempo' }, 'brief-leaves-out'],
    ['notes', {}, 'brief-leaves-out'],
  ] as const)('%s %o: %s', (criterion, more, code) => {
    expect(out(criterion, more)).toMatchObject({ judged: false, sayings: [], fix: 0, watch: 0, reason: { code } });
    expect(out(criterion, more).points?.given ?? null).toBeNull();
  });
});

describe('how many are told', () => {
  it('of watches: those that no other leads', () => {
    const entry = (index: number) => ({ index, ...PLACE, restQuarters: 1, lateSeconds: 0.1, secondsAQuarter: 1 });
    const entries = [4, 12, 20].map(entry);
    const { fix, watch } = line('rhythm', { ...NOTHING, entries });
    expect([fix, watch]).toEqual([0, 1]);
  });
});

describe('breaths', () => {
  const why = notMeasured('neighbours-not-heard');
  const at = (index: number, gapSeconds: number | typeof why) => {
    return { index, bar: '3', pass: 1, beat: 1, gapSeconds, lateSeconds: 0 };
  };

  it('are heard above 0.12 s, of those that were come to', () => {
    const breaths = [at(2, 0.12), at(6, 0.13), at(10, 0.5), at(14, why)];
    expect(line('breath', { breaths }).sayings).toEqual([
      { code: 'breaths-heard', facts: { heard: 2, of: 3 } },
      { code: 'breaths-beyond', facts: { count: 1 } },
    ]);
  });

  it('are short ones where a full one is asked for and less than 0.3 s is taken', () => {
    const full = [2, 6, 10].map((index) => ({ index, bar: '1', beat: 1, pass: 1, kind: 'full' as const }));
    const quick = [{ index: 14, bar: '1', beat: 1, pass: 1, kind: 'quick' as const }];
    const brief = { ...defaultBrief(PLAIN), breaths: [...full, ...quick] };
    const breaths = [at(2, 0.12), at(6, 0.29), at(10, 0.3), at(14, 0.2)];
    expect(line('breath', { breaths }, PLAIN, { brief }).sayings).toEqual([
      { code: 'breaths-heard', facts: { heard: 3, of: 4 } },
      { code: 'short-breaths', facts: { count: 1 } },
    ]);
  });
});

describe('articulation', () => {
  const way = (name: 'staccato' | 'tenuto' | 'tongued', count: number, soundedShare: number) => {
    return { way: name, count, soundedShare, middleHalf: [soundedShare, soundedShare] as const };
  };

  it('tells how long dotted and held notes sound, of three and more', () => {
    const articulations = [way('staccato', 3, 0.45), way('tongued', 9, 0.9), way('tenuto', 3, 0.95)];
    expect(line('articulation', { ...NOTHING, articulations }).sayings).toEqual([
      { code: 'staccato-sounds', facts: { percent: 45 } },
      { code: 'tenuto-sounds', facts: { percent: 95 } },
    ]);
    const few = [way('staccato', 2, 0.45), way('tenuto', 2, 0.95)];
    expect(line('articulation', { ...NOTHING, articulations: few }).sayings).toEqual([]);
  });

  it('tells the slurs that are joined first', () => {
    const slurred = smallPart(QUARTERS.map((n, i) => ({ ...n, slurredToNext: i < 4 })));
    const pace = { betweenOnsetsSeconds: 1, soundedShare: 1, dipDb: 0 };
    const gaps = [0, 0.028, 0.029, 0.1, 0];
    const transitions = gaps.map((gapSeconds, index) => ({ index, toIndex: index + 1, ...pace, gapSeconds }));
    const measurements = { ...NOTHING, transitions, articulations: [way('staccato', 3, 0.5)] };
    expect(line('articulation', measurements, slurred).sayings).toEqual([
      { code: 'slurs-joined', facts: { joined: 2, of: 4 } },
      { code: 'staccato-sounds', facts: { percent: 50 } },
    ]);
  });
});

describe('continuity', () => {
  it('tells how often the player began again, and how often something was passed over', () => {
    const alignment = {
      restarts: [{ stoppedAtIndex: 9, resumedAtIndex: 8, onsetSeconds: 10 }],
      skips: [
        { fromIndex: 12, toIndex: 13, onsetSeconds: 13 },
        { fromIndex: 16, toIndex: 17, onsetSeconds: 17 },
      ],
    };
    expect(line('continuity', {}, PLAIN, { alignment }).sayings).toEqual([
      { code: 'restarts', facts: { count: 1 } },
      { code: 'skips', facts: { count: 2 } },
    ]);
  });
});

describe('notes', () => {
  it('tells how many are as written and how many unclear, grace notes left out', () => {
    const part = smallPart(QUARTERS.map((n, i) => (i === 3 ? { ...n, grace: true } : n)));
    const aligned = {
      5: { status: 'unclear' as const },
      6: { status: 'other-pitch' as const, playedMidi: 90 },
      7: { status: 'left-out' as const },
    };
    expect(line('notes', {}, part, { aligned }).sayings).toEqual([
      { code: 'notes-as-written', facts: { right: 20, of: 23, unclear: 1 } },
    ]);
  });
});

describe('where the pitch leans', () => {
  const leaning = (
    registers: Measurements['intonation']['registers'],
    withLoudness: Measurements['intonation']['withLoudness'] = notMeasured('too-few-loud-and-soft'),
  ) => {
    const intonation = { noteNames: [], registers, withLoudness };
    return line('intonation', { tuning: { centsFromA440: 0, a4Hz: 440 }, intonation }).sayings.slice(1);
  };
  const register = (name: 'low' | 'middle' | 'high', cents: number, half: number) => {
    return {
      register: name,
      fromMidi: 60,
      toMidi: 64,
      cents,
      count: 9,
      intervalCents: [cents - half, cents + half] as const,
    };
  };

  it('is told of low and high notes beyond ten cents, where the interval leaves out nought', () => {
    expect(leaning([register('low', 11, 5), register('high', -11, 5)])).toEqual([
      { code: 'register', facts: { register: 'low', cents: 11 } },
      { code: 'register', facts: { register: 'high', cents: -11 } },
    ]);
    expect(leaning([register('low', 10, 5)])).toEqual([]);
    expect(leaning([register('middle', 20, 5)])).toEqual([]);
    expect(leaning([register('low', 11, 11)])).toEqual([]);
    expect(leaning([register('low', -11, 12)])).toEqual([]);
  });

  it('is told of loud notes beyond ten cents over the whole reach, beyond twice the error', () => {
    const loud = (centsPerDb: number, errorCentsPerDb: number, reachDb: number) =>
      leaning([], { centsPerDb, errorCentsPerDb, reachDb, count: 30 });
    expect(loud(1, 0.25, 12)).toEqual([{ code: 'loud-notes', facts: { cents: 12 } }]);
    expect(loud(-1, 0.25, 12)).toEqual([{ code: 'loud-notes', facts: { cents: -12 } }]);
    expect(loud(1, 0.25, 10)).toEqual([]);
    expect(loud(1, 0.5, 12)).toEqual([]);
    expect(loud(1, 0.49, 12)).toHaveLength(1);
  });
});

describe('the tempo beside the mark', () => {
  // Three in a hundred are noticed (Drake & Botte 1993): up to 128 × 1.03 = 131.84 it is as marked, up to 135.68 a little faster.
  it.each([
    [131.8, 'as-marked'],
    [131.9, 'a-little-faster'],
    [135.6, 'a-little-faster'],
    [135.8, 'faster'],
    [124.2, 'as-marked'],
    [124.1, 'a-little-slower'],
    [120.4, 'a-little-slower'],
    [120.2, 'slower'],
  ] as const)('%d beside 128 is %s', (played, heard) => {
    expect(tempoSaying(played, 128, 'quarter')).toEqual({
      code: 'tempo-beside-mark',
      facts: { played, marked: 128, heard, beat: 'quarter' },
    });
  });

  it('is told alone without a mark', () => {
    expect(tempoSaying(90, null, 'dotted-quarter')).toEqual({
      code: 'tempo',
      facts: { played: 90, beat: 'dotted-quarter' },
    });
  });

  // Ten cents are just noticeable (Hill & Summers 2007); decided by whole cents, as they are told.
  it.each([
    [0.4, 'exact'],
    [-0.4, 'exact'],
    [0.6, 'close'],
    [10.4, 'close'],
    [-10.4, 'close'],
    [10.6, 'off'],
    [-10.6, 'off'],
  ] as const)('a tuning of %d cents is %s', (cents, heard) => {
    expect(tuningSaying(441, cents)).toEqual({ code: 'tuning', facts: { a4Hz: 441, cents, heard } });
  });
});

describe('the sound', () => {
  const long = { bar: '3', pass: 1, seconds: 1.5, wobbleDb: 0.1, endCents: 0, endDb: 0, beforeBreath: false };
  const wave = { vibrato: { rateHz: 5, depthCents: 20 } };
  const held = Array.from({ length: 20 }, (_, index): HeldNoteMeasure => {
    return { index, ...long, wobbleCents: index === 9 ? 40 : 2, ...(index < 2 ? wave : {}) };
  });
  const steadiness = { wobbleCents: 2, intervalCents: [1, 3] as const, count: 18, vibratoCount: 2 };
  const quiet = { starts: [], breathNoise: notMeasured('too-few-held-notes') };
  const sayings = (measurements: Partial<Measurements>) =>
    soundSayings(judgeInput(PLAIN, { measurements: { ...quiet, recording: RECORDING, steadiness, ...measurements } }));

  it('tells how many notes are steady, how many have vibrato, and whether the air goes on', () => {
    const slurredAir = { dipDb: 4, intervalDb: [3, 5] as const, count: 9 };
    expect(sayings({ heldNotes: held, slurredAir })).toEqual([
      { code: 'notes-steady', facts: { steady: 19, of: 20 } },
      { code: 'with-vibrato', facts: { count: 2 } },
      { code: 'air-under-slurs', facts: { db: 4 } },
    ]);
  });

  // Five starts are too few to be counted, six are enough.
  it('tells how many notes speak at once, and how much of the tone is breath', () => {
    const start = { bar: '3', pass: 1, pitchSeconds: 0.01, levelSeconds: 0.01 };
    const starts = (count: number) => Array.from({ length: count }, (_, index) => ({ index, ...start }));
    const breathNoise = { harmonicsToNoiseDb: 31, intervalDb: [30, 32] as const, count: 9, notes: [] };
    const plain = { heldNotes: held.slice(10), slurredAir: notMeasured('no-slurs') };
    expect(sayings({ ...plain, starts: starts(5), breathNoise }).slice(1)).toEqual([
      { code: 'tone-over-breath', facts: { db: 31 } },
    ]);
    expect(sayings({ ...plain, starts: starts(6) }).slice(1)).toEqual([
      { code: 'notes-speak', facts: { prompt: 6, of: 6 } },
    ]);
  });

  // The change from soft to loud is slope × reach, its interval two errors; 0.3 harmonics are a change.
  it.each([
    [0.05, 0.01, 'brighter'],
    [0.05, 0.026, undefined],
    [0.029, 0.001, undefined],
    [-0.05, 0.01, 'darker'],
    [0.005, 0.01, 'as-bright'],
    [0.005, 0.002, undefined],
    [0.005, 0.013, undefined],
  ] as const)('says of a slope of %d ± %d harmonics a dB over 10 dB: %s', (slope, error, beside) => {
    const withLoudness = { harmonicsPerDb: slope, errorHarmonicsPerDb: error, reachDb: 10, count: 12 };
    const toneColour = { notes: [], withLoudness };
    const said = sayings({ heldNotes: held.slice(10), slurredAir: notMeasured('no-slurs'), toneColour }).slice(1);
    expect(said).toEqual(beside === undefined ? [] : [{ code: 'loud-tone', facts: { beside } }]);
  });

  it('is silent of what there is none of', () => {
    const plain = held.slice(10);
    expect(sayings({ heldNotes: plain, slurredAir: notMeasured('no-slurs') })).toEqual([
      { code: 'notes-steady', facts: { steady: 10, of: 10 } },
    ]);
    expect(sayings({ heldNotes: held, recording: { ...RECORDING, levelRiding: true } })).toEqual([]);
  });
});
