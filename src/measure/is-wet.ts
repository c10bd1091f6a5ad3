import { isMeasured } from '../base/index.js';
import { STANDARDS } from '../standards/index.js';
import type { RecordingMeasure } from './types.js';

/**
 * @param recording the recording itself
 * @returns whether it is known that the room rings so much that the sound of one note goes over into the next
 *
 * Source: standard wetRoom.
 */
export function isWet({ reverberationSeconds }: Pick<RecordingMeasure, 'reverberationSeconds'>): boolean {
  return isMeasured(reverberationSeconds) && reverberationSeconds > STANDARDS.wetRoom.value;
}
