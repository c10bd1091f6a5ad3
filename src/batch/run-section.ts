import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { agreedLanguage, byCodePoint, type Language } from '../base/index.js';
import { sameRecordings } from '../result/index.js';
import type { DocumentWishes, Tool } from '../review/index.js';
import { failureOf } from './failures/failure-of.js';
import { growSlowly } from './grow-slowly.js';
import { failureTold } from './history/old-sentences/failure-told.js';
import { keptRoomSource, writeRoom } from './listen/write-room.js';
import { openResults, takesWithResults } from './results/open-results.js';
import { readResult } from './results/read-result.js';
import { RECORDS, readRecord, recordPath } from './results/take-record.js';
import { reportOf } from './results/write-take.js';
import type { ReviewSummary, TakeEnd } from './types.js';
import { writeSection } from './write-section.js';

/** What is asked of the results in a folder. */
export interface FolderRequest extends DocumentWishes {
  readonly tool: Tool;
  /** a folder that `review` has written to, or several of them copied into one */
  readonly outFolder: string;
  /** of the section's files; that of the results when it is left out and they agree, else English */
  readonly language?: Language | undefined;
}

const NOBODY = { player: null, date: null, instrument: null };

/**
 * Makes the section's files anew from all results of takes in a folder, reading one at a time. A take that failed when it
 * was last reviewed counts as failed, also where an older result of it still lies there.
 *
 * @param request the folder, and what to write
 * @returns how every take had ended
 * @throws InputError when there is no result in the folder, or it cannot be written to
 */
export async function runSection(request: FolderRequest): Promise<ReviewSummary> {
  growSlowly();
  const { outFolder } = request;
  const lost = failuresIn(outFolder);
  const failed = new Set(lost.map(({ name }) => name));
  const names = takesWithResults(outFolder);
  openResults(outFolder);
  const read = names.filter((name) => !failed.has(name)).map((name) => endOf(request, name));
  const ends = [...read, ...lost].sort((a, b) => byCodePoint(a.name, b.name));
  const same = sameRecordings(ends.flatMap((end) => ('row' in end ? [end.row] : [])));
  const remarks = { leftAlone: [], rosterLinesUnused: [], same };
  const language = request.language ?? agreedLanguage(ends.flatMap((end) => ('row' in end ? [end.row.language] : [])));
  const failures = [
    ...(await writeSection(ends, { ...request, language })),
    ...(request.jsonOnly ? [] : await writeRoom(ends, () => keptRoomSource(outFolder, language))),
  ];
  return { ends, failures, notReached: 0, remarks };
}

function endOf(request: FolderRequest, name: string): TakeEnd {
  try {
    const record = readRecord(recordPath(request.outFolder, name));
    const { roster } = record ?? {};
    const read = readResult(request.outFolder, name);
    // A result without names does not say which recording it is of; the record beside it does.
    const hash = record !== null && 'documents' in record.end ? record.end.takeSha256 : '';
    const row = { ...read, sha256: read.sha256 || hash };
    return {
      name,
      row: { ...row, ...(roster === undefined ? {} : { roster }) },
      report: reportOf(name, request),
      kept: true,
    };
  } catch (error) {
    return { name, failure: failureOf(`takes/${name}.json`, error), who: NOBODY };
  }
}

function failuresIn(outFolder: string): Extract<TakeEnd, { failure: unknown }>[] {
  let files: string[] = [];
  try {
    files = readdirSync(join(outFolder, RECORDS));
  } catch {
    return [];
  }
  return files.flatMap((file) => {
    const record = readRecord(join(outFolder, RECORDS, file));
    if (record === null || !('failure' in record.end)) return [];
    const { failure, who } = record.end;
    return [
      {
        name: record.name,
        failure: { ...failure, fault: failureTold(failure) },
        who,
        ...(record.roster === undefined ? {} : { roster: record.roster }),
      },
    ];
  });
}
