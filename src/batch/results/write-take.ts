import { join } from 'node:path';
import { codeAsData, sha256 } from '../../base/index.js';
import type { PaperSize } from '../../page/index.js';
import { failureOf } from '../failure-of.js';
import { lossOf } from '../loss-of.js';
import type { PoolEnd } from '../pool/types.js';
import type { TakeAnswer } from '../review-in-worker.js';
import type { PlannedTake, TakeEnd, TakeFailure } from '../types.js';
import { writeWhole } from '../write-whole.js';
import { readResult } from './read-result.js';
import { writeRecord } from './take-record.js';

/** A take that failed. */
type FailedEnd = Extract<TakeEnd, { failure: unknown }>;

/** Where and how results are written. */
export interface Place {
  readonly outFolder: string;
  readonly jsonOnly: boolean;
  readonly paper: PaperSize;
}

/**
 * Writes what came of a take: pages, document, and last the record that says both are there. Never throws: what the disk
 * refuses is the take's own end.
 *
 * @param take the take
 * @param end what its worker answered, or how that was lost
 * @param dependsOn hash of what the result depends on
 * @param place where to write
 * @returns how the take ended
 *
 * Source: definition.
 */
export function writeTake(take: PlannedTake, end: PoolEnd<TakeAnswer>, dependsOn: string, place: Place): TakeEnd {
  try {
    if ('loss' in end) return failed(take, lossOf(take.file, end.loss), place);
    const { answer } = end;
    if (answer.how === 'failed') return failed(take, answer.failure, place);
    return answer.how === 'as-before' ? kept(take, place) : written(take, answer, dependsOn, place);
  } catch (error) {
    return { name: take.name, failure: failureOf(take.file, error), who: take.who };
  }
}

/**
 * Writes down that a take failed. Never throws: where that cannot be written the take has failed all the same.
 *
 * @param end how the take ended
 * @param place where to write
 * @returns the same
 *
 * Source: definition.
 */
export function writeFailure(end: FailedEnd, { outFolder }: Place): TakeEnd {
  try {
    const { file, code, fault } = end.failure;
    writeRecord(outFolder, end.name, { failure: { file, code, fault: codeAsData(fault) }, who: end.who });
  } catch {
    // The section's files will not be written either, and that is told.
  }
  return end;
}

function failed({ name, who }: PlannedTake, failure: TakeFailure, place: Place): TakeEnd {
  return writeFailure({ name, failure, who }, place);
}

function kept({ name }: PlannedTake, place: Place): TakeEnd {
  return { name, row: readResult(place.outFolder, name), report: reportOf(name, place), kept: true };
}

function written(
  { name }: PlannedTake,
  { json, pdf, html, sha256: takeSha256, row }: Extract<TakeAnswer, { how: 'reviewed' }>,
  dependsOn: string,
  place: Place,
): TakeEnd {
  const takes = join(place.outFolder, 'takes');
  if (pdf !== null) writeWhole(join(takes, `${name}.pdf`), pdf);
  if (html !== null) writeWhole(join(takes, `${name}.html`), html);
  writeWhole(join(takes, `${name}.json`), json);
  writeRecord(place.outFolder, name, {
    dependsOn,
    takeSha256,
    jsonSha256: sha256OfText(json),
    ...(html === null ? {} : { htmlSha256: sha256OfText(html) }),
    pdf: pdf === null ? null : { paper: place.paper, sha256: sha256(pdf) },
  });
  return { name, row, report: reportOf(name, place), kept: false };
}

const sha256OfText = (text: string): string => sha256(new TextEncoder().encode(text));

function reportOf(name: string, { jsonOnly }: Place): string {
  return `takes/${name}.${jsonOnly ? 'json' : 'pdf'}`;
}
