import { encodeWav, type Take } from '../../decode/index.js';
import { resample } from './resample.js';

/** Enough for every wind instrument's tone, and half the bytes of a recording. */
const MOST_RATE_HZ = 22_050;
/** Ramps at both ends, against clicks. */
const FADE_SECONDS = 0.01;
/** The loudest sample of the take is brought to this; quiet recordings are helped, but not without end. */
const PEAK = 0.89;
const MOST_GAIN = 16;
/** Samples looked at a time. */
const BLOCK = 65_536;

/**
 * @param take the recording
 * @returns the factor by which all of its clips are made louder or softer: the same for all, so that they can be compared
 */
export function gainFor({ samples }: Take): number {
  let peak = 0;
  for (let from = 0; from < samples.length; from += BLOCK) {
    const block = samples.subarray(from, Math.min(samples.length, from + BLOCK));
    for (const sample of block) peak = Math.max(peak, Math.abs(sample));
  }
  return peak === 0 ? 1 : Math.min(MOST_GAIN, PEAK / peak);
}

/**
 * Cuts some seconds out of a recording.
 *
 * @param take the recording
 * @param fromSeconds from the first sample
 * @param toSeconds from the first sample
 * @param gain factor on all samples
 * @returns a WAV file, 16 bit, mono, at most 22.05 kHz
 */
export function cutClip(
  { samples, sampleRateHz }: Take,
  fromSeconds: number,
  toSeconds: number,
  gain: number,
): Uint8Array {
  const rateHz = Math.min(MOST_RATE_HZ, Math.round(sampleRateHz));
  const place = (seconds: number) => Math.min(samples.length, Math.max(0, Math.round(seconds * sampleRateHz)));
  const cut = samples.subarray(place(fromSeconds), place(toSeconds));
  const clip = resample(cut, Math.round(sampleRateHz), rateHz);
  const fade = Math.round(FADE_SECONDS * rateHz);
  for (let i = 0; i < clip.length; i++) {
    const ramp = Math.min(1, i / fade, (clip.length - 1 - i) / fade);
    clip[i] = (clip[i] as number) * gain * ramp;
  }
  return encodeWav(clip, rateHz);
}
