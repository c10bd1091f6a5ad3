import { join } from 'node:path';
import { DOCUMENTS, documentPath } from '../../review/index.js';
import type { Plan } from '../plan/plan-takes.js';
import type { ReviewRequest, TakeEnd } from '../types.js';
import { filesIn, RESULT_FOLDERS } from './open-results.js';

/**
 * Finds what lies in the folders for takes and their sounds and is no result of this run: of takes that are no longer given, or of takes that
 * failed this time. It is left as it is, and counted nowhere.
 *
 * @param request the folder for results, and what is wanted of each take
 * @param plan all takes, also those of other shares
 * @param ends how the takes of this run ended
 * @returns paths below the folder for results, in code point order of the files of each folder
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
    DOCUMENTS.filter(({ wanted }) => !anew.has(name) || wanted(request)).map((one) => documentPath(name, one)),
  );
  const known = new Set(ours);
  return RESULT_FOLDERS.flatMap((folder) =>
    filesIn(join(request.outFolder, folder)).map((file) => `${folder}/${file}`),
  ).filter((path) => !known.has(path));
}
