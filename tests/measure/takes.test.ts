import { describe, expect, it } from 'vitest';
import type { TakePlan, VoiceName } from '../../src/demo/index.js';
import { listen } from '../../src/features/index.js';
import { type Measurements, measureTake, type TempoMeasure } from '../../src/measure/index.js';
import { demoPart, type HeardTake, hearTake, middle, shareWithin } from '../helpers/heard-take.js';

/**
 * Performed takes: what the synthesiser was told to play against what is measured at the end of the whole chain. A dry
 * room, so that the levels of the truth are those of the recording.
 */
const PART = demoPart();
const DRY: Partial<TakePlan> = { roomSeconds: 0 };

function play(plan: Partial<TakePlan>): { heard: HeardTake; measured: Measurements } {
  const heard = hearTake(PART, { ...DRY, ...plan });
  return { heard, measured: measureTake(heard) };
}

const number = (value: unknown): number => {
  expect(value).toBeTypeOf('number');
  return value as number;
};

/** Median of the levels that the notes of a stretch really had, each in the middle of its length. */
const trueLevel = ({ meant }: HeardTake, index: number, toIndex: number): number =>
  middle([...meant].flatMap(([i, note]) => (i >= index && i <= toIndex ? [(note.startDb + note.endDb) / 2] : [])));

describe.each<VoiceName>(['clarinet', 'flute', 'brass'])('a take of the étude, %s', (voice) => {
  const { heard, measured } = play({ voice, tuningCents: 14 });

  it('has the pitch of each note within two cents, most of them', () => {
    const errors = measured.notes.flatMap(({ index, cents }) =>
      typeof cents === 'number' ? [Math.abs(cents - heard.meant.get(index)!.cents)] : [],
    );
    expect(errors.length).toBeGreaterThan(0.97 * PART.notes.length);
    expect(middle(errors)).toBeLessThan(2);
    expect(shareWithin(errors, 5)).toBeGreaterThan(0.95);
  });

  it('has the level of each note within one decibel, most of them', () => {
    const errors = measured.notes.map(({ index, levelDb }) => {
      const { startDb, endDb } = heard.meant.get(index)!;
      return Math.abs(number(levelDb) - (startDb + endDb) / 2);
    });
    expect(middle(errors)).toBeLessThan(0.5);
    expect(shareWithin(errors, 1)).toBeGreaterThan(0.9);
  });

  it('has the player’s tuning', () => {
    expect(Math.abs((measured.tuning as { centsFromA440: number }).centsFromA440 - 14)).toBeLessThan(2);
  });

  it('has the tempo that is marked, within one percent', () => {
    const { markedQuarterBpm, playedQuarterBpm } = measured.tempo as TempoMeasure;
    // Source: the étude's metronome mark, quarter = 92
    expect(markedQuarterBpm).toBe(92);
    expect(Math.abs(playedQuarterBpm / 92 - 1)).toBeLessThan(0.01);
  });

  it('has the contrasts and hairpins that were played', () => {
    expect(measured.contrasts.length).toBeGreaterThan(4);
    for (const contrast of measured.contrasts) {
      const k = PART.dynamics.findIndex((mark) => mark.index === contrast.index);
      const [from, to] = [PART.dynamics[k - 1]!, PART.dynamics[k]!];
      const truth = trueLevel(heard, to.index, to.toIndex) - trueLevel(heard, from.index, from.toIndex);
      expect(Math.abs(number(contrast.differenceDb) - truth)).toBeLessThan(1);
    }
    const [rising] = measured.hairpins;
    expect(rising!.kind).toBe('crescendo');
    // from p to f: 11 dB by the demo's scale of marks, less the last note's way to the mark and its register
    expect(number(rising!.registerAdjustedRiseDb)).toBeGreaterThan(6);
  });

  it('has the fermatas as they were held', () => {
    expect(measured.fermatas).toHaveLength(2);
    for (const { index, ratio } of measured.fermatas) {
      const { onsetSeconds, offsetSeconds } = heard.meant.get(index)!;
      const written = (PART.notes[index]!.durationQuarters * 60) / 92;
      expect(Math.abs(number(ratio) / ((offsetSeconds - onsetSeconds) / written) - 1)).toBeLessThan(0.05);
    }
  });

  it('is well recorded', () => {
    expect(measured.recording).toMatchObject({ clippedShare: 0, levelRiding: false, cautions: [] });
    // by the demo's definition mezzo-forte is at −24 dBFS and 48 dB over the background
    const overNoise = trueLevel(heard, 0, PART.notes.length) - (-24 - 48);
    expect(Math.abs(number(measured.recording.signalToNoiseDb) - overNoise)).toBeLessThan(1.5);
  });
});

describe('known errors', () => {
  it('a fermata held far too long', () => {
    const { measured } = play({ faults: [{ kind: 'fermata', at: { bar: '15', beat: 3 }, ratio: 3.6 }] });
    // the sounding part of the hold is 0.96 to 0.98 of it
    expect(Math.abs(number(measured.fermatas[0]!.ratio) / (0.97 * 3.6) - 1)).toBeLessThan(0.05);
  });

  it('hardly any contrast', () => {
    const [full, little] = [1, 0.1].map((contrast) => play({ contrast, levelScatterDb: 0 }).measured);
    full!.contrasts.forEach((contrast, k) => {
      const register = number(contrast.differenceDb) - number(contrast.registerAdjustedDb);
      const flat = number(little!.contrasts[k]!.differenceDb);
      // what is left is the register and a tenth of the player's contrast
      expect(Math.abs(flat)).toBeLessThan(Math.abs(register) + 3);
      expect(Math.abs(flat)).toBeLessThan(Math.abs(number(contrast.differenceDb)));
    });
  });

  it('a crescendo that hardly rises', () => {
    const [full, flat] = [1, 0.1].map((share) => play({ faults: [{ kind: 'hairpin', number: 0, share }] }).measured);
    const fall = number(full!.hairpins[0]!.riseDb) - number(flat!.hairpins[0]!.riseDb);
    // nine tenths of the way from p to f, 11 dB in 8 quarters, between the first and the last of the notes under it
    const { startQuarters, endQuarters, index, toIndex } = PART.hairpins[0]!;
    const way = (PART.notes[toIndex]!.onsetQuarters - PART.notes[index]!.onsetQuarters) / (endQuarters - startQuarters);
    expect(Math.abs(fall - 0.9 * 11 * way)).toBeLessThan(1.5);
  });

  it('another tempo, and one that drifts', () => {
    const slow = play({ tempoFactor: 0.8 }).measured.tempo as TempoMeasure;
    expect(Math.abs(slow.playedQuarterBpm / (0.8 * 92) - 1)).toBeLessThan(0.01);
    const { bars } = play({ tempoDrift: 1.2 }).measured.tempo as TempoMeasure;
    expect(bars.at(-1)!.quarterBpm / bars[0]!.quarterBpm).toBeGreaterThan(1.1);
  });

  it('one note sharp and another always flat', () => {
    const at = { bar: '8', beat: 1 };
    const { heard, measured } = play({
      faults: [
        { kind: 'out-of-tune', at, cents: 40 },
        { kind: 'pitch-tendency', writtenMidi: 74, cents: -30 },
      ],
    });
    for (const note of PART.notes.filter((n) => n.writtenMidi === 74 || (n.bar === '8' && n.beat === 1))) {
      const { cents } = measured.notes[note.index]!;
      expect(Math.abs(number(cents) - heard.meant.get(note.index)!.cents)).toBeLessThan(6);
    }
  });

  it('a recorder set too loud', () => {
    const heard = hearTake(PART, DRY);
    const samples = heard.take.samples.subarray().map((x) => Math.max(-1, Math.min(1, 12 * x)));
    const take = { ...heard.take, samples };
    const { peak } = listen(take);
    const { recording } = measureTake({ ...heard, take, features: { ...heard.features, peak } });
    expect(recording.peakDbfs).toBeCloseTo(0, 6);
    expect(recording.clippedShare).toBeGreaterThan(0.001);
    expect(recording.cautions).toContainEqual({ code: 'clips', facts: {} });
  });
});
