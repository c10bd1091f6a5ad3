import type { Take } from '../decode/index.js';
import { decimate } from './decimate.js';
import { type PitchRange, planFrames } from './frame-plan.js';
import { measureLevels } from './level-frames.js';
import { musicAsFloor } from './music-as-floor.js';
import { trackPitch } from './pitch-frames.js';
import type { Features } from './types.js';

/** From the lowest tuba note to the highest piccolo note. */
const ANY_WIND_INSTRUMENT: PitchRange = { lowestMidi: 22, highestMidi: 108 };

/**
 * Listens to a take without knowing what should be played.
 *
 * @param take decoded recording
 * @param range sounding range to expect; narrower is faster and, for high instruments, sharper in time
 * @returns pitch candidates, spectral change and power, frame by frame
 *
 * Source: the functions called here name theirs.
 */
export function listen(take: Take, range: PitchRange = ANY_WIND_INSTRUMENT): Features {
  const plan = planFrames(take.sampleRateHz, range);
  const signal = decimate(take.samples, plan.decimation);
  const pitch = trackPitch(signal, plan);
  const level = measureLevels(take.samples, take.sampleRateHz);
  const pitchHopSeconds = plan.hopSamples / plan.rateHz;
  return {
    durationSeconds: take.samples.length / take.sampleRateHz,
    pitchHopSeconds,
    pitchFrames: pitch.frames,
    candidateMidi: pitch.candidateMidi,
    candidateClarity: pitch.candidateClarity,
    change: pitch.change,
    signal,
    signalRateHz: plan.rateHz,
    levelHopSeconds: level.hopSeconds,
    power: level.power,
    peak: level.peak,
    noiseFloorDb: musicAsFloor(level, pitch.candidateClarity, pitchHopSeconds),
  };
}
