import { basename, dirname, extname } from 'node:path';
import { InputError } from '../../base/index.js';
import type { SectionRecord } from '../../result/index.js';
import { type KeptResult, keepResult, type LostTake } from '../../weeks/index.js';
import { LARGEST_RESULT_BYTES, readWhole } from '../disk/read-whole.js';
import { failureOf } from '../failures/failure-of.js';
import { playerAndDate } from '../plan/player-and-date.js';
import type { TakeFailure } from '../types.js';
import { type FoundDocument, findDocuments } from './find-documents.js';
import { failureTold } from './old-sentences/failure-told.js';
import { readDocument } from './read-document.js';

/** All that the record says. */
export interface History {
  /** in code point order of their files */
  readonly results: readonly KeptResult[];
  readonly lost: readonly LostTake[];
  /** files that could not be read */
  readonly failures: readonly TakeFailure[];
}

/**
 * Reads every result under the paths given, one at a time, and keeps what is followed over weeks. A file that cannot be
 * read is one failure, and the others are read all the same.
 *
 * @param inputs files and folders as the user gave them
 * @returns results, takes that were lost when they were reviewed, and files that could not be read now
 */
export function readHistory(inputs: readonly string[]): History {
  const found = findDocuments(inputs);
  const results: KeptResult[] = [];
  const lost: LostTake[] = [];
  const failures = [...found.failures];
  for (const document of found.documents) {
    try {
      const read = readDocument(readWhole(document.path, LARGEST_RESULT_BYTES));
      if (read === null) refuseIfNamed(document);
      else if (read.kind === 'take')
        results.push(keepResult({ file: document.file, result: read.result, place: dirname(dirname(document.path)) }));
      else lost.push(...lostIn(read.section, dirname(document.path)));
    } catch (error) {
      failures.push(failureOf(document.file, error));
    }
  }
  return { results, lost, failures };
}

function refuseIfNamed({ named }: FoundDocument): void {
  if (!named) return;
  throw new InputError('result-of-others');
}

function lostIn({ failures, score }: SectionRecord, place: string): LostTake[] {
  return failures.map(({ file, message, fault, player, date }) => {
    const named = playerAndDate(basename(file, extname(file)));
    const who = { player: player ?? named.player, date: date ?? named.date };
    return { file, fault: failureTold({ fault, message }), place, scoreSha256: score?.sha256 ?? '', ...who };
  });
}
