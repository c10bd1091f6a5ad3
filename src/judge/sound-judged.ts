import { isMeasured, type Reason } from '../base/index.js';
import { isWet, type Measurements } from '../measure/index.js';

/**
 * Whether the recording lets the sound be judged at all.
 *
 * @param measurements of one take
 * @returns why it does not: the recorder moved its level, the coding of the file leaves something of the sound out, the room
 * rings, or too few notes are long enough; null where it does
 *
 * Source: standard wetRoom; the cautions and measures name theirs.
 */
export function whySoundIsOut({
  recording,
  steadiness,
}: Pick<Measurements, 'recording' | 'steadiness'>): Reason | null {
  const { levelRiding, onsetSpreadSeconds, cautions } = recording;
  if (levelRiding) return { code: 'level-moved', facts: {} };
  const coded = onsetSpreadSeconds > 0 || cautions.some(({ code }) => code === 'speech-coding');
  if (coded) return { code: 'sound-coded', facts: {} };
  if (isWet(recording)) return { code: 'room-rings', facts: {} };
  return isMeasured(steadiness) ? null : steadiness.notMeasured;
}
