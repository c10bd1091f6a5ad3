import { existsSync } from 'node:fs';
import { extname } from 'node:path';

/**
 * @param path of the first of several files
 * @param number which of them is meant, from 1
 * @returns its path: that of the first, with the number before the ending for all others
 */
export function numberedPath(path: string, number: number): string {
  const ending = extname(path);
  return number === 1 ? path : `${path.slice(0, path.length - ending.length)}-${number}${ending}`;
}

/**
 * @param path of the first of several files
 * @param from number of the first that is asked for, from 1
 * @returns paths of those that are there, up to the first that is not
 */
export function sheetsThere(path: string, from = 1): string[] {
  const sheets: string[] = [];
  for (let n = from; existsSync(numberedPath(path, n)); n++) sheets.push(numberedPath(path, n));
  return sheets;
}
