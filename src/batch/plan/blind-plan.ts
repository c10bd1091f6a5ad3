import { extname } from 'node:path';
import { byCodePoint, sha256 } from '../../base/index.js';
import { refuseOverAnHour } from '../../decode/index.js';
import { LONGEST_TAKE_BYTES, readWhole } from '../disk/read-whole.js';
import type { FoundTake } from '../types.js';
import type { KeyLine } from './blind-key.js';
import { numberTakes } from './number-takes.js';
import type { Plan } from './plan-takes.js';
import { RECORDING_ENDINGS } from './recording-endings.js';

/** A plan in which nobody is named, and the key to it. */
export interface BlindPlan {
  readonly plan: Plan;
  readonly key: readonly KeyLine[];
}

/**
 * Puts numbers in place of players, take names and file names. The order of new numbers follows from what the files hold,
 * which nobody knows by the names alone.
 *
 * @param plan the plan with names
 * @param before the key of earlier runs
 * @returns the plan without names, in code point order of the numbers, and the key
 *
 * SHA-256 (FIPS 180-4) of a file's content decides the order.
 */
export function blindPlan(plan: Plan, before: readonly KeyLine[]): BlindPlan {
  const key = numberTakes([...plan.takes, ...plan.lost], before, contentHash);
  const lineOf = new Map(key.map((line) => [line.file, line]));
  const numbered = (file: string): { name: string; shown: string; number: string } => {
    const { take, number } = lineOf.get(file) as KeyLine;
    return { name: take, number, shown: `${take}${endingOf(file)}` };
  };
  // further columns of a roster may say who it is
  const takes = plan.takes.map(({ roster: _, ...take }) => {
    const { name, shown, number } = numbered(take.file);
    return { ...take, blind: true, name, file: shown, shownAs: shown, who: { ...take.who, player: number } };
  });
  const lost = plan.lost.map(({ roster: _, ...one }) => {
    const { shown, number } = numbered(one.file);
    const failure = { ...one.failure, file: shown };
    return { ...one, name: shown, file: shown, failure, who: { ...one.who, player: number } };
  });
  takes.sort((a, b) => byCodePoint(a.name, b.name));
  lost.sort((a, b) => byCodePoint(a.name, b.name));
  const unrecognised = plan.unrecognised?.map((file) => numbered(file).shown) ?? null;
  return { plan: { ...plan, takes, lost, unrecognised }, key };
}

/** What stands after a dot may be somebody's name, unless it is the ending of recordings. */
function endingOf(file: string): string {
  const ending = extname(file).toLowerCase();
  return RECORDING_ENDINGS.has(ending) ? ending : '';
}

/** Of the file's content; of its name where it cannot be read. */
function contentHash({ path, file }: FoundTake): string {
  try {
    return sha256(readWhole(path, LONGEST_TAKE_BYTES, refuseOverAnHour));
  } catch {
    return sha256(new TextEncoder().encode(file));
  }
}
