import { join } from 'node:path';
import { codeAsData, sha256 } from '../../base/index.js';
import type { SectionRow } from '../../result/index.js';
import { type DocumentWishes, documentPath, wantedDocuments } from '../../review/index.js';
import { writeWhole } from '../disk/write-whole.js';
import { failureOf } from '../failures/failure-of.js';
import { lossOf } from '../failures/loss-of.js';
import type { PoolEnd } from '../pool/types.js';
import type { PlannedTake, TakeEnd, TakeFailure } from '../types.js';
import { readResult } from './read-result.js';
import type { TakeAnswer, WorkerAnswer } from './review-in-worker.js';
import { readRecord, recordPath, writeRecord } from './take-record.js';

/** A take that failed. */
type FailedEnd = Extract<TakeEnd, { failure: unknown }>;

/** Where and how results are written. */
export interface Place extends DocumentWishes {
  readonly outFolder: string;
  /** whether names must not be known */
  readonly blind?: boolean;
}

/**
 * Writes what came of a take: its documents, and last the record that says they are there. Never throws: what the disk
 * refuses is the take's own end.
 *
 * @param take the take
 * @param end what its worker answered, or how that was lost
 * @param dependsOn hash of what the result depends on
 * @param place where to write
 * @returns how the take ended
 */
export function writeTake(take: PlannedTake, end: PoolEnd<WorkerAnswer>, dependsOn: string, place: Place): TakeEnd {
  try {
    if ('loss' in end) return failed(take, lossOf(take.file, end.loss), place);
    const { answer } = end;
    if (answer.how === 'drawn') throw new Error('a take was asked for, not a sheet');
    if (answer.how === 'failed') return failed(take, answer.failure, place);
    return answer.how === 'as-before' ? kept(take, place) : written(take, answer, dependsOn, place);
  } catch (error) {
    const { name, who, roster } = take;
    return { name, failure: failureOf(take.file, error), who, ...(roster === undefined ? {} : { roster }) };
  }
}

/**
 * Writes down that a take failed. Never throws: where that cannot be written the take has failed all the same.
 *
 * @param end how the take ended
 * @param place where to write
 * @returns the same
 */
export function writeFailure(end: FailedEnd, { outFolder, blind }: Place): TakeEnd {
  try {
    const { file, code, fault } = end.failure;
    const how = { failure: { file, code, fault: codeAsData(fault) }, who: end.who };
    writeRecord(outFolder, end.name, how, end.roster, readersOf(blind));
  } catch {
    // The section's files will not be written either, and that is told.
  }
  return end;
}

function failed({ name, who, roster }: PlannedTake, failure: TakeFailure, place: Place): TakeEnd {
  return writeFailure({ name, failure, who, ...(roster === undefined ? {} : { roster }) }, place);
}

const readersOf = (blind = false): 'all' | 'owner' => (blind ? 'owner' : 'all');

/** The result stands; what a roster says beside it may be new. */
function kept({ name, roster }: PlannedTake, place: Place): TakeEnd {
  const record = readRecord(recordPath(place.outFolder, name));
  if (record !== null && JSON.stringify(record.roster) !== JSON.stringify(roster)) {
    writeRecord(place.outFolder, name, record.end, roster, readersOf(place.blind));
  }
  const hash = record !== null && 'documents' in record.end ? record.end.takeSha256 : '';
  return {
    name,
    row: withRoster({ ...readResult(place.outFolder, name), sha256: hash }, roster),
    report: reportOf(name, place),
    kept: true,
  };
}

function withRoster(row: SectionRow, roster: PlannedTake['roster']): SectionRow {
  return roster === undefined ? row : { ...row, roster };
}

function written(
  { name, roster }: PlannedTake,
  { documents, sha256: takeSha256, row }: Extract<TakeAnswer, { how: 'reviewed' }>,
  dependsOn: string,
  place: Place,
): TakeEnd {
  for (const document of documents) writeWhole(join(place.outFolder, documentPath(name, document)), document.bytes);
  const written = documents.map(({ ending, bytes, madeFor }) => ({ ending, sha256: sha256(bytes), madeFor }));
  writeRecord(place.outFolder, name, { dependsOn, takeSha256, documents: written }, roster, readersOf(place.blind));
  return { name, row: withRoster({ ...row, sha256: takeSha256 }, roster), report: reportOf(name, place), kept: false };
}

/**
 * @param name the take's name
 * @param wishes what is wanted of each take
 * @returns path, below the folder for results, of the document that is named on standard output
 */
export function reportOf(name: string, wishes: DocumentWishes): string {
  const [first] = wantedDocuments(wishes);
  if (first === undefined) throw new Error('nothing is written for a take');
  return documentPath(name, first);
}
