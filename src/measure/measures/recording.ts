import { isMeasured, type MaybeNumber, median, notMeasured } from '../../base/index.js';
import type { Take } from '../../decode/index.js';
import type { Features } from '../../features/index.js';
import type { NoteContext } from '../context/context.js';
import { ridesLevel } from '../gain/rides-level.js';
import type { RecordingMeasure } from '../types.js';
import { measureEchoDelay } from './echo-delay.js';
import { endsInSound } from './ends-in-sound.js';
import { measureReverberation } from './reverberation.js';

/** So many equal samples in a row at the top are a flat top. */
const FLAT_SAMPLES = 3;
const NEAR_PEAK = 0.999;
const LOUD_PEAK = 0.5;
const CLIPPED_CAUTION = 0.0005;
const NOISY_DB = 20;
/** From here on gaps between notes fill up. Source: working value; halls for speech are kept below about 1 s (DIN 18041). */
const RINGING_SECONDS = 1.2;

/**
 * The recording itself: peak, clipping, noise, how long the room rings, whether it echoes, and whether the recorder moved its level.
 *
 * @param context the take with its notes measured
 * @returns numbers, and cautions
 *
 * Flat tops are runs of equal samples at the peak.
 */
export function measureRecording(context: NoteContext): RecordingMeasure {
  const { peak, clippedShare } = peakAndClipping(context.take, context.features);
  const signalToNoiseDb = signalToNoise(context);
  const levelRiding = ridesLevel(context);
  const reverberationSeconds = measureReverberation(context);
  const cautions = [...context.take.cautions];
  if (clippedShare > CLIPPED_CAUTION) cautions.push({ code: 'clips', facts: {} });
  if (isMeasured(signalToNoiseDb) && signalToNoiseDb < NOISY_DB) cautions.push({ code: 'noisy', facts: {} });
  if (isMeasured(reverberationSeconds) && reverberationSeconds > RINGING_SECONDS) {
    cautions.push({ code: 'rings-long', facts: {} });
  }
  const echoSeconds = measureEchoDelay(context.features);
  if (echoSeconds !== undefined) cautions.push({ code: 'echoes', facts: {} });
  // A whole take at another pitch is compared at that pitch, and it is said.
  const { offsetSemitones: semitones } = context.alignment;
  if (semitones !== 0) cautions.push({ code: 'sounds-elsewhere', facts: { semitones } });
  if (levelRiding) cautions.push({ code: 'level-moved', facts: {} });
  return {
    peakDbfs: 20 * Math.log10(Math.max(peak, 1e-5)),
    clippedShare,
    signalToNoiseDb,
    reverberationSeconds,
    ...(echoSeconds === undefined ? {} : { echoSeconds }),
    levelRiding,
    breaksOff: context.take.breaksOff === true,
    onsetSpreadSeconds: context.take.origin?.onsetSpreadSeconds ?? 0,
    endsInSound: endsInSound(context),
    cautions,
  };
}

/** Only frames that come up to the peak are looked at sample by sample. */
function peakAndClipping(take: Take, features: Features): { peak: number; clippedShare: number } {
  const { samples } = take;
  let peak = 0;
  for (const size of features.peak) if (size > peak) peak = size;
  if (peak < LOUD_PEAK) return { peak, clippedShare: 0 };
  const hop = Math.round(features.levelHopSeconds * take.sampleRateHz);
  const top = NEAR_PEAK * peak;
  let clipped = 0;
  let run = 0;
  const endRun = (): void => {
    if (run >= FLAT_SAMPLES) clipped += run;
    run = 0;
  };
  for (let f = 0; f < features.peak.length; f++) {
    if (features.peak[f]! < top) {
      endRun();
      continue;
    }
    const frame = samples.subarray(f * hop, Math.min(samples.length, (f + 1) * hop));
    for (let i = 0; i < frame.length; i++) {
      if (Math.abs(frame[i]!) >= top) run++;
      else endRun();
    }
  }
  endRun();
  return { peak, clippedShare: clipped / samples.length };
}

function signalToNoise(context: NoteContext): MaybeNumber {
  const levels = context.notes.map((n) => n.levelDb).filter(isMeasured<number>);
  return levels.length === 0 ? notMeasured('no-note-heard') : median(levels) - context.features.noiseFloorDb;
}
