import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { decodeWav, encodeWav } from '../../src/decode/index.js';
import { listen } from '../../src/features/index.js';
import { measureLevels } from '../../src/features/level-frames.js';
import { demoPart, hearTake } from '../helpers/heard-take.js';
import { EBU_SIGNALS, ebuWav } from './ebu-signals.js';
import { inFolder, needs } from './programs.js';

/** RMS of a sine under its peak. Source: its mean square is half its squared amplitude. */
const PEAK_TO_RMS_DB = 3.0103;
/** Source: EBU Tech 3341, table 1: ± 0.1 LU. */
const TOLERANCE_DB = 0.1;
/**
 * Two equal channels are 3.01 LU louder than one. Source: ITU-R BS.1770, the channels' powers are summed. Its weighting and
 * its constant of −0.691 cancel at 1 kHz, so that loudness of one channel is its RMS level.
 */
const STEREO_DB = 3.0103;

const decibels = (power: number): number => 10 * Math.log10(power);
const mean = (values: Float32Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function levelsOf(wav: Uint8Array): { power: Float32Array; hopSeconds: number } {
  const { samples, sampleRateHz } = decodeWav(wav);
  return measureLevels(samples, sampleRateHz);
}

/** Standard error of ffmpeg, where its meters print. */
function meter(wav: Uint8Array, filter: string): string {
  return inFolder((folder) => {
    const file = join(folder, 'signal.wav');
    writeFileSync(file, wav);
    const { status, stderr } = spawnSync('ffmpeg', ['-nostats', '-i', file, '-af', filter, '-f', 'null', '-'], {
      encoding: 'utf8',
      maxBuffer: 2 ** 28,
    });
    expect(status).toBe(0);
    return stderr;
  });
}

describe.each(EBU_SIGNALS)('EBU Tech 3341, signal $number', (signal) => {
  const { stretches, integratedLufs } = signal;
  const wavs = { 1: ebuWav(signal, 1), 2: ebuWav(signal, 2) };
  const levels = { 1: levelsOf(wavs[1]), 2: levelsOf(wavs[2]) };

  it('has in each stretch the level it was made with, in mono and in stereo', () => {
    for (const channels of [1, 2] as const) {
      const { power, hopSeconds } = levels[channels];
      let from = 0;
      for (const [dbfs, seconds] of stretches) {
        // the frames at the seams hold some of both
        const inside = power.subarray(Math.ceil(from / hopSeconds) + 1, Math.floor((from + seconds) / hopSeconds) - 1);
        expect(Math.abs(decibels(mean(inside)) - (dbfs - PEAK_TO_RMS_DB))).toBeLessThan(TOLERANCE_DB);
        from += seconds;
      }
    }
  });

  it('has the loudness that the table expects, once what the gate leaves out is left out', () => {
    const { power, hopSeconds } = levels[2];
    // relative gate of BS.1770: blocks of 0.4 s more than 10 LU under the mean of the others do not count
    const block = Math.round(0.4 / hopSeconds);
    const blocks = Array.from({ length: Math.floor(power.length / block) }, (_, i) =>
      mean(power.subarray(i * block, (i + 1) * block)),
    );
    const audible = blocks.filter((p) => decibels(p) + STEREO_DB > -70);
    const gate = audible.reduce((sum, p) => sum + p, 0) / audible.length / 10;
    const kept = audible.filter((p) => p > gate);
    const lufs = decibels(kept.reduce((sum, p) => sum + p, 0) / kept.length) + STEREO_DB;
    // signal 9 asks for a short-term loudness of −23.0 over any 3 s: the mean of its cycle
    expect(Math.abs(lufs - (integratedLufs ?? -23))).toBeLessThan(TOLERANCE_DB);
  });

  it('is as loud to ffmpeg, which reads one channel 3.01 LU lower than two', (context) => {
    needs(context, 'ffmpeg');
    for (const channels of [1, 2] as const) {
      const lufs = Number(/Integrated loudness:\s+I:\s+(-?[\d.]+) LUFS/.exec(meter(wavs[channels], 'ebur128'))?.[1]);
      expect(Math.abs(lufs - (integratedLufs ?? -23) - (channels - 2) * STEREO_DB)).toBeLessThan(TOLERANCE_DB + 0.05);
    }
  });
});

describe('a whole take', () => {
  const { take, features } = hearTake(demoPart(), { seed: 8, voice: 'brass', signalToNoiseDb: 40 });
  const wav = encodeWav(take.samples.subarray(), take.sampleRateHz);

  // Source: ffmpeg's astats filter, "RMS level", unweighted, over windows of 50 ms.
  it('has the RMS level that ffmpeg measures, window by window', (context) => {
    needs(context, 'ffmpeg');
    const window = Math.round(features.levelHopSeconds * take.sampleRateHz) * 25;
    const filter = `asetnsamples=n=${window}:p=0,astats=metadata=1:reset=1,ametadata=print:key=lavfi.astats.Overall.RMS_level`;
    const theirs = [...meter(wav, filter).matchAll(/RMS_level=(-?[\d.]+|-inf)/g)].map((match) => Number(match[1]));
    const { power } = listen(decodeWav(wav));
    const ours = theirs.slice(0, -1).map((_, i) => decibels(mean(power.subarray(i * 25, (i + 1) * 25))));
    expect(ours.length).toBeGreaterThan(700);
    expect(Math.max(...ours.map((level, i) => Math.abs(level - theirs[i]!)))).toBeLessThan(0.01);
  });
});
