import { midiToHz } from '../base/index.js';
import type { Features } from '../features/index.js';

/** Stretch searched after the rough onset. */
const AFTER_SECONDS = 0.09;
/** Frames of the residual. */
const STEP_SECONDS = 0.002;
const SMOOTHING_SECONDS = 0.006;
/** The onset is where the new sound has risen by this share, in dB, from what was there before to its first peak. */
const RISE_SHARE = 0.25;
const LEAST_RISE_DB = 5;

/**
 * Moves a rough onset to where the new sound begins: what the previous note's own period predicts is taken away, and
 * the rise of what remains is timed.
 *
 * @param features what was heard
 * @param roughSeconds rough onset
 * @param previousMidi fractional MIDI number of the note sounding before, null after silence
 * @param beforeSeconds stretch searched before the rough onset
 * @returns onset in seconds; the rough one where no rise is seen
 *
 * Source: one-period prediction residual (comb filter), as in pitch-synchronous onset detection; constants ours.
 */
export function refineOnset(
  features: Features,
  roughSeconds: number,
  previousMidi: number | null,
  beforeSeconds: number,
): number {
  const curve = residualDb(features, roughSeconds, previousMidi, beforeSeconds);
  let peak = 0;
  for (let k = 1; k < curve.length; k++) if (curve[k]! > curve[peak]!) peak = k;
  // the first step that comes close to the peak ends the attack
  let top = 0;
  while (curve[top]! < curve[peak]! - 3) top++;
  let low = curve[top]!;
  for (let k = 0; k < top; k++) low = Math.min(low, curve[k]!);
  const rise = curve[top]! - low;
  if (rise < LEAST_RISE_DB) return roughSeconds;
  const threshold = low + Math.max(3, RISE_SHARE * rise);
  let at = top;
  while (at > 0 && curve[at - 1]! > threshold) at--;
  return roughSeconds - beforeSeconds + at * STEP_SECONDS + SMOOTHING_SECONDS / 3;
}

/** Level of the unpredicted sound around an onset, a step each STEP_SECONDS from roughSeconds - beforeSeconds on. */
function residualDb(
  features: Features,
  roughSeconds: number,
  previousMidi: number | null,
  beforeSeconds: number,
): Float64Array {
  const { signal, signalRateHz: rate } = features;
  const steps = Math.round((beforeSeconds + AFTER_SECONDS) / STEP_SECONDS);
  const start = Math.round((roughSeconds - beforeSeconds) * rate);
  const width = Math.max(2, Math.round(SMOOTHING_SECONDS * rate));
  const length = Math.round((beforeSeconds + AFTER_SECONDS) * rate) + width;
  const residual =
    previousMidi === null
      ? signal.subarray(Math.max(0, start), start + length)
      : predict(signal, start, length, rate / midiToHz(previousMidi));
  const curve = new Float64Array(steps);
  for (let k = 0; k < steps; k++) {
    const from = Math.round(k * STEP_SECONDS * rate);
    let sum = 0;
    for (let i = from; i < from + width; i++) sum += (residual[i] ?? 0) ** 2;
    curve[k] = 10 * Math.log10(sum / width + 1e-11);
  }
  return curve;
}

/** The signal minus the best-scaled copy of itself some whole number of periods earlier. */
function predict(signal: Float32Array, start: number, length: number, period: number): Float32Array {
  let times = 1;
  for (let k = 2; k <= 4; k++) {
    const off = (n: number) => Math.abs(n * period - Math.round(n * period));
    if (off(k) < off(times) - 0.05) times = k;
  }
  const lag = Math.round(times * period);
  const reach = Math.max(lag, Math.round(2 * period));
  const before = reach + lag;
  const sound = stretch(signal, start - before, before + length);
  const out = new Float32Array(length);
  let cross = 0;
  let power = 1e-12;
  for (let i = lag; i < before; i++) {
    cross += sound[i]! * sound[i - lag]!;
    power += sound[i - lag]! ** 2;
  }
  for (let k = 0; k < length; k++) {
    const i = before + k;
    const here = sound[i]!;
    const earlier = sound[i - lag]!;
    const leaving = sound[i - reach]!;
    const leavingEarlier = sound[i - before]!;
    const gain = Math.max(0, Math.min(1, cross / power));
    out[k] = here - gain * earlier;
    cross += here * earlier - leaving * leavingEarlier;
    power += earlier * earlier - leavingEarlier * leavingEarlier;
  }
  return out;
}

/** Part of a signal that is silent beyond both ends. */
function stretch(signal: Float32Array, from: number, length: number): Float32Array {
  if (from >= 0 && from + length <= signal.length) return signal.subarray(from, from + length);
  return Float32Array.from({ length }, (_, i) => signal[from + i] ?? 0);
}
