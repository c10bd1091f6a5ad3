import { InputError } from '../../base/index.js';
import { LONGEST_SECONDS } from '../common/longest.js';

/** No coding of sound that is read is sparser. Source: 3GPP TS 26.071, the lowest rate of AMR is 4.75 kbit/s. */
const LEAST_BYTES_A_SECOND = 500;

/**
 * Refuses a recording that its own index tells to be too long, before it is decoded. An index may be damaged: what the file has
 * not the bytes for is not believed, and found out by decoding.
 *
 * @param toldSeconds how long the file says its sound is; null where it does not say
 * @param fileBytes how large it is
 * @throws InputError `recording-too-long`
 */
export function refuseToldHour(toldSeconds: number | null, fileBytes: number): void {
  if (toldSeconds === null || toldSeconds <= LONGEST_SECONDS) return;
  if (toldSeconds * LEAST_BYTES_A_SECOND > fileBytes) return;
  throw new InputError('recording-too-long', { minutes: Math.round(toldSeconds / 60) });
}
