import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { sha256 } from '../../base/index.js';
import type { PaperSize } from '../../page/index.js';
import { type ReviewedEnd, readRecord, recordPath } from './take-record.js';

/** What a kept result must have been made with. */
export interface Wanted {
  readonly outFolder: string;
  readonly dependsOn: string;
  readonly jsonOnly: boolean;
  /** whether pages to listen to are wanted as well */
  readonly listen: boolean;
  readonly paper: PaperSize;
}

/**
 * Looks whether the result of an earlier run may stand: made from the same, its files whole and unchanged.
 *
 * @param name the take's name
 * @param wanted what the result must have been made with
 * @returns the content of the take it was made from, null when there is none that may stand
 *
 * Source: definition.
 */
export function keptResult(name: string, wanted: Wanted): string | null {
  const record = readRecord(recordPath(wanted.outFolder, name));
  if (record === null || record.name !== name || !('jsonSha256' in record.end)) return null;
  const { end } = record;
  const stands = end.dependsOn === wanted.dependsOn && holds(name, end, wanted);
  return stands ? end.takeSha256 : null;
}

function holds(name: string, end: ReviewedEnd, { outFolder, jsonOnly, listen, paper }: Wanted): boolean {
  const hashOf = (ending: string): string | null => {
    try {
      return sha256(readFileSync(join(outFolder, 'takes', `${name}.${ending}`)));
    } catch {
      return null;
    }
  };
  if (hashOf('json') !== end.jsonSha256) return false;
  if (listen && (end.htmlSha256 === undefined || hashOf('html') !== end.htmlSha256)) return false;
  return jsonOnly || (end.pdf !== null && end.pdf.paper === paper && hashOf('pdf') === end.pdf.sha256);
}
