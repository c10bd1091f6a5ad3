import { describe, expect, it } from 'vitest';
import { CANDIDATES } from '../../src/features/index.js';
import { type MeasureContext, measureTake } from '../../src/measure/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';
import { hearTake } from '../helpers/heard-take.js';

/** Eight quarters of a second each, tongued: a tenth of a second of silence lies between them. */
const QUARTERS: readonly NoteSketch[] = [60, 64, 62, 67, 65, 69, 64, 60].map((midi) => ({ midi, quarters: 1 }));
const PART = smallPart(QUARTERS);

const even = (): MeasureContext => handContext(PART, playEvenly(PART));
const starts = (context: MeasureContext) => measureTake(context).starts;
const startOf = (context: MeasureContext, index: number) => starts(context).find((start) => start.index === index)!;

/** Puts another pitch, or none, in the first frames of a note. */
function begin(context: MeasureContext, index: number, seconds: number, semitones: number | null): void {
  const { features, alignment } = context;
  const from = alignment.notes[index]!.onsetSeconds!;
  for (let f = Math.ceil(from / features.pitchHopSeconds); f * features.pitchHopSeconds < from + seconds; f++) {
    const at = f * CANDIDATES;
    if (semitones === null) features.candidateClarity[at] = 0.2;
    else features.candidateMidi[at] = features.candidateMidi[at]! + semitones;
  }
}

describe('notes that begin at once', () => {
  it('are at pitch and level within two frames, and do not crack', () => {
    const all = starts(even());
    expect(all.map(({ index }) => index)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    for (const start of all) {
      expect(Math.abs(start.pitchSeconds)).toBeLessThan(0.012);
      expect(Math.abs(start.levelSeconds)).toBeLessThan(0.012);
      expect(start.crack).toBeUndefined();
    }
  });
});

describe('a known fault', () => {
  it('of pitch takes so long', () => {
    const context = even();
    begin(context, 3, 0.12, null);
    expect(Math.abs(startOf(context, 3).pitchSeconds - 0.12)).toBeLessThan(0.012);
    expect(startOf(context, 3).crack).toBeUndefined();
  });

  it('of level takes so long', () => {
    const context = even();
    const { features, alignment } = context;
    const from = Math.round(alignment.notes[3]!.onsetSeconds! / features.levelHopSeconds);
    // 20 dB below for 0.1 s
    for (let f = from; f < from + 50; f++) features.power[f] = features.power[f]! / 100;
    expect(Math.abs(startOf(context, 3).levelSeconds - 0.1)).toBeLessThan(0.012);
  });

  it('is a crack at another pitch, for so long', () => {
    const context = even();
    begin(context, 3, 0.08, 7);
    const { crack } = startOf(context, 3);
    expect(crack?.semitones).toBeCloseTo(7, 3);
    expect(Math.abs(crack!.seconds - 0.08)).toBeLessThan(0.011);
  });

  it('is none an octave below, which is in every tone', () => {
    const context = even();
    begin(context, 3, 0.08, -12);
    expect(startOf(context, 3)?.crack).toBeUndefined();
  });
});

describe('what cannot be told', () => {
  it('is left out where the sound before has not died away', () => {
    const notes = playEvenly(PART).map((note) => ({ ...note, roomAfterDb: -34 }));
    // 10 dB below the note: only the first begins out of silence
    expect(starts(handContext(PART, notes)).map(({ index }) => index)).toEqual([0]);
  });

  it('is left out under a slur, for short notes, and for notes that were not played', () => {
    const part = smallPart(
      QUARTERS.map((note, i) => ({ ...note, slurredFromPrevious: i === 2, quarters: i === 4 ? 0.2 : 1 })),
    );
    const notes = playEvenly(part).map((n) => (n.index === 6 ? { ...n, status: 'left-out' as const } : n));
    expect(starts(handContext(part, notes)).map(({ index }) => index)).toEqual([0, 1, 3, 5, 7]);
  });
});

describe('on takes of the synthesiser', () => {
  const faults = [
    { kind: 'speaks-late', at: 2, seconds: 0.12 },
    { kind: 'crack', at: 5, semitones: -5, seconds: 0.09 },
  ] as const;

  it.each(['clarinet', 'flute', 'brass'] as const)('a %s speaks late on one note and cracks on another', (voice) => {
    const heard = measureTake(hearTake(PART, { voice, faults, roomSeconds: 0.3 })).starts;
    const late = heard.find(({ index }) => index === 2)!;
    expect(late.pitchSeconds).toBeGreaterThan(0.09);
    expect(late.pitchSeconds).toBeLessThan(0.15);
    const { crack } = heard.find(({ index }) => index === 5)!;
    expect(Math.abs(crack!.semitones + 5)).toBeLessThan(0.2);
    expect(Math.abs(crack!.seconds - 0.09)).toBeLessThan(0.025);
    const others = heard.filter(({ index }) => index !== 2 && index !== 5);
    expect(others.filter(({ crack: other }) => other !== undefined)).toEqual([]);
    expect(Math.max(...others.map(({ pitchSeconds }) => pitchSeconds))).toBeLessThan(0.05);
  });
});
