import { describe, expect, it } from 'vitest';
import { encodeWav } from '../../src/decode/index.js';
import { listen } from '../../src/features/index.js';
import { filteredStretch, lowPassWeights } from '../../src/measure/harmonicity/low-pass.js';
import { harmonicityReader } from '../../src/measure/harmonicity/read-harmonicity.js';
import { hertz, noise, sum, takeOf, tone } from '../helpers/tones.js';
import { praatHarmonicity } from './pitch-readers.js';
import { needs } from './programs.js';

const SECONDS = 1.2;
const [FROM, TO] = [0.3, 1];
const meanSquare = (samples: ArrayLike<number>): number =>
  Array.from(samples).reduce((total, value) => total + value * value, 0) / samples.length;

/** A tone with noise so far below it, as it is listened to, and how far apart the two are below 4 kHz. */
function noisyTone(midi: number, underDb: number) {
  const clean = tone(midi, SECONDS);
  const hiss = noise(SECONDS, 10 * Math.log10(meanSquare(clean)) - underDb);
  const range = { lowestMidi: midi - 5, highestMidi: midi + 5 };
  const features = listen(takeOf(sum(clean, hiss)), range);
  const level = (samples: Float32Array): number => {
    const { signal, signalRateHz } = listen(takeOf(samples), range);
    const [a, b] = [FROM, TO].map((seconds) => Math.round(seconds * signalRateHz));
    return 10 * Math.log10(meanSquare(filteredStretch(signal, lowPassWeights(signalRateHz), a!, b!)));
  };
  return { features, apartDb: level(clean) - level(hiss) };
}

const NOTES = [40, 50, 60, 67, 72, 84] as const;
const cases = NOTES.flatMap((midi) => [10, 20, 30].map((under) => [midi, under] as const));

describe.each(cases)('note %d with white noise %d dB below it', (midi, under) => {
  const { features, apartDb } = noisyTone(midi, under);
  const ours = harmonicityReader(features)(FROM, TO, () => hertz(midi))!;

  it('has as much noise as was added', () => {
    expect(Math.abs(ours.harmonicsToNoiseDb - apartDb)).toBeLessThan(0.7);
  });

  it('has as much noise as praat hears', (context) => {
    // praat reads a whole number of samples a second, and of high notes too few samples a period
    if (midi > 60 || under > 20) return;
    needs(context, 'praat');
    const { signal, signalRateHz } = features;
    const filtered = Float32Array.from(filteredStretch(signal, lowPassWeights(signalRateHz), 0, signal.length));
    const theirs = praatHarmonicity(encodeWav(filtered, signalRateHz), hertz(midi) / 1.5, FROM, TO);
    expect(Math.abs(ours.harmonicsToNoiseDb - theirs)).toBeLessThan(1);
  });
});

it('of a tone without noise is more than 45 dB, and of silence or a moment there is none', () => {
  for (const midi of NOTES) {
    const { features } = noisyTone(midi, 300);
    const read = harmonicityReader(features);
    expect(read(FROM, TO, () => hertz(midi))!.harmonicsToNoiseDb).toBeGreaterThan(45);
    expect(read(FROM, FROM + 0.03, () => hertz(midi))).toBeNull();
  }
  const { features } = noisyTone(60, 300);
  const silent = { ...features, signal: new Float32Array(features.signal.length) };
  expect(harmonicityReader(silent)(FROM, TO, () => hertz(60))).toBeNull();
});
