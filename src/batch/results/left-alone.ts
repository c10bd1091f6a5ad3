import type { Plan } from '../plan/plan-takes.js';
import type { ReviewRequest, TakeEnd } from '../types.js';
import { filesOfTakes } from './open-results.js';

/**
 * Finds what lies in the folder for takes and is no result of this run: of takes that are no longer given, or of takes that
 * failed this time. It is left as it is, and counted nowhere.
 *
 * @param place the folder for results, and whether pages belong to a result
 * @param plan all takes, also those of other shares
 * @param ends how the takes of this run ended
 * @returns file names, in code point order
 *
 * Source: definition.
 */
export function leftAlone(
  { outFolder, jsonOnly, listen = false }: Pick<ReviewRequest, 'outFolder' | 'jsonOnly' | 'listen'>,
  plan: Plan,
  ends: readonly TakeEnd[],
): string[] {
  const failed = new Set(ends.flatMap((end) => ('failure' in end ? [end.name] : [])));
  const anew = ends.flatMap((end) => ('row' in end && !end.kept ? [end.name] : []));
  const withoutPages = new Set(jsonOnly ? anew : []);
  const withoutSound = new Set(listen ? [] : anew);
  const results = plan.takes.map(({ name }) => name).filter((name) => !failed.has(name));
  const ours = new Set(
    results.flatMap((name) => [
      `${name}.json`,
      ...(withoutPages.has(name) ? [] : [`${name}.pdf`]),
      ...(withoutSound.has(name) ? [] : [`${name}.html`]),
    ]),
  );
  return filesOfTakes(outFolder).filter((file) => !ours.has(file));
}
