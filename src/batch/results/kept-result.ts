import { join } from 'node:path';
import { sha256 } from '../../base/index.js';
import { type DocumentWishes, documentPath, wantedDocuments } from '../../review/index.js';
import { LARGEST_DOCUMENT_BYTES, readWhole } from '../disk/read-whole.js';
import { type ReviewedEnd, readRecord, recordPath } from './take-record.js';

/** What a kept result must have been made with. */
export interface Wanted extends DocumentWishes {
  readonly outFolder: string;
  readonly dependsOn: string;
}

/**
 * Looks whether the result of an earlier run may stand: made from the same, its files whole and unchanged.
 *
 * @param name the take's name
 * @param wanted what the result must have been made with
 * @returns the content of the take it was made from, null when there is none that may stand
 */
export function keptResult(name: string, wanted: Wanted): string | null {
  const record = readRecord(recordPath(wanted.outFolder, name));
  if (record === null || record.name !== name || !('documents' in record.end)) return null;
  const { end } = record;
  const stands = end.dependsOn === wanted.dependsOn && holds(name, end, wanted);
  return stands ? end.takeSha256 : null;
}

/**
 * Whether every document that is wanted is there, made for what is wanted, and unchanged. Pages made for a run with a listening
 * room only lead into it: they stand where no room is asked for.
 */
function holds(name: string, { documents }: ReviewedEnd, wanted: Wanted): boolean {
  return wantedDocuments(wanted).every((document) => {
    const kept = documents.find(({ ending }) => ending === document.ending);
    if (kept === undefined || kept.sha256 !== hashOf(join(wanted.outFolder, documentPath(name, document))))
      return false;
    return [wanted, { ...wanted, listen: true }].some((wishes) => kept.madeFor === document.madeFor(wishes));
  });
}

function hashOf(path: string): string | null {
  try {
    return sha256(readWhole(path, LARGEST_DOCUMENT_BYTES));
  } catch {
    return null;
  }
}
