import { describe, expect, it } from 'vitest';
import type { AlignedNote, Alignment } from '../../src/align/index.js';
import { paceAround } from '../../src/measure/context/pace-around.js';
import type { MeasureContext, TempoMeasure } from '../../src/measure/index.js';
import { askedPlaces } from '../../src/measure/index.js';
import { measureAddedPlaces } from '../../src/measure/measures/added-places.js';
import { measureEntries } from '../../src/measure/measures/entries.js';
import { measureFermatas } from '../../src/measure/measures/fermatas.js';
import { findGroups } from '../../src/measure/measures/find-groups.js';
import { measureGroups } from '../../src/measure/measures/groups.js';
import { measureTempo } from '../../src/measure/measures/tempo.js';
import { placeInScore } from '../../src/measure/place-in-score.js';
import type { Part } from '../../src/score/index.js';
import { dynamic, type NoteSketch, smallPart } from '../demo/small-part.js';

/**
 * What is read from onsets alone: pace, groups, entries, fermatas, and where in the part something lies. A quarter takes half a
 * second; whatever differs is put there by hand, and every expected number is worked out from it.
 *
 * Source: definition; the pace is the median of slopes (Theil 1950).
 */
const A_QUARTER = 0.5;

const quarters = (count: number, change: (i: number) => Partial<NoteSketch> = () => ({})): NoteSketch[] =>
  Array.from({ length: count }, (_, i) => ({ midi: 60 + (i % 12), quarters: 1, ...change(i) }));

type Played = Readonly<Record<number, Partial<AlignedNote> | null>>;

/** Every note on its beat, but for what is said of single ones: null was not heard. */
function played(part: Part, change: Played = {}, more: Partial<Alignment> = {}): MeasureContext {
  const notes = part.notes.map((note): AlignedNote => {
    const own = change[note.index];
    if (own === null) return { index: note.index, status: 'left-out', confidence: 0 };
    const onsetSeconds = 1 + A_QUARTER * note.onsetQuarters;
    const offsetSeconds = onsetSeconds + 0.9 * A_QUARTER * note.durationQuarters;
    return {
      index: note.index,
      status: 'as-written',
      confidence: 1,
      playedMidi: note.soundingMidi,
      onsetSeconds,
      offsetSeconds,
      ...own,
    };
  });
  return { part, alignment: { notes, added: [], restarts: [], skips: [], ...more } } as unknown as MeasureContext;
}
const later = (part: Part, index: number, seconds: number): Played => {
  return { [index]: { onsetSeconds: 1 + A_QUARTER * part.notes[index]!.onsetQuarters + seconds } };
};
const restarts = (resumedAtIndex: number) => [{ stoppedAtIndex: resumedAtIndex + 1, resumedAtIndex, onsetSeconds: 1 }];

describe('the pace around notes', () => {
  const part = smallPart(quarters(12));
  const pace = (context: MeasureContext, from = 0, to = 11) => paceAround(context, from, to);

  it('is that of all pairs of onsets: of four notes six', () => {
    expect(pace(played(part), 2, 5)).toEqual({ secondsAQuarter: 0.5, pairs: 6 });
    expect(pace(played(part), -3, 3).pairs).toBe(6);
    expect(pace(played(part), 8, 40).pairs).toBe(6);
    expect(pace(played(part), 5, 5)).toEqual({ secondsAQuarter: Number.NaN, pairs: 0 });
  });

  it('is the median, so that one late note does not count', () => {
    expect(pace(played(part, later(part, 4, 0.3))).secondsAQuarter).toBeCloseTo(0.5, 9);
  });

  it('leaves out notes that were not heard, and grace notes', () => {
    expect(pace(played(part, { 3: null }), 2, 5).pairs).toBe(3);
    const graced = smallPart(quarters(12, (i) => (i === 3 ? { grace: true } : {})));
    expect(pace(played(graced), 2, 5).pairs).toBe(3);
  });

  it.each([
    ['a fermata', { fermata: true }],
    ['a breath', { breathAfter: 'breath' as const }],
  ])('does not reach over %s', (_, change) => {
    const stopped = smallPart(quarters(12, (i) => (i === 3 ? change : {})));
    // pairs within notes 2 to 3 and 4 to 6: one and three
    expect(pace(played(stopped), 2, 6).pairs).toBe(4);
  });

  it('does not reach over a new beginning, nor over a written bend', () => {
    expect(pace(played(part, {}, { restarts: restarts(4) }), 2, 6).pairs).toBe(4);
    const bent = { ...part, tempoBends: [{ startQuarters: 3, endQuarters: 5 }] } as unknown as Part;
    // from 3 to 4 and from 4 to 5 nothing is told: pairs 2–3 and 5–6 are left
    expect(pace(played(bent), 2, 6).pairs).toBe(2);
  });

  it('uses pairs less than 0.45 of a quarter apart only where there are fewer than six others', () => {
    const eighths = (length: number) => smallPart(Array.from({ length: 12 }, () => ({ midi: 60, quarters: length })));
    // notes of 0.4: of five, four pairs lie 0.4 apart, six further
    expect(pace(played(eighths(0.4)), 0, 4).pairs).toBe(6);
    // of four, three and three: all six are used
    expect(pace(played(eighths(0.4)), 0, 3).pairs).toBe(6);
    expect(pace(played(eighths(0.46)), 0, 4).pairs).toBe(10);
    const quick = played(eighths(0.4), { 1: { onsetSeconds: 1.1 }, 3: { onsetSeconds: 1.5 } });
    expect(pace(quick, 0, 4).pairs).toBe(6);
  });
});

describe('the tempo', () => {
  const part = smallPart(quarters(16));

  it('is that of each bar and the median of the bars', () => {
    // the third bar at two thirds of the pace
    const slow = Object.fromEntries(
      [8, 9, 10, 11, 12, 13, 14, 15].map((i) => [i, { onsetSeconds: 5 + (i - 8) * 0.75 }]),
    );
    const tempo = measureTempo(played(part, slow));
    expect(tempo).toMatchObject({ markedQuarterBpm: 60, playedQuarterBpm: 100 });
    expect((tempo as TempoMeasure).bars).toEqual([
      { bar: '1', pass: 1, startQuarters: 0, quarterBpm: expect.closeTo(120, 6) },
      { bar: '2', pass: 1, startQuarters: 4, quarterBpm: expect.closeTo(120, 6) },
      { bar: '3', pass: 1, startQuarters: 8, quarterBpm: expect.closeTo(80, 6) },
      { bar: '4', pass: 1, startQuarters: 12, quarterBpm: expect.closeTo(80, 6) },
    ]);
  });

  it('needs two bars with three pairs each, and the mark may be missing', () => {
    const two = smallPart(quarters(8));
    expect(measureTempo(played(two))).toHaveProperty('playedQuarterBpm');
    // bar 1 with the first note of bar 2 and one more: two heard are one pair
    expect(measureTempo(played(two, { 0: null, 1: null, 2: null }))).toEqual({
      notMeasured: { code: 'too-few-bars', facts: {} },
    });
    expect(measureTempo(played(two, { 0: null, 1: null }))).toHaveProperty('playedQuarterBpm');
    const unmarked = { ...two, tempos: [{ atQuarters: 0, quarterBpm: 60, printed: false }] };
    expect(measureTempo(played(unmarked))).toMatchObject({ markedQuarterBpm: null });
  });
});

describe('a place in the part', () => {
  it('is told by bar, pass and beat, in the unit of the metre', () => {
    const part = smallPart(quarters(12));
    expect(placeInScore(part, 0)).toEqual({ bar: '1', pass: 1, beat: 1 });
    expect(placeInScore(part, 6.5)).toEqual({ bar: '2', pass: 1, beat: 3.5 });
    expect(placeInScore(part, 4)).toEqual({ bar: '2', pass: 1, beat: 1 });
    expect(placeInScore(part, 4 - 1e-9).bar).toBe('2');
    expect(placeInScore(part, 3.99).bar).toBe('1');
    expect(placeInScore(part, -1)).toEqual({ bar: '1', pass: 1, beat: 0 });
    const eight = { ...part, bars: part.bars.map((bar) => ({ ...bar, beatType: 8, beats: 8 })) };
    expect(placeInScore(eight, 6.5).beat).toBe(6);
  });

  it('of what was added lies between the notes before and after it, as time has it', () => {
    const part = smallPart(quarters(12));
    const added = (onsetSeconds: number, afterIndex: number, change: Played = {}) =>
      measureAddedPlaces(
        played(part, change, { added: [{ onsetSeconds, offsetSeconds: onsetSeconds + 0.1, midi: 70, afterIndex }] }),
      )[0];
    // note 5 at 3.5 s stands on beat 2 of bar 2, the next one half a second later
    expect(added(3.75, 5)).toEqual({ bar: '2', pass: 1, beat: 2.5 });
    expect(added(3.25, 5)).toEqual({ bar: '2', pass: 1, beat: 2 });
    expect(added(9, 5)).toEqual({ bar: '2', pass: 1, beat: expect.closeTo(2.999, 6) });
    // where note 6 was to come, half-way to note 7
    expect(added(4, 5, { 6: null })).toEqual({ bar: '2', pass: 1, beat: 3 });
    // nothing was heard before it, or after it
    expect(added(0.5, -1)).toEqual({ bar: '1', pass: 1, beat: 1 });
    expect(added(3.75, 5, { 5: null })).toEqual({ bar: '1', pass: 1, beat: 1 });
    expect(added(7, 11)).toEqual({ bar: '3', pass: 1, beat: 4 });
  });

  it('of what was added in a rest lies in the rest, from half of the note before it on', () => {
    // note 5 on beat 2 of bar 2, a rest on beat 3, note 6 on beat 4: a second from 3.5 s to 4.5 s
    const part = smallPart(quarters(12, (i) => (i === 6 ? { rest: 1 } : {})));
    const added = (onsetSeconds: number) =>
      measureAddedPlaces(played(part, {}, { added: [{ onsetSeconds, offsetSeconds: 9, midi: 70, afterIndex: 5 }] }))[0]!
        .beat;
    expect(added(3.7)).toBeCloseTo(2.4, 9);
    expect(added(3.76)).toBeCloseTo(3, 9);
    expect(added(4.25)).toBeCloseTo(3.5, 9);
    expect(added(4.5)).toBeCloseTo(3.999, 6);
  });
});

describe('groups', () => {
  const triplet = (group: string) =>
    ({ quarters: 1 / 3, tuplet: { group, actualNotes: 3, normalNotes: 2 } }) as unknown as Partial<NoteSketch>;
  const found = (part: Part) => findGroups(part).map((group) => group.map(({ index }) => index).join(' '));
  const sketch = (...lengths: readonly number[]) => lengths.map((length, i) => ({ midi: 60 + i, quarters: length }));

  it('are tuplets that are whole', () => {
    const part = (change: (i: number) => Partial<NoteSketch> = () => ({})) =>
      smallPart(quarters(8, (i) => ({ ...(i >= 2 && i <= 4 ? triplet('a') : {}), ...change(i) })));
    expect(found(part())).toEqual(['2 3 4']);
    expect(found(part((i) => (i === 3 ? { fermata: true } : {})))).toEqual([]);
    expect(found(part((i) => (i === 3 ? { breathAfter: 'breath' } : {})))).toEqual([]);
    expect(found(part((i) => (i === 4 ? { ...triplet('b') } : {})))).toEqual([]);
    // neither over a bar line nor from one pass into the next
    const whole = part();
    for (const change of [{ bar: '9' }, { pass: 2 }]) {
      const notes = whole.notes.map((n) => (n.index === 4 ? { ...n, ...change } : n));
      expect(found({ ...whole, notes })).toEqual([]);
    }
    const two = smallPart(quarters(8, (i) => (i >= 2 && i <= 4 ? triplet('a') : i >= 5 && i <= 7 ? triplet('b') : {})));
    expect(found(two)).toEqual(['2 3 4', '5 6 7']);
  });

  it('are beats filled with three notes and more, and no fewer', () => {
    expect(found(smallPart(sketch(1, 0.25, 0.25, 0.25, 0.25, 1, 0.5, 0.5, 1, 0.5, 0.25, 0.25)))).toEqual([
      '1 2 3 4',
      '9 10 11',
    ]);
    // a rest within the beat leaves it open
    const rested = [...sketch(1, 0.25, 0.25, 0.25)].map((n, i) => (i === 2 ? { ...n, rest: 0.25 } : n));
    expect(found(smallPart(rested))).toEqual([]);
    expect(found(smallPart(sketch(0.5, 0.25, 0.25, 0.25, 0.25, 0.5, 1, 1)))).toEqual(['0 1 2', '3 4 5']);
  });

  it('are beats of three eighths in 6/8, and of one eighth in 3/8', () => {
    const of = (beats: number, beatType: number, lengthQuarters: number) => {
      const part = smallPart(sketch(0.5, 0.5, 0.5, 0.5, 0.5, 0.5));
      const bars = [0, 1, 2].map((i) => ({
        bar: String(i + 1),
        barIndex: i,
        pass: 1,
        startQuarters: i * lengthQuarters,
        lengthQuarters,
        beats,
        beatType,
      }));
      const notes = part.notes.map((n) => {
        const bar = Math.floor(n.onsetQuarters / lengthQuarters);
        return {
          ...n,
          bar: String(bar + 1),
          barIndex: bar,
          beat: 1 + ((n.onsetQuarters - bar * lengthQuarters) * beatType) / 4,
        };
      });
      return found({ ...part, bars, notes });
    };
    expect(of(6, 8, 3)).toEqual(['0 1 2', '3 4 5']);
    expect(of(9, 8, 4.5)).toEqual(['0 1 2', '3 4 5']);
    expect(of(3, 8, 1.5)).toEqual([]);
    expect(of(4, 8, 2)).toEqual([]);
    expect(of(6, 4, 6)).toEqual([]);
  });

  it('leave grace notes and ornaments out', () => {
    const four = sketch(0.25, 0.25, 0.25, 0.25, 1);
    const part = smallPart(four);
    const graced = { ...part, notes: part.notes.map((n) => (n.index === 2 ? { ...n, grace: true } : n)) };
    expect(found(graced)).toEqual([]);
    const ornamented = {
      ...part,
      notes: part.notes.map((n) => (n.index === 2 ? { ...n, ornament: 'trill' as const } : n)),
    };
    expect(found(ornamented as Part)).toEqual([]);
    expect(found(part)).toEqual(['0 1 2 3']);
  });

  it('share their time to the onset of the next note', () => {
    const part = smallPart([...quarters(4), ...sketch(0.25, 0.25, 0.25, 0.25), ...quarters(7)]);
    const [even] = measureGroups(played(part));
    expect(even).toMatchObject({
      index: 4,
      toIndex: 7,
      bar: '2',
      pass: 1,
      tuplet: false,
      seconds: expect.closeTo(0.5, 9),
    });
    expect(even!.written).toEqual([0.25, 0.25, 0.25, 0.25]);
    even!.shares.forEach((share) => {
      expect(share).toBeCloseTo(0.25, 9);
    });
    // the second note 25 ms late: 0.15 and 0.1 of half a second
    const [late] = measureGroups(played(part, later(part, 5, 0.025)));
    expect([late!.shares[0], late!.shares[1]]).toEqual([expect.closeTo(0.3, 9), expect.closeTo(0.2, 9)]);
    expect(measureGroups(played(part, { 6: null }))).toEqual([]);
    // two onsets at once have no share
    expect(measureGroups(played(part, later(part, 5, 0.125)))).toEqual([]);
  });
});

describe('what is asked for', () => {
  it('is told with the notes it takes', () => {
    const part = smallPart(
      quarters(12, (i) => ({
        ...(i === 1 ? { slurredToNext: true } : {}),
        ...(i === 3 ? { articulations: ['staccatissimo'] } : {}),
        ...(i === 4 ? { articulations: ['strong-accent'] } : {}),
        ...(i === 5 ? { rest: 1 } : {}),
        ...(i === 9 ? { fermata: true } : {}),
      })),
    );
    const asked = askedPlaces(part);
    expect(asked.slursAndDots).toEqual([
      [1, 2],
      [3, 4],
    ]);
    expect(asked.accents).toEqual([[4]]);
    expect(asked.entries).toEqual([[5]]);
    expect(asked.groups).toEqual([]);
    expect(asked.tempoBars).toEqual([
      [0, 1, 2, 3],
      [4, 5, 6],
      [7, 8, 10],
    ]);
  });

  it('leaves grace notes out, and bars with one note outside a fermata', () => {
    const part = smallPart(
      quarters(8, (i) => (i === 2 ? { grace: true, slurredToNext: true } : i >= 5 ? { fermata: true } : {})),
    );
    const asked = askedPlaces(part);
    expect(asked.slursAndDots).toEqual([]);
    expect(asked.tempoBars).toEqual([[0, 1, 3]]);
    const events = { ...part, dynamicEvents: [{ mark: 'sfz', index: 6 }] };
    expect(askedPlaces(events).accents).toEqual([[6]]);
  });

  it('is an entry after rests of up to four quarters, and not after a fermata or a held rest', () => {
    const entries = (change: Partial<NoteSketch>, before: Partial<NoteSketch> = {}) =>
      askedPlaces(smallPart(quarters(8, (i) => (i === 5 ? change : i === 4 ? before : {})))).entries.length;
    expect([entries({ rest: 4 }), entries({ rest: 4.5 }), entries({ rest: 0.25 }), entries({})]).toEqual([1, 0, 1, 0]);
    expect([entries({ rest: 1 }, { fermata: true }), entries({ rest: 1, heldRestBefore: true })]).toEqual([0, 0]);
  });
});

describe('an entry after a rest', () => {
  const part = smallPart(quarters(16, (i) => (i === 8 ? { rest: 1 } : {})));
  const late = (change: Played, more: Partial<Alignment> = {}, of = part) => measureEntries(played(of, change, more));

  it('is as late as it comes after where the four notes before put it', () => {
    expect(late(later(part, 8, 0.2))).toEqual([
      {
        index: 8,
        bar: '3',
        pass: 1,
        restQuarters: 1,
        lateSeconds: expect.closeTo(0.2, 9),
        secondsAQuarter: expect.closeTo(0.5, 6),
      },
    ]);
    expect(late(later(part, 8, -0.2))[0]!.lateSeconds).toBeCloseTo(-0.2, 9);
    // the last note before it late by 0.2, the three before that not: their median decides
    expect(late(later(part, 7, 0.2))[0]!.lateSeconds).toBeCloseTo(0, 9);
    // notes 4 and 5 late, 6 and 7 not: half of it
    const two = { ...later(part, 4, 0.2), ...later(part, 5, 0.2) };
    expect(late(two)[0]!.lateSeconds).toBeCloseTo(-0.1, 6);
    // note 3 is not asked any more
    expect(late({ ...later(part, 3, 0.2), ...later(part, 4, 0.2) })[0]!.lateSeconds).toBeCloseTo(0, 6);
  });

  it('is counted from as far back as nothing stops the beat', () => {
    const stop = (change: Partial<NoteSketch>, at: number) =>
      smallPart(quarters(16, (i) => ({ ...(i === 8 ? { rest: 1 } : {}), ...(i === at ? change : {}) })));
    const all = { ...later(part, 4, 0.3), ...later(part, 5, 0.3) };
    expect(late(all, {}, stop({ fermata: true }, 5))[0]!.lateSeconds).toBeCloseTo(0, 6);
    expect(late(all, {}, stop({ breathAfter: 'breath' }, 5))[0]!.lateSeconds).toBeCloseTo(0, 6);
    // a breath right before the rest is the rest's own
    expect(late(all, {}, stop({ breathAfter: 'breath' }, 7))[0]!.lateSeconds).toBeCloseTo(-0.15, 6);
    expect(late(all, { restarts: restarts(6) })[0]!.lateSeconds).toBeCloseTo(0, 6);
    expect(late(all, { restarts: restarts(8) })).toEqual([]);
  });
});

describe('a fermata', () => {
  const part = smallPart(quarters(24, (i) => (i === 12 ? { fermata: true, quarters: 2 } : {})));

  it('is held for so many times its written length', () => {
    // two quarters of half a second; held for 2.5 s
    const [held] = measureFermatas(played(part, { 12: { onsetSeconds: 7, offsetSeconds: 9.5 } }));
    expect(held).toEqual({
      ...{ index: 12, bar: '4', pass: 1 },
      ...{ writtenSeconds: expect.closeTo(1, 6), heldSeconds: 2.5, ratio: expect.closeTo(2.5, 6) },
    });
  });

  it('has no ratio where it was not heard, or where the pace is not known', () => {
    expect(measureFermatas(played(part, { 12: null }))[0]).toMatchObject({
      ...{ writtenSeconds: expect.closeTo(1, 6), heldSeconds: { notMeasured: { code: 'note-not-heard' } } },
      ratio: { notMeasured: { code: 'note-not-heard' } },
    });
    const alone = smallPart(quarters(4, (i) => (i === 3 ? { fermata: true } : {})));
    const few = measureFermatas(played(alone, { 0: null }))[0];
    expect(few).toMatchObject({
      heldSeconds: expect.closeTo(0.45, 9),
      ratio: { notMeasured: { code: 'tempo-unknown-here' } },
    });
  });

  it('is read against the twelve notes on each side', () => {
    // all further away at twice the pace
    const far = Object.fromEntries([...Array(24).keys()].filter((i) => i > 18).map((i) => [i, null]));
    expect(measureFermatas(played(part, far))[0]).toMatchObject({ writtenSeconds: expect.closeTo(1, 6) });
  });

  it('only closes phrases where there are four, one at least every six bars', () => {
    const chorale = (count: number, printedBars: number) => {
      const piece = smallPart(quarters(32, (i) => (i % 8 === 7 && i < 8 * count ? { fermata: true } : {})));
      return measureFermatas(played({ ...piece, printedBars }))[0]!.ratio;
    };
    const closing = { notMeasured: { code: 'fermatas-close-phrases', facts: {} } };
    expect([chorale(4, 24), chorale(4, 25), chorale(3, 8)]).toEqual([
      closing,
      expect.closeTo(0.9, 6),
      expect.closeTo(0.9, 6),
    ]);
  });
});

describe('an accent mark', () => {
  it('stands among marks of level that hold no longer', () => {
    const part = {
      ...smallPart(quarters(8), { dynamics: [dynamic('p', 0, 0, 7)] }),
      dynamicEvents: [{ mark: 'fp', index: 3 }],
    };
    expect(askedPlaces(part).accents).toEqual([[3]]);
  });
});
