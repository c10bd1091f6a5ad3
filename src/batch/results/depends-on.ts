import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { byCodePoint, type Language, sha256 } from '../../base/index.js';
import type { Etude, Tool } from '../../review/index.js';
import type { PlannedTake } from '../types.js';

/** Built, the program is gathered in few files in one folder; otherwise this file stands where its source does. */
const IS_GATHERED = !import.meta.url.includes('/batch/results/');

/**
 * A hash of everything a take's result depends on, but for the take's own content and the paper: the program, the
 * études it may be of with their briefs, the language, and what is known of who played.
 *
 * @param take the take
 * @param etudes all études
 * @param language of what is told
 * @param program the program's own hash, see {@link programHash}
 * @returns SHA-256, hexadecimal
 */
export function dependsOn(take: PlannedTake, etudes: readonly Etude[], language: Language, program: string): string {
  const meant = take.etudes.map((place) => etudes[place]).map((etude) => [etude?.score, etude?.brief]);
  const { player, date, instrument } = take.who;
  return hashOf([program, take.shownAs, player, date, instrument, language, meant]);
}

/**
 * A hash of the program: its name, its version and its code, so that results of another state of it are made anew.
 *
 * @param tool name and version
 * @returns SHA-256, hexadecimal
 */
export function programHash(tool: Tool): string {
  const house = fileURLToPath(new URL(IS_GATHERED ? '.' : '../..', import.meta.url));
  const files = readdirSync(house, { recursive: true, encoding: 'utf8' }).filter((file) => /\.[jt]s$/.test(file));
  const code = files.sort(byCodePoint).map((file) => sha256(readFileSync(join(house, file))));
  return hashOf([tool.name, tool.version, code]);
}

function hashOf(values: readonly unknown[]): string {
  return sha256(new TextEncoder().encode(JSON.stringify(values)));
}
