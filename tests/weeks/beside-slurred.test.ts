import { describe, expect, it } from 'vitest';
import type { Fault, TakePlan, VoiceName } from '../../src/demo/index.js';
import { performTake } from '../../src/demo/index.js';
import { measureTake } from '../../src/measure/index.js';
import type { TakeResult } from '../../src/result/index.js';
import type { Part } from '../../src/score/index.js';
import type { BesideSlurred } from '../../src/weeks/index.js';
import { wordsIn } from '../../src/words/index.js';
import { demoPart, hearSamples, PLAIN } from '../helpers/heard-take.js';
import { progressOf } from '../helpers/progress-of.js';
import { notJudged, takeOfWeeks } from '../helpers/weeks.js';

/**
 * The same bars slurred for practice and then tongued: what the tongue costs the air.
 *
 * Source: by hand from documents made for it, and what the synthesiser was told to play, which knows nothing of how takes are
 * listened to.
 */
type Notes = TakeResult['notes'];
type Places = Exclude<NonNullable<TakeResult['tonguedAir']>, { notMeasured: string }>;
const TOOL = { name: 'takesheet', version: '0.1.0' };
const FIRST = takeOfWeeks().result.notes[0] as Notes[number];
const SLURRED = notJudged('articulation', 'all slurred', 'brief-all-slurred');

/** A take with places that sag by so much, tongued notes at one level and slurred ones at another. */
function take(sags: readonly number[], tonguedDb: number, slurredDb = -20, dipDb = 20): Partial<TakeResult> {
  const places: Places = sags.map((sagDb, i) => ({ index: i, toIndex: i + 1, bar: '1', pass: 1, sagDb, dipDb }));
  const slurs = Array.from({ length: 10 }, (_, i) => {
    return { index: 30 + i, toIndex: 31 + i, asked: 'slur' as const, gapSeconds: 0, soundedShare: 1 };
  });
  const notes = Array.from({ length: 45 }, (_, index) => ({
    ...FIRST,
    ...{ index, levelDb: index < 30 ? tonguedDb : slurredDb },
  }));
  return { tonguedAir: places, transitions: slurs, notes };
}

function besideOf(...takes: readonly (readonly [date: string, changed: Partial<TakeResult>])[]) {
  const results = takes.map(([date, changed]) => takeOfWeeks({ date, changed }));
  return progressOf({ tool: TOOL, results, lost: [], failures: [] }).pieces[0]!.players[0]!.besideSlurred;
}
const DAY = '2026-03-02';
const slurredTake = (changed = take(Array(10).fill(0.2), -26, -20, 1)) => ({ ...changed, ...SLURRED });

describe('slurred beside tongued', () => {
  it('is how much more the tone sags, place by place, with its interval', () => {
    const beside = besideOf([DAY, slurredTake()], [DAY, take([3, 3.1, 3.2, 3.3, 3.4, 3.5, 3.6, 3.7, 3.8, 3.9], -26)]);
    // the median of 2.8, 2.9 … 3.7; robust spread 1.4826 × 0.25, error 1.2533 × that ÷ √10, half the interval 1.96 of them
    expect(beside).toMatchObject({
      date: DAY,
      sag: { db: 3.25, intervalDb: [2.962, 3.538], count: 10, beside: 'more' },
    });
  });

  it('is how much softer tongued notes are, whatever the level of the takes', () => {
    // 5 dB softer, of which the recorder makes 2
    const beside = besideOf([DAY, slurredTake()], [DAY, take(Array(10).fill(3), -31, -22)]);
    expect(beside).toMatchObject({ softer: { db: 3, count: 10, beside: 'more' } });
  });

  it('is less than usual, or not sure', () => {
    const [less, unclear] = [Array(10).fill(1), [0, 4, 0, 4, 0, 4, 0, 4, 0, 4]].map(
      (sags) => besideOf([DAY, slurredTake()], [DAY, take(sags, -26)])!,
    );
    expect([less, unclear]).toMatchObject([{ sag: { beside: 'less' } }, { sag: { beside: 'unclear' } }]);
  });

  it('is of the latest day that has both, and of no other', () => {
    const tongued = (sag: number) => take(Array(10).fill(sag), -26);
    const days = [
      ['2026-03-02', slurredTake()],
      ['2026-03-02', tongued(5)],
      ['2026-03-09', slurredTake()],
      ['2026-03-09', tongued(4)],
      ['2026-03-16', tongued(3)],
    ] as const;
    expect(besideOf(...days)).toMatchObject({ date: '2026-03-09', sag: { db: 3.8 } });
    expect(besideOf(['2026-03-02', slurredTake()], ['2026-03-09', tongued(4)])).toBeUndefined();
  });

  it.each<readonly [string, Partial<TakeResult>, Partial<TakeResult>]>([
    ['too-few-tongued-places', slurredTake(), take(Array(7).fill(3), -26)],
    ['tongued-as-slurred', slurredTake(take(Array(10).fill(3), -26)), take(Array(10).fill(3), -26)],
    ['level-moved', slurredTake(), { ...take([], -26), tonguedAir: { notMeasured: 'moved', code: 'level-moved' } }],
    [
      'room-rings',
      slurredTake({ ...take([], -26), tonguedAir: { notMeasured: 'rings', code: 'room-rings' } }),
      take([], -26),
    ],
    ['number-not-kept', slurredTake({ ...take([], -26), tonguedAir: undefined }), take([], -26)],
  ])('is not told: %s', (code, slurred, tongued) => {
    expect(besideOf([DAY, slurred], [DAY, tongued])).toMatchObject({ sag: { code }, softer: { code } });
  });

  it('says nothing of how soft notes are where none is slurred in both', () => {
    const tongued = { ...take(Array(10).fill(3), -26), transitions: [] };
    expect(besideOf([DAY, slurredTake()], [DAY, tongued])).toMatchObject({
      sag: { db: 2.8 },
      softer: { code: 'too-few-slurred-notes' },
    });
  });
});

describe('in words', () => {
  const said = (language: 'en' | 'de', sag: number | null, softer: number | null) => {
    const cost = (db: number | null, most: number) =>
      db === null ? null : { db, beside: db > most ? ('more' as const) : ('less' as const) };
    return wordsIn(language).weeks.besideSlurred({ date: DAY, sag: cost(sag, 2), softer: cost(softer, 1) });
  };

  it('tells what is sure, and what to do where it costs', () => {
    expect(said('en', 4.2, 0.2)).toBe(
      'The same bars slurred, then tongued (2 March): between tongued notes the tone sags by 4 dB. Keep the air going as in the slur; the tongue only touches it.',
    );
    expect(said('en', 4.2, 3)).toContain('the tone sags by 4 dB and tongued notes are 3 dB softer. Keep the air going');
    expect(said('en', 1.2, null)).toBe(
      'The same bars slurred, then tongued (2 March): the tone goes on between tongued notes.',
    );
    expect(said('de', 4.2, 3)).toBe(
      'Dieselben Takte gebunden, dann gestoßen (2. März): zwischen gestoßenen Tönen sackt der Klang um 4 dB ab und gestoßene Töne sind um 3 dB leiser. Lass die Luft strömen wie in der Bindung; die Zunge berührt sie nur.',
    );
    expect(said('en', null, 0.4)).toBeNull();
  });
});

describe('on takes of the synthesiser', () => {
  const part = demoPart();
  const tongued = part.notes.filter(({ articulations }) => articulations.length === 0);
  const short = tongued.map(({ index }): Fault => ({ kind: 'length', at: index, share: 0.7 }));
  const CONDITIONS: readonly (readonly [voice: VoiceName, condition: Partial<TakePlan>])[] = [
    ['clarinet', {}],
    ['flute', { roomSeconds: 0 }],
    ['brass', { signalToNoiseDb: 30 }],
  ];

  /** The part slurred wherever no rest, breath or repeated pitch stands in the way. */
  function allSlurred({ notes, ...more }: Part): Part {
    const joins = (i: number) => {
      const [before, note] = [notes[i - 1], notes[i]];
      if (before === undefined || note === undefined || note.restBeforeQuarters > 0) return false;
      return before.breathAfter === null && before.soundingMidi !== note.soundingMidi;
    };
    const slurred = notes.map((note, i) => {
      return { ...note, articulations: [], slurredFromPrevious: joins(i), slurredToNext: joins(i + 1) };
    });
    return { ...more, notes: slurred };
  }

  function heard(of: Part, plan: Partial<TakePlan>): Partial<TakeResult> {
    const { samples, sampleRateHz } = performTake(of, { ...PLAIN, ...plan });
    const { tonguedAir, notes, transitions } = measureTake(hearSamples(part, samples, sampleRateHz));
    if ('notMeasured' in tonguedAir) throw new Error(tonguedAir.notMeasured.code);
    return {
      tonguedAir: tonguedAir.map((place) => ({ ...place })),
      transitions: transitions
        .filter(({ index }) => part.notes[index]!.slurredToNext)
        .map(({ index, toIndex }) => ({ index, toIndex, asked: 'slur', gapSeconds: 0, soundedShare: 1 })),
      notes: part.notes.map(({ index }) => {
        const { levelDb } = notes[index]!;
        return { ...FIRST, index, levelDb: typeof levelDb === 'number' ? levelDb : { notMeasured: 'none' } };
      }),
    };
  }

  it.each(CONDITIONS)('what a %s was told to lose is told, and nothing else', (voice, condition) => {
    const slurred = { ...heard(allSlurred(part), { ...condition, voice, seed: 5, gainDb: 4 }), ...SLURRED };
    const beside = (faults: readonly Fault[]): BesideSlurred =>
      besideOf([DAY, slurred], [DAY, heard(part, { ...condition, voice, faults })])!;
    expect(beside([])).toMatchObject({ sag: { beside: 'less' }, softer: { beside: 'less' } });
    const { softer } = beside([{ kind: 'soft-tongue', db: 3 }]);
    expect(softer).toMatchObject({ beside: 'more' });
    expect('db' in softer && Math.abs(softer.db - 3)).toBeLessThan(0.6);
    expect(beside(short)).toMatchObject({ sag: { beside: 'more' }, softer: { beside: 'less' } });
  });
});
