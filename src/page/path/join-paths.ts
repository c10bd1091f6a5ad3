import type { Path } from './path.js';

/**
 * @param paths in the order in which they are drawn
 * @returns all of them as one
 *
 * Source: definition.
 */
export function joinPaths(paths: readonly Path[]): Path {
  return { steps: paths.flatMap(({ steps }) => steps), points: paths.flatMap(({ points }) => points) };
}
