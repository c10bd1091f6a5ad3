import { isMeasured, type NotMeasured, notMeasured } from '../../base/index.js';
import { isWet } from '../is-wet.js';
import type { RecordingMeasure } from '../types.js';

/**
 * @param recording the recording itself
 * @returns why it hides how a tone is made up: the recorder moved its level, the coding leaves something out, the room rings, or
 * no tone was heard over it; null where it does not
 */
export function whyHidden(recording: RecordingMeasure): NotMeasured | null {
  const { levelRiding, onsetSpreadSeconds, cautions, signalToNoiseDb } = recording;
  if (levelRiding) return notMeasured('level-moved');
  if (onsetSpreadSeconds > 0 || cautions.some(({ code }) => code === 'speech-coding'))
    return notMeasured('sound-coded');
  if (isWet(recording)) return notMeasured('room-rings');
  return isMeasured<number>(signalToNoiseDb) ? null : signalToNoiseDb;
}
