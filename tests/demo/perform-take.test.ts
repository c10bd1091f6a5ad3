import { describe, expect, it } from 'vitest';
import { performTake, type TakePlan, type VoiceName } from '../../src/demo/index.js';
import { centsFrom, component, firstAbove, lowestDb, rmsDb } from './measure-sound.js';
import { crescendo, dynamic, smallPart } from './small-part.js';

/** A machine-like player in a dead room: nothing is left to chance but the slow unsteadiness of the tone. */
const STEADY: TakePlan = {
  seed: 7,
  voice: 'clarinet',
  sampleRateHz: 22050,
  timingScatterSeconds: 0,
  tuningScatterCents: 0,
  levelScatterDb: 0,
  roomSeconds: 0,
  signalToNoiseDb: 80,
  leadInSeconds: 0.5,
};
const RATE = 22050;

// Source: MIDI tuning (note 69 = 440 Hz, ISO 16; 57 = 220 Hz, 81 = 880 Hz, 60 = 261.626 Hz in equal temperament).
const PITCHES: [VoiceName, number, number][] = [
  ['clarinet', 57, 220],
  ['clarinet', 69, 440],
  ['clarinet', 81, 880],
  ['flute', 81, 880],
  ['brass', 57, 220],
  ['brass', 60, 261.626],
];

describe('pitch', () => {
  it.each(PITCHES)('%s plays %i at %d Hz', (voice, midi, hz) => {
    const { samples } = performTake(smallPart([{ midi, quarters: 1 }]), { ...STEADY, voice });
    expect(Math.abs(centsFrom(samples, RATE, 0.75, hz))).toBeLessThan(4);
  });

  it('tuning, tendency, fault and transposition move it by what they say', () => {
    const part = smallPart([
      { midi: 69, quarters: 1 },
      { midi: 69, quarters: 1 },
      { midi: 57, quarters: 1 },
    ]);
    const plan: TakePlan = {
      ...STEADY,
      tuningCents: 20,
      transposeSemitones: 12,
      faults: [
        { kind: 'out-of-tune', at: 1, cents: 30 },
        { kind: 'pitch-tendency', writtenMidi: 57, cents: -45 },
      ],
    };
    const { samples } = performTake(part, plan);
    // one component is measured where the sum of all deviations says it must be
    const shifted = (hz: number, cents: number): number => hz * 2 ** (cents / 1200);
    expect(Math.abs(centsFrom(samples, RATE, 0.75, shifted(880, 20)))).toBeLessThan(4);
    expect(Math.abs(centsFrom(samples, RATE, 1.75, shifted(880, 50)))).toBeLessThan(4);
    expect(Math.abs(centsFrom(samples, RATE, 2.75, shifted(440, -25)))).toBeLessThan(4);
  });

  it('vibrato swings by the depth it says', () => {
    const vibrato = { rateHz: 5, depthCents: 30 };
    const { samples } = performTake(smallPart([{ midi: 69, quarters: 4 }]), { ...STEADY, vibrato });
    const course = Array.from({ length: 150 }, (_, i) => centsFrom(samples, RATE, 1.5 + i / 100, 440));
    const swing = (Math.max(...course) - Math.min(...course)) / 2;
    // the 115 ms that one estimate spans flatten a swing of 200 ms, so less than 30 and well over the steady tone
    expect(swing).toBeGreaterThan(8);
    expect(swing).toBeLessThan(31);
  });
});

describe('spectrum', () => {
  const amplitudes = (voice: VoiceName, midi: number, gainMark: string): number[] => {
    const part = smallPart([{ midi, quarters: 2 }], { dynamics: [dynamic(gainMark, 0, 0, 0)] });
    const { samples } = performTake(part, { ...STEADY, voice });
    const hz = 440 * 2 ** ((midi - 69) / 12);
    return [1, 2, 3, 4, 5].map((k) => component(samples, RATE, 1, 0.5, k * hz).amplitude);
  };

  // Source: a cylindrical tube closed at one end resonates at odd multiples (acoustics textbooks; common knowledge).
  it('a low clarinet note has odd harmonics over even ones', () => {
    const [, second, third, fourth, fifth] = amplitudes('clarinet', 53, 'mf');
    expect(third! / second!).toBeGreaterThan(3);
    expect(fifth! / fourth!).toBeGreaterThan(3);
  });

  // Source: Fletcher & Rossing, The Physics of Musical Instruments: wind tones brighten with level (from memory).
  it.each(['clarinet', 'flute', 'brass'] as const)('%s is brighter when louder', (voice) => {
    const [softFirst, , , , softFifth] = amplitudes(voice, 65, 'pp');
    const [loudFirst, , , , loudFifth] = amplitudes(voice, 65, 'ff');
    expect(loudFifth! / loudFirst!).toBeGreaterThan((1.4 * softFifth!) / softFirst!);
  });
});

describe('level', () => {
  it('the held part of a note has the RMS its truth says', () => {
    for (const voice of ['clarinet', 'flute', 'brass'] as const) {
      const { samples, truth } = performTake(smallPart([{ midi: 64, quarters: 2 }]), { ...STEADY, voice, gainDb: -6 });
      expect(Math.abs(rmsDb(samples, RATE, 0.8, 2) - truth[0]!.startDb)).toBeLessThan(0.6);
    }
  });

  const marked = smallPart(
    Array.from({ length: 8 }, () => ({ midi: 64, quarters: 1 })),
    { dynamics: [dynamic('p', 0, 0, 3), dynamic('f', 4, 4, 7)] },
  );
  const contrastOf = (plan: TakePlan): number => {
    const { samples } = performTake(marked, plan);
    return rmsDb(samples, RATE, 4.7, 5.3) - rmsDb(samples, RATE, 0.7, 1.3);
  };

  it('p and f differ by what the plan says, and not at all when it asks for no contrast', () => {
    const full = contrastOf(STEADY);
    expect(full).toBeGreaterThan(9);
    expect(Math.abs(contrastOf({ ...STEADY, contrast: 0.5 }) - full / 2)).toBeLessThan(0.8);
    expect(Math.abs(contrastOf({ ...STEADY, contrast: 0 }))).toBeLessThan(0.8);
  });

  it('a crescendo rises in a straight line to its mark, less when it is played weakly', () => {
    const part = smallPart(
      Array.from({ length: 9 }, () => ({ midi: 64, quarters: 1 })),
      { dynamics: [dynamic('p', 0, 0, 3), dynamic('f', 8, 8, 8)], hairpins: [crescendo(4, 8, 4, 7)] },
    );
    const course = (plan: TakePlan): number[] => {
      const { samples } = performTake(part, plan);
      return [0, 4, 6, 8].map((beat) => rmsDb(samples, RATE, 0.7 + beat, 1.2 + beat));
    };
    const [soft, begin, middle, loud] = course(STEADY) as [number, number, number, number];
    const rise = loud - soft;
    // half a second in the middle of a note lies 0.45 quarters after its onset
    expect(Math.abs(begin - soft - (0.45 / 4) * rise)).toBeLessThan(0.8);
    expect(Math.abs(middle - soft - (2.45 / 4) * rise)).toBeLessThan(0.8);
    const weak = course({ ...STEADY, faults: [{ kind: 'hairpin', number: 0, share: 0.2 }] });
    expect(Math.abs(weak[2]! - soft - 0.2 * (2.45 / 4) * rise)).toBeLessThan(0.8);
    expect(Math.abs(weak[3]! - loud)).toBeLessThan(0.8);
  });

  it('an accented note is louder by the accent', () => {
    const part = smallPart([
      { midi: 64, quarters: 1 },
      { midi: 64, quarters: 1, articulations: ['accent'] },
    ]);
    const { samples } = performTake(part, { ...STEADY, accentDb: 5 });
    const held = rmsDb(samples, RATE, 1.9, 2.3) - rmsDb(samples, RATE, 0.9, 1.3);
    const attack = rmsDb(samples, RATE, 1.52, 1.56) - rmsDb(samples, RATE, 0.52, 0.56);
    expect(Math.abs(held - 5)).toBeLessThan(0.8);
    expect(attack).toBeGreaterThan(held + 0.8);
  });
});

describe('time', () => {
  it('sound begins at the onset: nothing 5 ms before it, and half its level within 25 ms', () => {
    const part = smallPart([
      { midi: 64, quarters: 1 },
      { midi: 67, quarters: 1, rest: 1 },
    ]);
    const { samples, truth } = performTake(part, STEADY);
    for (const [i, onset] of [0.5, 2.5].entries()) {
      const note = truth[i]!;
      expect(note.onsetSeconds).toBeCloseTo(onset, 6);
      expect(rmsDb(samples, RATE, onset - 0.1, onset - 0.005)).toBeLessThan(note.startDb - 45);
      const reached = firstAbove(samples, RATE, onset - 0.1, note.startDb - 6) - onset;
      expect(reached).toBeGreaterThan(0);
      expect(reached).toBeLessThan(0.025);
    }
  });

  it('sound has fallen by 6 dB at the offset', () => {
    const { samples, truth } = performTake(smallPart([{ midi: 76, quarters: 1, rest: 0 }]), STEADY);
    const { offsetSeconds, startDb } = truth[0]!;
    expect(Math.abs(rmsDb(samples, RATE, offsetSeconds - 0.002, offsetSeconds + 0.002) - (startDb - 6))).toBeLessThan(
      1.5,
    );
  });

  const pair = (slurred: boolean) =>
    smallPart([
      { midi: 64, quarters: 1, slurredToNext: slurred },
      { midi: 67, quarters: 1, slurredFromPrevious: slurred },
    ]);

  it('a slurred note begins without a dip, a tongued one with a clear one', () => {
    const slurred = performTake(pair(true), STEADY);
    const tongued = performTake(pair(false), STEADY);
    const held = (take: typeof slurred): number => Math.min(take.truth[0]!.startDb, take.truth[1]!.startDb);
    expect(lowestDb(slurred.samples, RATE, 1.35, 1.6)).toBeGreaterThan(held(slurred) - 2);
    expect(lowestDb(tongued.samples, RATE, 1.35, 1.6)).toBeLessThan(held(tongued) - 20);
    expect(slurred.truth[1]).toMatchObject({ tongued: false });
    expect(slurred.truth[0]!.offsetSeconds).toBe(slurred.truth[1]!.onsetSeconds);
  });

  it('a slurred note does not click: no sample jumps further than in the held tone', () => {
    const { samples } = performTake(pair(true), STEADY);
    const steepest = (from: number, to: number): number => {
      let steepest = 0;
      for (let i = Math.round(from * RATE); i < to * RATE; i++) {
        steepest = Math.max(steepest, Math.abs(samples[i]! - samples[i - 1]!));
      }
      return steepest;
    };
    expect(steepest(1.48, 1.52)).toBeLessThan(1.15 * Math.max(steepest(1, 1.2), steepest(1.8, 2)));
  });

  it('a broken slur has a dip', () => {
    const { samples, truth } = performTake(pair(true), { ...STEADY, faults: [{ kind: 'broken-slur', at: 1 }] });
    expect(truth[1]).toMatchObject({ tongued: true });
    expect(lowestDb(samples, RATE, 1.35, 1.6)).toBeLessThan(truth[0]!.startDb - 20);
  });
});

describe('recording', () => {
  const part = smallPart([{ midi: 64, quarters: 1 }]);

  it('noise lies below mezzo-forte by the signal-to-noise ratio', () => {
    const { samples } = performTake(part, { ...STEADY, signalToNoiseDb: 30, gainDb: 6 });
    // mezzo-forte is at −24 dBFS by the plan's definition
    expect(Math.abs(rmsDb(samples, RATE, 0, 0.48) - (-24 + 6 - 30))).toBeLessThan(0.5);
  });

  it('a room rings on after the note and dies away at its reverberation time', () => {
    const { samples, truth } = performTake(part, {
      ...STEADY,
      roomSeconds: 0.6,
      tailSeconds: 1.2,
      signalToNoiseDb: 90,
    });
    const end = truth[0]!.offsetSeconds;
    const early = rmsDb(samples, RATE, end + 0.1, end + 0.2);
    const late = rmsDb(samples, RATE, end + 0.4, end + 0.5);
    expect(early).toBeGreaterThan(truth[0]!.startDb - 45);
    // 60 dB in 0.6 s is 30 dB in 0.3 s
    expect(Math.abs(early - late - 30)).toBeLessThan(6);
  });

  it('the same plan gives the same samples, another seed others', () => {
    const take = performTake(part, { seed: 3, voice: 'flute' });
    expect(performTake(part, { seed: 3, voice: 'flute' })).toEqual(take);
    expect(performTake(part, { seed: 4, voice: 'flute' }).samples).not.toEqual(take.samples);
  });

  it('the rate changes neither pitch nor length', () => {
    const { samples, sampleRateHz } = performTake(smallPart([{ midi: 69, quarters: 1 }]), {
      ...STEADY,
      sampleRateHz: 48000,
    });
    expect(sampleRateHz).toBe(48000);
    expect(Math.abs(centsFrom(samples, 48000, 0.75, 440))).toBeLessThan(4);
  });
});
