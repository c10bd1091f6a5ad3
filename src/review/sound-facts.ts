import type { EncodedSound } from '../encode/index.js';
import type { Loudness, SoundFacts } from '../report/index.js';

/** Short enough to draw a curve by, long enough for a file of a few kilobytes. */
const LEVEL_HOP_SECONDS = 0.05;
const MILLISECONDS = 1000;
const TENTHS_OF_A_DB = 10;
const HUNDREDTHS_OF_A_DB = 100;

/**
 * @param sound the take as it can be heard
 * @param loudness its levels, frame by frame, as the pages show them
 * @returns what is kept of its loudness beside the sound
 */
export function soundFacts(
  { durationSeconds, kWeightedPower }: Pick<EncodedSound, 'durationSeconds' | 'kWeightedPower'>,
  loudness: Loudness,
): SoundFacts {
  return {
    durationSeconds: rounded(durationSeconds, MILLISECONDS),
    levelHopSeconds: LEVEL_HOP_SECONDS,
    levelsDb: powersOf(loudness, durationSeconds).map((power) => decibels(power, TENTHS_OF_A_DB)),
    kWeightedDb: kWeightedPower.map((power) => decibels(power, HUNDREDTHS_OF_A_DB)),
  };
}

/** Mean power of the frames whose centres lie in each stretch. */
function powersOf({ hopSeconds, levelDb }: Loudness, durationSeconds: number): number[] {
  const count = Math.ceil(durationSeconds / LEVEL_HOP_SECONDS);
  const [powers, frames] = [new Float64Array(count), new Float64Array(count)];
  levelDb.forEach((level, frame) => {
    const stretch = Math.floor(((frame + 0.5) * hopSeconds) / LEVEL_HOP_SECONDS);
    if (stretch >= count) return;
    powers[stretch] = (powers[stretch] as number) + 10 ** (level / 10);
    frames[stretch] = (frames[stretch] as number) + 1;
  });
  return [...powers].map((power, i) => (power === 0 ? 0 : power / (frames[i] as number)));
}

function decibels(power: number, parts: number): number | null {
  return power > 0 ? rounded(10 * Math.log10(power), parts) : null;
}

function rounded(value: number, parts: number): number {
  return Math.round(value * parts) / parts;
}
