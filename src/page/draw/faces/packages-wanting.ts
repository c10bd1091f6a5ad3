import { packagesFor } from './families.js';
import { notInstalled } from './slices.js';

/**
 * @param letters that no face holds
 * @returns names of packages with a face for them that are known but not there, as they are installed by
 */
export function packagesWanting(letters: string): string[] {
  const names = [...letters].flatMap((letter) => packagesFor(letter, letters).slice(0, 1));
  return [...new Set(names)].map(notInstalled).filter((name) => name !== null);
}
