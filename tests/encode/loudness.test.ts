import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { decodeWav, encodeWav } from '../../src/decode/index.js';
import { encodeSound } from '../../src/encode/index.js';
import { KWeightedPower } from '../../src/encode/k-weighting/k-weighted-power.js';
import { kWeightingFilters } from '../../src/encode/k-weighting/k-weighting-filters.js';
import { demoPart, hearTake } from '../helpers/heard-take.js';
import { EBU_SIGNALS, ebuWav } from '../outside/ebu-signals.js';
import { inFolder, needs } from '../outside/programs.js';

/** Source: ITU-R BS.1770-5, annex 1: its constant; and two equal channels are added, 3.01 LU more than one. */
const CONSTANT_LU = -0.691;
const STEREO_LU = 3.0103;
/** Source: EBU Tech 3341, table 1. */
const TOLERANCE_LU = 0.1;

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const loudness = (power: number): number => CONSTANT_LU + 10 * Math.log10(power);

/** Programme loudness by ITU-R BS.1770-5, annex 1: blocks of 0.4 s every 0.1 s, gates at −70 LUFS and 10 LU below the rest. */
function programmeLoudness(powers: readonly number[], channelsLu: number): number {
  const blocks = powers.slice(0, -3).map((_, i) => mean(powers.slice(i, i + 4)));
  const audible = blocks.filter((power) => loudness(power) + channelsLu > -70);
  const gate = mean(audible) / 10;
  return loudness(mean(audible.filter((power) => power > gate))) + channelsLu;
}

describe('the K weighting', () => {
  // Source: ITU-R BS.1770-5, annex 1, tables 1 and 2.
  it('has at 48 kHz the coefficients that the standard prints', () => {
    const [shelf, highPass] = kWeightingFilters(48_000);
    expect(shelf.b0).toBeCloseTo(1.53512485958697, 8);
    expect(shelf.b1).toBeCloseTo(-2.69169618940638, 8);
    expect(shelf.b2).toBeCloseTo(1.19839281085285, 8);
    expect(shelf.a1).toBeCloseTo(-1.69065929318241, 8);
    expect(shelf.a2).toBeCloseTo(0.73248077421585, 8);
    expect(highPass).toMatchObject({ b0: 1, b1: -2, b2: 1 });
    expect(highPass.a1).toBeCloseTo(-1.99004745483398, 8);
    expect(highPass.a2).toBeCloseTo(0.99007225036621, 8);
  });

  it('gives the same whatever pieces the sound comes in', () => {
    const sound = Float32Array.from({ length: 7001 }, (_, n) => Math.sin(n * 0.1));
    const [whole, pieces] = [new KWeightedPower(24_000), new KWeightedPower(24_000)];
    whole.add(sound);
    for (let at = 0; at < sound.length; at += 997) pieces.add(sound.subarray(at, at + 997));
    const powers = whole.end();
    // 2400 samples a stretch: two whole ones, and what is left
    expect(powers).toHaveLength(3);
    expect(pieces.end()).toEqual(powers.map((power) => expect.closeTo(power, 12)));
  });
});

describe.each(EBU_SIGNALS)('EBU Tech 3341, signal $number', (signal) => {
  it('has the loudness that the table expects', () => {
    const { kWeightedPower } = encodeSound(decodeWav(ebuWav(signal, 1)));
    // signal 9 asks for −23.0 over any 3 s: the mean of its cycle
    const wanted = signal.integratedLufs ?? -23;
    expect(Math.abs(programmeLoudness(kWeightedPower, STEREO_LU) - wanted)).toBeLessThan(TOLERANCE_LU);
  });
});

describe('a whole take', () => {
  const { take } = hearTake(demoPart(), { seed: 8, voice: 'brass', signalToNoiseDb: 40 });
  const { kWeightedPower } = encodeSound(take);

  // Source: ffmpeg's ebur128 filter: momentary loudness (M) every 100 ms over the 400 ms before, and the whole (I).
  it('has the loudness that ffmpeg measures, block by block and as a whole', (context) => {
    needs(context, 'ffmpeg');
    const said = inFolder((folder) => {
      const file = join(folder, 'take.wav');
      writeFileSync(file, encodeWav(take.samples.subarray(), take.sampleRateHz));
      const words = ['-nostats', '-i', file, '-af', 'ebur128', '-f', 'null', '-'];
      return spawnSync('ffmpeg', words, { encoding: 'utf8', maxBuffer: 2 ** 28 }).stderr;
    });
    const theirs = [...said.matchAll(/ M:\s*(-?[\d.]+)/g)].map(([, lufs]) => Number(lufs));
    const ours = kWeightedPower.slice(0, -3).map((_, i) => loudness(mean(kWeightedPower.slice(i, i + 4))));
    expect(theirs.length).toBeGreaterThan(100);
    const errors = theirs
      .slice(4, ours.length)
      .flatMap((lufs, i) => (lufs > -60 ? [Math.abs(lufs - ours[i + 1]!)] : []));
    expect(errors.length).toBeGreaterThan(80);
    expect(Math.max(...errors)).toBeLessThan(0.3);
    const whole = Number(/Integrated loudness:\s+I:\s+(-?[\d.]+) LUFS/.exec(said)?.[1]);
    expect(Math.abs(programmeLoudness(kWeightedPower, 0) - whole)).toBeLessThan(TOLERANCE_LU);
  });
});
