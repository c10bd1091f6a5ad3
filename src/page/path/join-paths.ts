import type { Path } from './path.js';

/**
 * @param paths in the order in which they are drawn
 * @returns all of them as one
 */
export function joinPaths(paths: readonly Path[]): Path {
  return { steps: paths.flatMap(({ steps }) => steps), points: paths.flatMap(({ points }) => points) };
}
