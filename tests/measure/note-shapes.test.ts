import { describe, expect, it } from 'vitest';
import { type MeasureContext, measureTake, type NoteShapeMeasure } from '../../src/measure/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';
import { hearTake } from '../helpers/heard-take.js';

/** Eight notes of a second each with a dot, eight without. */
const MIDI = [60, 64, 62, 67, 65, 69, 64, 60, 60, 64, 62, 67, 65, 69, 64, 60];
const NOTES: readonly NoteSketch[] = MIDI.map((midi, i) => ({
  midi,
  quarters: 1,
  articulations: i < 8 ? ['staccato'] : [],
}));
const PART = smallPart(NOTES);

function shapes(context: MeasureContext): readonly NoteShapeMeasure[] {
  const { noteShapes } = measureTake(context);
  if ('notMeasured' in noteShapes) throw new Error(noteShapes.notMeasured.code);
  return noteShapes;
}
const bySign = (context: MeasureContext) => new Map(shapes(context).map((shape) => [shape.sign, shape]));

/** Dotted notes half a second long. */
const played = () => playEvenly(PART).map((n) => (n.index < 8 ? { ...n, offset: n.onset + 0.5 } : n));

/** Gives every dotted note a level that moves with the seconds since its onset. */
function shaped(decibels: (seconds: number) => number): MeasureContext {
  const context = handContext(PART, played());
  const { features, alignment } = context;
  for (const { index, onsetSeconds = 0, offsetSeconds = 0 } of alignment.notes) {
    if (index >= 8) continue;
    const first = Math.round(onsetSeconds / features.levelHopSeconds);
    for (let f = first; f * features.levelHopSeconds < offsetSeconds; f++) {
      const db = decibels((f - first) * features.levelHopSeconds);
      features.power[f] = features.power[f]! * 10 ** (db / 10);
    }
  }
  return context;
}

describe('the shape of notes', () => {
  it('that begin and end at once has no rise and no decay', () => {
    const { staccato, none } = Object.fromEntries(bySign(shaped(() => 0)));
    expect([staccato?.count, none?.count]).toEqual([8, 8]);
    // a frame of 10 ms
    expect(staccato?.riseSeconds.middle).toBeLessThan(0.01);
    expect(staccato?.decayDb.middle).toBeCloseTo(0, 6);
    expect(staccato?.lengthSeconds.middle).toBeCloseTo(0.5, 6);
    expect(none?.lengthSeconds.middle).toBeCloseTo(0.9, 6);
  });

  it('rises as slowly as it is played', () => {
    // 400 dB a second up to the full level: from 15 to 3 dB below it in 30 ms
    const staccato = bySign(shaped((t) => Math.min(0, 400 * (t - 0.06)))).get('staccato')!;
    expect(Math.abs(staccato.riseSeconds.middle - 0.03)).toBeLessThan(0.004);
  });

  it('dies away as far as it is played', () => {
    // 24 dB a second: the middles of first and last third of half a second lie a third of a second apart
    const staccato = bySign(shaped((t) => -24 * t)).get('staccato')!;
    expect(Math.abs(staccato.decayDb.middle - 8)).toBeLessThan(0.3);
    expect(staccato.decayDb.interval[0]).toBeLessThanOrEqual(staccato.decayDb.middle);
  });

  it('counts an accent before a dot, and leaves out what is slurred or graced', () => {
    const part = smallPart(
      NOTES.map((note, i) => ({
        ...note,
        articulations: i < 8 ? ['staccato', 'accent'] : [],
        slurredFromPrevious: i === 12,
        slurredToNext: i === 11,
      })),
    );
    const found = shapes(handContext(part, playEvenly(part)));
    expect(found.map(({ sign, count }) => [sign, count])).toEqual([
      ['accent', 8],
      ['none', 6],
    ]);
  });

  it('is told of five notes or more', () => {
    const part = smallPart(NOTES.map((note, i) => ({ ...note, articulations: i < 4 ? ['tenuto'] : [] })));
    expect(shapes(handContext(part, playEvenly(part))).map(({ sign }) => sign)).toEqual(['none']);
  });

  it('is not told in a room that rings', () => {
    const wet = smallPart(NOTES.map((note, i) => ({ ...note, rest: i > 0 && i % 4 === 0 ? 1 : 0 })));
    const { noteShapes, recording } = measureTake(hearTake(wet, { roomSeconds: 1.8, signalToNoiseDb: 70 }));
    expect(recording.reverberationSeconds).toBeGreaterThan(0.9);
    expect(noteShapes).toEqual({ notMeasured: { code: 'room-rings', facts: {} } });
  });
});

describe('how far notes under one sign differ', () => {
  // Source: Rousseeuw & Croux 1993: 1.4826 times the median absolute deviation.
  it('is their robust standard deviation, with an interval', () => {
    // shares of 0.30, 0.32 … 0.44: deviations from 0.37 of 1, 3, 5 and 7 hundredths, twice each, whose median is 4
    const notes = playEvenly(PART).map((n) => (n.index < 8 ? { ...n, offset: n.onset + 0.3 + 0.02 * n.index } : n));
    const { articulations } = measureTake(handContext(PART, notes));
    const { spread, count } = articulations.find(({ way }) => way === 'staccato')!;
    expect(count).toBe(8);
    expect(spread!.share).toBeCloseTo(1.4826 * 0.04, 6);
    // 1.96 σ ÷ √(2 · 0.37 · 8)
    expect(spread!.interval[1] - spread!.share).toBeCloseTo((1.96 * 1.4826 * 0.04) / Math.sqrt(5.92), 6);
    expect(spread!.interval[0]).toBeGreaterThanOrEqual(0);
  });
});

describe('on takes of the synthesiser', () => {
  it.each(['clarinet', 'flute', 'brass'] as const)(
    'a %s plays short notes short, and uneven ones unevenly',
    (voice) => {
      const uneven = Array.from(
        { length: 8 },
        (_, at) => ({ kind: 'length', at, share: at % 2 === 0 ? 0.3 : 0.6 }) as const,
      );
      const measured = (faults: typeof uneven) => {
        const take = measureTake(hearTake(PART, { voice, faults, roomSeconds: 0.3 }));
        return take.articulations.find(({ way }) => way === 'staccato')!;
      };
      expect(Math.abs(measured([]).soundedShare - 0.42)).toBeLessThan(0.05);
      expect(measured([]).spread!.share).toBeLessThan(0.03);
      // two lengths, half of the notes each: the deviation of each from their middle is 0.15
      expect(Math.abs(measured(uneven).spread!.share - 1.4826 * 0.15)).toBeLessThan(0.04);
    },
  );

  it('tells accents with a space behind them from those that are held on', () => {
    const part = smallPart(NOTES.map((note, i) => ({ ...note, articulations: i % 2 === 1 ? ['accent'] : [] })));
    const faults = [1, 5, 9].map((at) => ({ kind: 'length', at, share: 0.45 }) as const);
    const { accents } = measureTake(hearTake(part, { faults, roomSeconds: 0.3 }));
    const short = accents.filter(({ soundedShare }) => soundedShare !== undefined && soundedShare <= 0.6);
    expect(short.map(({ index }) => index)).toEqual([1, 5, 9]);
    const long = accents.filter(({ soundedShare }) => soundedShare !== undefined && soundedShare >= 0.75);
    expect(long.map(({ index }) => index)).toEqual([3, 7, 11, 13]);
  });
});
