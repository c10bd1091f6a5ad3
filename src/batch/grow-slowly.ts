import { setFlagsFromString } from 'node:v8';

/**
 * Lets the engine look for what may be thrown away whenever memory has grown by a fifth, not only when it has doubled or
 * tripled: for work through thousands of files, of which little is kept.
 *
 * Source: V8, `--heap-growing-percent`; measured, see tests/bench/README.md.
 */
export function growSlowly(): void {
  setFlagsFromString('--heap-growing-percent=20');
}
