import { InputError } from '../base/index.js';
import type { ReviewSummary } from './types.js';

/**
 * @param end how the run ended: its summary, or what was thrown before anything was written
 * @returns 0 every take was reviewed, whatever was found in the playing; 1 something could not be reviewed (it
 *   could not be read, no playing could be heard in it, or what was played is not the part); 2 the
 *   request itself is wrong and nothing was written; 130 the run was stopped before its end
 *
 * 2 for a wrong request and 128 + SIGINT for a stopped run are common practice.
 */
export function exitCode(end: ReviewSummary | Error): 0 | 1 | 2 | 130 {
  if (end instanceof InputError) return 2;
  if (end instanceof Error) return 1;
  if (end.notReached > 0) return 130;
  const others = end.ends.some((one) => 'row' in one && one.row.take.outcome !== 'reviewed');
  return end.failures.length > 0 || others ? 1 : 0;
}
