import { describe, expect, it } from 'vitest';
import { CANDIDATES } from '../../src/features/index.js';
import { type MeasureContext, measureTake } from '../../src/measure/index.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { handContext, playEvenly } from '../helpers/hand-context.js';
import { hearTake } from '../helpers/heard-take.js';

/** Eight quarters of a second each, tongued: a tenth of a second of silence lies between them. */
const QUARTERS: readonly NoteSketch[] = [60, 64, 62, 67, 65, 69, 64, 60].map((midi) => ({ midi, quarters: 1 }));
const PART = smallPart(QUARTERS);
const RATE_HZ = 8000;

/** Harmonics of one note by number: at a moment, seconds after it begins, their amplitudes. */
type Tone = (harmonic: number, seconds: number) => number;

/**
 * The part with the sound of its notes made by formula: six harmonics a note, and what lies an octave below its fundamental as
 * harmonic one half.
 */
function sounding(tone: Tone, index: number): MeasureContext {
  const context = handContext(PART, playEvenly(PART));
  const { signal } = context.features;
  for (const { soundingMidi, index: at } of PART.notes) {
    const { onsetSeconds: onset, offsetSeconds: offset } = context.alignment.notes[at]!;
    const hz = 440 * 2 ** ((soundingMidi - 69) / 12);
    for (let i = Math.round(onset! * RATE_HZ); i < offset! * RATE_HZ; i++) {
      const seconds = i / RATE_HZ - onset!;
      let value = 0;
      for (let half = 1; half <= 12; half++) {
        const usual = half % 2 === 0 ? 2 / half : 0;
        const amplitude = at === index ? tone(half / 2, seconds) : usual;
        value += 0.05 * amplitude * Math.sin(Math.PI * half * hz * seconds);
      }
      signal[i] = value;
    }
  }
  return context;
}

const cracksOf = (context: MeasureContext) => measureTake(context).cracks;
const isWhole = (harmonic: number) => Number.isInteger(harmonic);
const plain = (harmonic: number) => (isWhole(harmonic) ? 1 / harmonic : 0);

describe('a note an octave away by its harmonics', () => {
  it('is above where odd harmonics come later than even ones, for so long', () => {
    const tone: Tone = (harmonic, seconds) => (seconds < 0.09 && harmonic % 2 === 1 ? 0 : plain(harmonic));
    const [crack, ...others] = cracksOf(sounding(tone, 3));
    expect(crack).toMatchObject({ index: 3, semitones: 12 });
    // windows of 25 ms over a change at 90 ms
    expect(Math.abs(crack!.seconds - 0.09)).toBeLessThan(0.02);
    expect(others).toEqual([]);
  });

  it('is below where something sounds between them at first', () => {
    const tone: Tone = (harmonic, seconds) =>
      isWhole(harmonic) || harmonic > 2 ? plain(harmonic) : seconds < 0.09 ? 1 : 0;
    const [crack, ...others] = cracksOf(sounding(tone, 3));
    expect(crack).toMatchObject({ index: 3, semitones: -12 });
    expect(Math.abs(crack!.seconds - 0.09)).toBeLessThan(0.02);
    expect(others).toEqual([]);
  });

  it.each<readonly [string, Tone]>([
    ['that begins at once', (harmonic) => plain(harmonic)],
    ['whose odd harmonics are weak all the time', (harmonic) => plain(harmonic) * (harmonic % 2 === 1 ? 0.05 : 1)],
    ['that is dull at first', (harmonic, seconds) => (harmonic > 1 && seconds < 0.09 ? 0 : plain(harmonic))],
    ['whose fundamental is 6 dB late', (harmonic, s) => plain(harmonic) * (harmonic === 1 && s < 0.09 ? 0.5 : 1)],
    [
      'with an octave long before it, 30 dB below it',
      (harmonic, s) => plain(harmonic) * (s >= 0.09 ? 1 : harmonic % 2 === 1 ? 0 : 0.03),
    ],
  ])('is none for a tone %s', (_, tone) => {
    expect(cracksOf(sounding(tone, 3))).toEqual([]);
  });

  it('is as short as it sounds', () => {
    const [crack] = cracksOf(sounding((harmonic, s) => (s < 0.02 && harmonic % 2 === 1 ? 0 : plain(harmonic)), 3));
    expect(crack?.seconds ?? 0).toBeLessThan(0.03);
  });
});

describe('a note at another pitch by its periods', () => {
  function begin(context: MeasureContext, index: number, seconds: number, semitones: number): void {
    const { features, alignment } = context;
    const from = alignment.notes[index]!.onsetSeconds!;
    for (let f = Math.ceil(from / features.pitchHopSeconds); f * features.pitchHopSeconds < from + seconds; f++) {
      const at = f * CANDIDATES;
      features.candidateMidi[at] = features.candidateMidi[at]! + semitones;
    }
  }

  it('is told where the sound before has fallen by 15 dB, and not where it has by 12', () => {
    const heard = [-15, -12].map((db) => {
      const notes = playEvenly(PART).map((note) => ({ ...note, roomAfterDb: -24 + db }));
      const context = handContext(PART, notes);
      begin(context, 3, 0.08, 7);
      return cracksOf(context).map(({ index, semitones }) => ({ index, semitones: Math.round(semitones) }));
    });
    expect(heard).toEqual([[{ index: 3, semitones: 7 }], []]);
  });
});

describe('on takes of the synthesiser', () => {
  it.each(['clarinet', 'flute', 'brass'] as const)('a %s cracks an octave up and an octave down', (voice) => {
    const faults = [
      { kind: 'crack', at: 2, semitones: 12, seconds: 0.09 },
      { kind: 'crack', at: 5, semitones: -12, seconds: 0.09 },
    ] as const;
    const heard = cracksOf(hearTake(PART, { voice, faults, roomSeconds: 0.3 }));
    expect(heard.map(({ index, semitones }) => [index, semitones])).toEqual([
      [2, 12],
      [5, -12],
    ]);
    for (const { seconds } of heard) expect(Math.abs(seconds - 0.09)).toBeLessThan(0.03);
  });
});
