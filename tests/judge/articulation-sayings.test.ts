import { describe, expect, it } from 'vitest';
import type { AccentMeasure, ArticulationMeasure, Measurements } from '../../src/measure/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { judged } from '../helpers/judged.js';

/** Twelve dotted quarters. */
const NOTES: readonly NoteSketch[] = Array.from({ length: 12 }, (_, i) => ({
  midi: 60 + (i % 5),
  quarters: 1,
  articulations: ['staccato'],
}));
const PART = smallPart(NOTES);

const line = (measurements: Partial<Measurements>): string =>
  judged(PART, { measurements }).criteria.find(({ criterion }) => criterion === 'articulation')!.summary;

const dotted = (count: number, middleHalf: readonly [number, number]): ArticulationMeasure[] => [
  { way: 'staccato', count, soundedShare: 0.4, middleHalf },
];
const accents = (shares: readonly (number | undefined)[]): AccentMeasure[] =>
  shares.map((soundedShare, index) => ({
    ...{ mark: 'accent', index, bar: '1', pass: 1, overDb: 4, spreadDb: 1 },
    ...(soundedShare === undefined ? {} : { soundedShare }),
  }));

describe('how alike dotted notes are', () => {
  it('is told as the half of them, from six notes on', () => {
    const half = 'half of them for 34 to 47 percent';
    expect(line({ articulations: dotted(6, [0.34, 0.47]), accents: [] })).toContain(half);
    expect(line({ articulations: dotted(5, [0.34, 0.47]), accents: [] })).not.toContain('half of them');
  });

  it('is told in words where they hardly differ', () => {
    expect(line({ articulations: dotted(8, [0.398, 0.402]), accents: [] })).toContain('nearly all alike');
  });
});

describe('the two kinds of accent', () => {
  // the standards: up to 60 percent of the time there is a space behind, from 75 on there is none
  it('are counted, from three accents on whose length is known', () => {
    expect(line({ accents: accents([0.59, 0.61, 0.74, 0.76, undefined]) })).toContain(
      'of 4 accents 1 is short, with a space behind, and 1 held on',
    );
    expect(line({ accents: accents([0.8, 0.8, 0.9]) })).toContain('accents are held on');
    expect(line({ accents: accents([0.5, 0.5, 0.6]) })).toContain('accents are short, with a space behind');
    expect(line({ accents: accents([0.5, 0.5, undefined]) })).not.toContain('accents');
  });

  it('are not told in a room that rings', () => {
    const recording = {
      ...{ peakDbfs: -6, clippedShare: 0, signalToNoiseDb: 40, reverberationSeconds: 0.9, levelRiding: false },
      ...{ breaksOff: false, onsetSpreadSeconds: 0, endsInSound: false, cautions: [] },
    };
    const measurements = { accents: accents([0.5, 0.5, 0.5]), articulations: dotted(8, [0.3, 0.4]) };
    expect(line({ ...measurements, recording })).not.toContain('accents');
  });
});
