import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureTake, type WayOfPlaying } from '../../src/measure/index.js';
import type { PartNote } from '../../src/score/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { type HandNote, type HandOptions, handContext, playEvenly } from '../helpers/hand-context.js';
import { demoPart, hearTake } from '../helpers/heard-take.js';

/**
 * How much of its time a note sounds: (end − onset) ÷ (next onset − onset), by definition. Notes are a second apart, so
 * the share is the length in seconds.
 */
const plain = (count: number, more: Partial<PartNote> = {}): NoteSketch[] =>
  Array.from({ length: count }, () => ({ midi: 60, quarters: 1, ...more }));

/** Every way of playing the part room knows, four notes each, and a plain note at the end. */
const ALL_WAYS = smallPart([
  ...plain(4),
  ...plain(4, { articulations: ['tenuto'] }),
  ...plain(4, { articulations: ['staccato'] }),
  ...plain(4, { articulations: ['staccatissimo'] }),
  ...plain(4, { articulations: ['staccato', 'tenuto'] }),
  ...plain(4, { slurredToNext: true }),
  ...plain(4, { articulations: ['staccato'], slurredFromPrevious: true }),
  ...plain(1),
]);

/** Source: the order is that of the marks by common practice, the shares are the player's. */
const SHARES: Record<WayOfPlaying, number> = {
  staccatissimo: 0.2,
  staccato: 0.4,
  'slur-end-short': 0.5,
  'detached-legato': 0.7,
  tongued: 0.85,
  tenuto: 0.95,
  slurred: 1,
};
const BY_PLACE: readonly WayOfPlaying[] = [
  'tongued',
  'tenuto',
  'staccato',
  'staccatissimo',
  'detached-legato',
  'slurred',
  'slur-end-short',
];

type Change = (note: HandNote) => Partial<HandNote>;
const lasting = (share: (index: number) => number, more: Change = () => ({})): Change => {
  return (note) => ({ offset: note.onset + share(note.index), ...more(note) });
};

function articulations(part: typeof ALL_WAYS, change: Change, options: HandOptions = {}) {
  const notes = playEvenly(part).map((note) => ({ ...note, ...change(note) }));
  return measureTake(handContext(part, notes, options)).articulations;
}

describe('the sounded shares of the ways of playing', () => {
  const asMarked = lasting((index) => SHARES[BY_PLACE[Math.floor(index / 4)] ?? 'tongued']);

  it('are what was played, listed from the shortest as written to slurs', () => {
    const found = articulations(ALL_WAYS, asMarked);
    expect(found.map(({ way, count }) => [way, count])).toEqual(Object.keys(SHARES).map((way) => [way, 4]));
    for (const { way, soundedShare, middleHalf } of found) {
      for (const share of [soundedShare, ...middleHalf]) expect(share).toBeCloseTo(SHARES[way], 9);
    }
  });

  it('stand beside their middle half, and one note held on does not move them', () => {
    // Source: Hyndman & Fan 1996, definition 7: of five values the second and the fourth are the quartiles
    const part = smallPart([...plain(5, { articulations: ['staccato'] }), ...plain(1)]);
    const played = [0.5, 0.3, 0.9, 0.4, 0.35];
    const [found] = articulations(
      part,
      lasting((index) => played[index] ?? 0.9),
    );
    expect(found).toMatchObject({ way: 'staccato', count: 5 });
    expect(found!.soundedShare).toBeCloseTo(0.4, 9);
    expect(found!.middleHalf[0]).toBeCloseTo(0.35, 9);
    expect(found!.middleHalf[1]).toBeCloseTo(0.5, 9);
  });

  it('show dots that are held like any other note', () => {
    const found = articulations(
      ALL_WAYS,
      lasting(() => 0.85),
    );
    expect(found.find((a) => a.way === 'staccato')!.soundedShare).toBeCloseTo(0.85, 9);
  });

  // Source: common practice: dots or lines under a slur ask for notes softly set apart.
  it.each(['staccato', 'tenuto'] as const)('count a %s under a slur as detached legato, not as a slur', (mark) => {
    const part = smallPart([...plain(4, { articulations: [mark], slurredToNext: true }), ...plain(1)]);
    expect(articulations(part, () => ({})).map(({ way, count }) => [way, count])).toEqual([['detached-legato', 4]]);
  });

  it('leave out notes whose end nobody can tell from a rest, a breath or a fermata', () => {
    const part = smallPart([
      ...plain(1),
      ...plain(1, { fermata: true }),
      ...plain(1, { breathAfter: 'breath' }),
      ...plain(1, { breathAfter: 'caesura' }),
      ...plain(1),
      { midi: 60, quarters: 1, rest: 1 },
      { midi: 60, quarters: 1, heldRestBefore: true },
      ...plain(1),
    ]);
    // 0→1 and 6→7 are left; 4 is before a rest, 5 before a held rest, 7 is the last
    expect(articulations(part, () => ({})).map(({ way, count }) => [way, count])).toEqual([['tongued', 2]]);
  });

  it('leave out notes next to a wrong, a missing or an added one, and where the player began again', () => {
    const part = smallPart(plain(10));
    const count = (change: Change, options?: HandOptions) => articulations(part, change, options)[0]?.count;
    expect(count(() => ({}))).toBe(9);
    expect(count(({ index }) => (index === 4 ? { status: 'other-pitch', playedMidi: 62 } : {}))).toBe(7);
    expect(count(({ index }) => (index === 4 ? { status: 'left-out' } : {}))).toBe(7);
    const added = [{ onsetSeconds: 3.1, offsetSeconds: 3.3, midi: 70, afterIndex: 2 }];
    expect(count(() => ({}), { alignment: { added } })).toBe(8);
    const restarts = [{ stoppedAtIndex: 6, resumedAtIndex: 5, onsetSeconds: 5.5 }];
    expect(count(() => ({}), { alignment: { restarts } })).toBe(8);
  });

  it('never pass 1, though one note rings into the next', () => {
    const [found] = articulations(
      smallPart(plain(4)),
      lasting(() => 1.2),
    );
    expect([found!.soundedShare, ...found!.middleHalf]).toEqual([1, 1, 1]);
  });

  it('have no entry for a way that was not asked for or not heard', () => {
    expect(articulations(smallPart(plain(1)), () => ({}))).toEqual([]);
    expect(articulations(ALL_WAYS, () => ({ status: 'left-out' }))).toEqual([]);
    const silentDots = articulations(ALL_WAYS, ({ index }) => (index >= 8 && index < 12 ? { status: 'left-out' } : {}));
    expect(silentDots.map((a) => a.way)).not.toContain('staccato');
  });

  it('obey their laws: gain, a uniform stretch and another key change nothing', () => {
    const shares = fc.array(fc.double({ min: 0.1, max: 1, noNaN: true }), { minLength: 29, maxLength: 29 });
    const stretch = fc.double({ min: 0.5, max: 2, noNaN: true });
    fc.assert(
      fc.property(shares, stretch, fc.integer({ min: -12, max: 12 }), (played, slower, by) => {
        const before = articulations(
          ALL_WAYS,
          lasting((index) => played[index]!),
        );
        const after = articulations(
          ALL_WAYS,
          (note) => ({
            onset: note.onset * slower,
            offset: (note.onset + played[note.index]!) * slower,
            levelDb: note.levelDb + by,
          }),
          { offsetSemitones: by },
        );
        expect(after.map((a) => [a.way, a.count])).toEqual(before.map((a) => [a.way, a.count]));
        after.forEach((a, k) => {
          expect(a.soundedShare).toBeCloseTo(before[k]!.soundedShare, 9);
          expect(a.middleHalf[0]).toBeLessThanOrEqual(a.soundedShare);
          expect(a.middleHalf[1]).toBeGreaterThanOrEqual(a.soundedShare);
        });
      }),
      { numRuns: 30 },
    );
  });
});

describe('the sounded shares of performed takes', () => {
  const part = demoPart();
  const shares = (share: number): Map<WayOfPlaying, number> => {
    const heard = hearTake(part, { roomSeconds: 0.4, faults: [{ kind: 'staccato', share }] });
    return new Map(measureTake(heard).articulations.map((a) => [a.way, a.soundedShare]));
  };

  // Source: the shares the synthesiser was told to play.
  it('stand in their order, and dots that are held show', () => {
    const good = shares(0.4);
    expect(good.get('staccato')!).toBeLessThan(good.get('tongued')!);
    expect(good.get('tongued')!).toBeLessThan(good.get('slurred')!);
    expect(Math.abs(good.get('staccato')! - 0.4)).toBeLessThan(0.12);
    expect(good.get('slurred')!).toBeGreaterThan(0.95);
    const held = shares(0.8);
    expect(held.get('staccato')! - good.get('staccato')!).toBeGreaterThan(0.3);
    expect(Math.abs(held.get('slurred')! - good.get('slurred')!)).toBeLessThan(0.02);
  });
});
