import { describe, expect, it } from 'vitest';
import { notMeasured } from '../../src/base/index.js';
import { type Brief, defaultBrief } from '../../src/brief/index.js';
import { type FindingKind, judgeTake, standardsFor } from '../../src/judge/index.js';
import { observe } from '../../src/judge/observe.js';
import type { Observation } from '../../src/judge/observed/observation.js';
import { surelyOutOfTune } from '../../src/judge/surely-out-of-tune.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { judged, judgeInput, ofKind } from '../helpers/judged.js';

/**
 * Which finding comes first, which notes a second ear is asked about, and what a brief changes at one place.
 *
 * Source: definition; a handful of things to fix helps, more does not.
 */
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PART = smallPart(QUARTERS);
const PLACE = { bar: '3', pass: 1 };
const observed = (kind: FindingKind, more: object): Observation =>
  ({ kind, criterion: 'rhythm', weight: 'watch', size: 1, bar: '1', pass: 1, ...more }) as unknown as Observation;

describe('the order', () => {
  const slip = (index: number) => {
    return { status: 'other-pitch', playedMidi: PART.notes[index]!.soundingMidi + 3 } as const;
  };

  it('is fixes, watches, praise, and the larger first, then the earlier', () => {
    const entry = (index: number, lateSeconds: number) => {
      return { index, ...PLACE, restQuarters: 1, lateSeconds, secondsAQuarter: 1 };
    };
    const aligned = { 12: slip(12), 3: slip(3) };
    const { findings } = judgeTake(
      judgeInput(PART, { aligned, measurements: { entries: [entry(20, 0.1)], fermatas: [] } }),
    );
    expect(findings.map(({ kind, weight, index }) => [weight, kind, index]).slice(0, 3)).toEqual([
      ['fix', 'wrong-note', 3],
      ['fix', 'wrong-note', 12],
      ['watch', 'late-entry', 20],
    ]);
    expect(findings.slice(3).every(({ weight }) => weight === 'well')).toBe(true);
    expect(findings.length).toBeGreaterThan(3);
  });

  it('keeps seven fixes; the eighth is to be watched, and keeps what it would weigh', () => {
    const wrong = (count: number) => {
      return Object.fromEntries(Array.from({ length: count }, (_, k) => [2 * k, slip(2 * k)]));
    };
    const weights = (count: number) =>
      judgeTake(judgeInput(PART, { aligned: wrong(count) }))
        .findings.filter(({ kind }) => kind === 'wrong-note')
        .map(({ weight, ownWeight }) => [weight, ownWeight]);
    expect(weights(7)).toEqual(Array.from({ length: 7 }, () => ['fix', undefined]));
    expect(weights(8).at(-1)).toEqual(['watch', 'fix']);
    expect(weights(8).slice(0, 7)).toEqual(weights(7));
  });
});

describe('notes worth a second ear', () => {
  const notes = PART.notes.map(({ index }) => {
    const cents = index === 6 ? 60 : index === 7 ? 30 : 0;
    return { index, cents, centsFromOwnTuning: cents, levelDb: -24 };
  });

  it('are those that are surely out of tune', () => {
    expect(surelyOutOfTune(judgeInput(PART, { measurements: { notes } }))).toEqual([6]);
    expect(surelyOutOfTune(judgeInput(PART, { measurements: { notes }, aligned: { 6: { confidence: 0.7 } } }))).toEqual(
      [],
    );
    expect(surelyOutOfTune(judgeInput(PART, { measurements: { notes }, alignment: { fit: 'other' } }))).toEqual([]);
  });

  it('are none where a brief leaves tuning out, and fewer where it asks for less', () => {
    const usual = defaultBrief(PART);
    const off = { ...usual, criteria: { ...usual.criteria, intonation: { judged: false, points: 0 } } };
    expect(surelyOutOfTune(judgeInput(PART, { measurements: { notes }, brief: off }))).toEqual([]);
    const mild = { ...usual, intonation: { watchCents: 50, fixCents: 70 } };
    expect(surelyOutOfTune(judgeInput(PART, { measurements: { notes }, brief: mild }))).toEqual([]);
    expect(surelyOutOfTune(judgeInput(PART, { measurements: { notes }, brief: usual }))).toEqual([6]);
  });

  it('are no fix where the second ear is further off than the standard is wide', () => {
    const second = (secondEarCents: number | ReturnType<typeof notMeasured>) => {
      const heard = notes.map((n) => (n.index === 6 ? { ...n, secondEarCents } : n));
      const [found] = ofKind(judged(PART, { measurements: { notes: heard } }), 'note-out-of-tune');
      return [found!.weight, (found!.facts as { secondCents?: number }).secondCents];
    };
    // 25 cents wide: 60 − 25 = 35 agrees, 34 does not; from the player's own tuning it is the same here
    expect([second(35), second(34), second(85), second(86)]).toEqual([
      ['fix', undefined],
      ['watch', 34],
      ['fix', undefined],
      ['watch', 86],
    ]);
    expect(second(notMeasured('note-unsteady'))).toEqual(['fix', undefined]);
  });
});

describe('what is asked for by a brief', () => {
  const usual = defaultBrief(PART);
  const tempoWatch = (tempo: Brief['tempo']) => standardsFor({ ...usual, tempo }).tempoWatch.value;

  it('of the tempo counts with its narrower side', () => {
    const range = (lowestQuarterBpm: number, highestQuarterBpm: number) => {
      return { quarterBpm: 100, lowestQuarterBpm, highestQuarterBpm };
    };
    expect(tempoWatch(range(80, 110))).toBeCloseTo(0.1, 9);
    expect(tempoWatch(range(95, 120))).toBeCloseTo(0.05, 9);
    expect(tempoWatch(null)).toBe(0.1);
  });

  it('leaves everything else as the house has it', () => {
    const brief = { ...usual, tempo: { quarterBpm: 100, lowestQuarterBpm: 90, highestQuarterBpm: 104 } };
    const offTempo = (played: number) => observed('off-tempo', { criterion: 'tempo', facts: { played, marked: 100 } });
    const seen = (...all: readonly Observation[]) => observe(() => [...all], judgeInput(PART, { brief })).length;
    expect([89.9, 90, 104, 104.1].map((played) => seen(offTempo(played)))).toEqual([1, 0, 0, 1]);
    expect(seen(observed('rushing', { criterion: 'tempo', facts: { percent: 12 } }))).toBe(1);
  });

  it('of a contrast in a bar is no matter of others there', () => {
    const brief = { ...usual, contrast: { leastDb: 3, places: [{ bar: '3', leastDb: 9 }] } };
    const least: number[] = [];
    const judge = ({ standards }: ReturnType<typeof judgeInput>) => {
      least.push(standards.contrastLeast.value);
      const facts = { from: 'p', to: 'f', db: 1, least: standards.contrastLeast.value };
      return [
        observed('weak-contrast', { criterion: 'dynamics', bar: '3', facts }),
        observed('weak-contrast', { criterion: 'dynamics', bar: '4', facts }),
        observed('weak-hairpin', { criterion: 'dynamics', bar: '3', facts }),
        observed('went-well', {
          criterion: 'dynamics',
          bar: '3',
          facts: { about: { what: 'contrast', from: 'p', to: 'f' } },
        }),
        observed('went-well', { criterion: 'dynamics', bar: '3', facts: { about: { what: 'hairpin' } } }),
      ];
    };
    const told = observe(judge, judgeInput(PART, { brief })).map(({ kind, bar, facts }) => {
      const { least: asked, about } = facts as { least?: number; about?: { what: string } };
      return `${kind} ${bar} ${asked ?? about?.what}`;
    });
    expect(least).toEqual([3, 9]);
    expect(told).toEqual([
      'weak-contrast 4 3',
      'weak-hairpin 3 3',
      'went-well 3 hairpin',
      'weak-contrast 3 9',
      'went-well 3 contrast',
    ]);
  });
});
