import { describe, expect, it } from 'vitest';
import { type MeasureContext, measureTake } from '../../src/measure/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';
import { hearTake } from '../helpers/heard-take.js';

/** Eight quarters of a second each, tongued. */
const QUARTERS: readonly NoteSketch[] = [60, 64, 62, 67, 65, 69, 64, 60].map((midi) => ({ midi, quarters: 1 }));
const PART = smallPart(QUARTERS);

const attacks = (context: MeasureContext) => measureTake(context).attacks;
const even = (part = PART): MeasureContext => handContext(part, playEvenly(part));

/** Moves the level of a note from some seconds after its onset on, up to some seconds. */
function lift(context: MeasureContext, index: number, from: number, to: number, db: number): void {
  const { features, alignment } = context;
  const onset = alignment.notes[index]!.onsetSeconds!;
  const [first, last] = [onset + from, onset + to].map((t) => Math.round(t / features.levelHopSeconds));
  for (let f = first!; f < last!; f++) features.power[f] = features.power[f]! * 10 ** (db / 10);
}

describe('attacks', () => {
  it('are no louder than notes that are held as they begin', () => {
    expect(attacks(even()).map(({ index }) => index)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    for (const { overDb } of attacks(even())) expect(overDb).toBeCloseTo(0, 3);
  });

  it('are over their note by what is put on them', () => {
    const context = even();
    lift(context, 3, 0, 0.08, 7);
    expect(attacks(context)[3]!.overDb).toBeCloseTo(7, 2);
  });

  it('are softer than a note that swells', () => {
    const context = even();
    lift(context, 3, 0.12, 0.9, 5);
    expect(attacks(context)[3]!.overDb).toBeCloseTo(-5, 2);
  });
});

describe('what is no attack', () => {
  it('is left out: slurred, short, with an accent, graced or not played', () => {
    const part = smallPart(
      QUARTERS.map((note, i) => ({
        ...note,
        slurredFromPrevious: i === 1,
        articulations: i === 2 ? ['accent'] : i === 3 ? ['staccato'] : [],
        quarters: i === 4 ? 0.3 : 1,
        ornament: i === 5 ? 'trill-mark' : null,
      })),
    );
    const notes = playEvenly(part).map((n) => (n.index === 6 ? { ...n, status: 'left-out' as const } : n));
    expect(attacks(handContext(part, notes)).map(({ index }) => index)).toEqual([0, 7]);
  });

  it('is left out under a mark for one note', () => {
    const events = [{ mark: 'sfz', bar: '1', pass: 1, atQuarters: 2, index: 2 }];
    const part = smallPart(QUARTERS, { dynamicEvents: events });
    expect(attacks(even(part)).map(({ index }) => index)).toEqual([0, 1, 3, 4, 5, 6, 7]);
  });

  it('is left out where the note before still sounds', () => {
    const notes = playEvenly(PART).map((note) => ({ ...note, roomAfterDb: -27 }));
    expect(attacks(handContext(PART, notes)).map(({ index }) => index)).toEqual([0]);
  });

  it('is left out where the note comes to no level', () => {
    const context = even();
    lift(context, 3, 0.35, 0.9, -9);
    expect(attacks(context).map(({ index }) => index)).not.toContain(3);
  });
});

describe('on takes of the synthesiser', () => {
  /** By hand: the loudest moment of 14 dB that fade by a factor e in 60 ms under attacks of 20, 40 and 28 ms. */
  const truth = { clarinet: 10, flute: 7.2, brass: 8.8 } as const;

  it.each(['clarinet', 'flute', 'brass'] as const)('a %s that hits a note is heard to', (voice) => {
    const heard = attacks(hearTake(PART, { voice, faults: [{ kind: 'hit', at: 4, db: 14 }], roomSeconds: 0.3 }));
    const over = heard.find(({ index }) => index === 4)!.overDb;
    expect(over).toBeGreaterThan(truth[voice] - 2.5);
    expect(over).toBeLessThan(truth[voice] + 1);
    expect(Math.max(...heard.filter(({ index }) => index !== 4).map(({ overDb }) => overDb))).toBeLessThan(2);
  });
});
