import { DOCUMENTS } from '../../review/index.js';
import type { Plan } from '../plan/plan-takes.js';
import type { ReviewRequest, TakeEnd } from '../types.js';
import { filesOfTakes } from './open-results.js';

/**
 * Finds what lies in the folder for takes and is no result of this run: of takes that are no longer given, or of takes that
 * failed this time. It is left as it is, and counted nowhere.
 *
 * @param request the folder for results, and what is wanted of each take
 * @param plan all takes, also those of other shares
 * @param ends how the takes of this run ended
 * @returns file names, in code point order
 */
export function leftAlone(
  request: Pick<ReviewRequest, 'outFolder' | 'jsonOnly' | 'listen' | 'paper'>,
  plan: Plan,
  ends: readonly TakeEnd[],
): string[] {
  const failed = new Set(ends.flatMap((end) => ('failure' in end ? [end.name] : [])));
  const anew = new Set(ends.flatMap((end) => ('row' in end && !end.kept ? [end.name] : [])));
  const results = plan.takes.map(({ name }) => name).filter((name) => !failed.has(name));
  // What an earlier run wrote of a kept take is still true, whether it is wanted this time or not.
  const ours = results.flatMap((name) =>
    DOCUMENTS.filter(({ wanted }) => !anew.has(name) || wanted(request)).map(({ ending }) => `${name}.${ending}`),
  );
  const known = new Set(ours);
  return filesOfTakes(request.outFolder).filter((file) => !known.has(file));
}
