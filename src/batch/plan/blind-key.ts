import { existsSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { InputError } from '../../base/index.js';
import { cellText, csvText, exactCell } from '../../result/index.js';
import type { Who } from '../../review/index.js';
import { readWhole } from '../disk/read-whole.js';

/** The file in the folder for results that says which number stands for whom. */
export const BLIND_KEY_FILE = 'blind-key.csv';

const HEADS = ['number', 'take', 'file', 'player', 'date', 'instrument'];
const LARGEST_KEY_BYTES = 2 ** 24;

/** One take in the key. */
export interface KeyLine {
  /** stands for the player */
  readonly number: string;
  /** stands for the take */
  readonly take: string;
  /** path below the folder that was given */
  readonly file: string;
  readonly who: Who;
}

/**
 * @param lines the key
 * @returns it as CSV
 *
 * Source: RFC 4180.
 */
export function writeKey(lines: readonly KeyLine[]): string {
  const cells = lines.map(({ number, take, file, who }) =>
    [number, take, file, who.player ?? '', who.date ?? '', who.instrument ?? ''].map(exactCell),
  );
  return csvText([HEADS, ...cells]);
}

/**
 * @param path where a key may be
 * @returns its lines, null when there is no such file
 * @throws InputError `not-readable` when it is not a key
 *
 * Source: RFC 4180.
 */
export function readKey(path: string): KeyLine[] | null {
  if (!existsSync(path)) return null;
  try {
    const [heads, ...rows] = parse(Buffer.from(readWhole(path, LARGEST_KEY_BYTES)), { bom: true }) as string[][];
    if (heads?.join() !== HEADS.join()) throw new Error('other heads');
    return rows.map((row) => {
      const [number = '', take = '', file = '', player = '', date = '', instrument = ''] = row.map(cellText);
      if (!/^\d+$/.test(number) || !/^\d+(?:-\d+)?$/.test(take)) throw new Error('no number');
      return {
        number,
        take,
        file,
        who: { player: player || null, date: date || null, instrument: instrument || null },
      };
    });
  } catch {
    throw new InputError('key-changed', { file: BLIND_KEY_FILE });
  }
}
