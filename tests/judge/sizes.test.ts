import { expect, it } from 'vitest';
import type { Alignment } from '../../src/align/index.js';
import type { FindingKind } from '../../src/judge/index.js';
import { judgeArticulation } from '../../src/judge/judges/articulation.js';
import { judgeBreath } from '../../src/judge/judges/breath.js';
import { judgeContinuity } from '../../src/judge/judges/continuity.js';
import { judgeDynamics } from '../../src/judge/judges/dynamics.js';
import { judgeFermatas } from '../../src/judge/judges/fermatas.js';
import { judgeIntonation } from '../../src/judge/judges/intonation.js';
import { judgeMissingAndAdded } from '../../src/judge/judges/missing-and-added.js';
import { judgePitches } from '../../src/judge/judges/pitches.js';
import { judgeRhythm } from '../../src/judge/judges/rhythm.js';
import { judgeTempo } from '../../src/judge/judges/tempo.js';
import { type Measurements, measureTake, type TransitionMeasure } from '../../src/measure/index.js';
import { STANDARDS } from '../../src/standards/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';

/**
 * How much each finding matters, which puts those of one weight in order: typed here by hand, worked out where it grows with what
 * was measured. Source: working values; a jump before a stumble before a wrong sign before a wrong note before the rest.
 */
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PART = smallPart(
  QUARTERS.map((note, i) => ({
    ...note,
    ...(i === 8 ? { slurredToNext: true } : {}),
    ...(i === 9 ? { slurredFromPrevious: true } : {}),
    ...(i === 13
      ? { misreadings: [{ kind: 'key-signature-forgotten' as const, writtenMidi: 90, soundingMidi: 90 }] }
      : {}),
  })),
);
const PLACE = { bar: '3', pass: 1 };
const JUDGES = [
  ...[judgePitches, judgeMissingAndAdded, judgeContinuity, judgeDynamics, judgeFermatas, judgeRhythm],
  ...[judgeArticulation, judgeBreath, judgeIntonation, judgeTempo],
];

function sizeOf(
  kind: FindingKind,
  measured: Partial<Measurements>,
  alignment: Partial<Alignment> = {},
  aligned: Record<number, Partial<Alignment['notes'][number]>> = {},
): number[] {
  const context = handContext(PART, playEvenly(PART));
  const notes = context.alignment.notes.map((note) => ({ ...note, ...aligned[note.index] }));
  const input = {
    part: PART,
    alignment: { ...context.alignment, notes, ...alignment },
    measurements: { ...measureTake(context), ...measured },
    standards: STANDARDS,
  };
  return JUDGES.flatMap((judge) => judge(input)).flatMap((o) => (o.kind === kind ? [o.size] : []));
}

const tempo = (playedQuarterBpm: number, bars: readonly number[]): Partial<Measurements> => ({
  tempo: {
    ...{ markedQuarterBpm: 100, playedQuarterBpm },
    bars: bars.map((quarterBpm, i) => ({ bar: String(i + 1), pass: 1, startQuarters: 4 * i, quarterBpm })),
  },
});
function transition(index: number, change: Partial<TransitionMeasure>): Partial<Measurements> {
  const pace = { betweenOnsetsSeconds: 1, expectedSeconds: 1, secondsAQuarter: 1 };
  return {
    transitions: [{ index, toIndex: index + 1, ...pace, gapSeconds: 0, soundedShare: 0.4, dipDb: 30, ...change }],
  };
}
const hairpin = (riseDb: number, registerAdjustedRiseDb: number): Partial<Measurements> => ({
  hairpins: [
    {
      ...{ kind: 'crescendo', index: 4, toIndex: 11, bar: '2', toBar: '3', pass: 1, riseDb, errorDb: 0.1 },
      ...{ registerAdjustedRiseDb, slopeDbPerBar: 1, slopeDbPerSecond: 1 },
      course: { halfwayShare: 1, peakAt: 1, turnedBackDb: 0, steadiness: 1 },
    },
  ],
});
const strays = (...indexes: number[]): Partial<Measurements> => ({
  notes: PART.notes.map(({ index }) => {
    const cents = indexes.includes(index) ? 40 : 0;
    return { index, cents, centsFromOwnTuning: cents, levelDb: -24 };
  }),
});
const other = (index: number, playedMidi: number) => ({ [index]: { status: 'other-pitch' as const, playedMidi } });

type Measured = Partial<Measurements>;
type Row = readonly [
  FindingKind,
  number,
  Measured,
  Partial<Alignment>?,
  Record<number, Partial<Alignment['notes'][number]>>?,
];

const ROWS: readonly Row[] = [
  ['skipped-bars', 2.5, {}, { skips: [{ fromIndex: 8, toIndex: 11, onsetSeconds: 9 }] }],
  ['restart', 2, {}, { restarts: [{ stoppedAtIndex: 13, resumedAtIndex: 8, onsetSeconds: 16 }] }],
  ['accidental', 1.5, {}, {}, other(13, 90)],
  ['wrong-note', 1.2, {}, {}, other(12, 90)],
  ['missed-note', 1, {}, {}, { 12: { status: 'left-out' } }],
  ['added-note', 1, {}, { added: [{ onsetSeconds: 9.2, offsetSeconds: 9.5, midi: 90, afterIndex: 8 }] }],
  [
    'added-note',
    0.8,
    {
      rests: [
        {
          ...{ index: 8, toIndex: 9, ...PLACE, beat: 1, quarters: 1, seconds: 1 },
          ...{ state: 'played-into', onsetSeconds: 9.3, midi: 72 },
        },
      ],
    },
  ],
  // 1 + (3 − 1) / 4
  [
    'weak-contrast',
    1.5,
    { contrasts: [{ from: 'p', to: 'f', index: 8, ...PLACE, differenceDb: 1, registerAdjustedDb: 1 }] },
  ],
  ['weak-hairpin', 1.5, hairpin(1, 1)],
  ['weak-hairpin', 0.3, hairpin(7, 1)],
  ['weak-hairpin', 0.4, hairpin(7, 7)],
  // 4 / 3
  ['fermata-long', 4 / 3, { fermatas: [{ index: 5, ...PLACE, writtenSeconds: 1, heldSeconds: 4, ratio: 4 }] }],
  ['fermata-short', 0.8, { fermatas: [{ index: 5, ...PLACE, writtenSeconds: 1, heldSeconds: 1, ratio: 1 }] }],
  // 0.6 + 2 × 0.3
  ['late-entry', 1.2, { entries: [{ index: 8, ...PLACE, restQuarters: 1, lateSeconds: 0.3, secondsAQuarter: 1 }] }],
  // 0.5 + 4 × 0.2
  [
    'uneven-group',
    1.3,
    {
      groups: [
        {
          ...{ index: 4, toIndex: 6, ...PLACE, tuplet: true, seconds: 1.5 },
          ...{ shares: [0.45, 0.25, 0.3], written: [0.25, 0.25, 0.5] },
        },
      ],
    },
  ],
  ['slur-broken', 0.7, transition(8, { gapSeconds: 0.1 })],
  ['accent-weak', 0.5, { accents: [{ mark: 'accent', index: 8, ...PLACE, overDb: 0, spreadDb: 1 }] }],
  ['breath-unmarked', 1.3, transition(4, { gapSeconds: 0.6 })],
  ['hesitation', 1.5, transition(4, { gapSeconds: 2, betweenOnsetsSeconds: 2.5 })],
  ['tuning-off', 0.75, { tuning: { centsFromA440: -30, a4Hz: 432 } }],
  // 40 / 40, and a twentieth for each time
  ['note-out-of-tune', 1.05, strays(6)],
  ['off-tempo', 0.6, tempo(80, [])],
  ['rushing', 0.6, tempo(100, [100, 100, 112, 112, 112, 100])],
  ['rushing', 0.5, tempo(100, [95, 96.25, 97.5, 98.75, 100, 101.25, 102.5, 103.75, 105])],
];

for (const [kind, size, measurements, alignment, aligned] of ROWS) {
  it(`${kind} matters by ${size}`, () => {
    expect(sizeOf(kind, measurements, alignment, aligned)).toEqual([expect.closeTo(size, 6)]);
  });
}
