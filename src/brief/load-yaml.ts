import { createRequire } from 'node:module';
import type * as Yaml from 'yaml';

const require = createRequire(import.meta.url);

/**
 * Most reviews have no brief: reading the package waits until there is a page to read.
 *
 * @returns the package
 */
export function loadYaml(): typeof Yaml {
  return require('yaml');
}
