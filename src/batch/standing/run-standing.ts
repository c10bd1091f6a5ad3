import { join } from 'node:path';
import { agreedLanguage, InputError, type Language } from '../../base/index.js';
import type { PaperSize } from '../../page/index.js';
import { drawPanelSheet, drawStanding } from '../../report/index.js';
import { type PanelMark, standingCsv, standingRow, toJson, toStanding } from '../../result/index.js';
import { pageDate, type Tool } from '../../review/index.js';
import { namingFile } from '../disk/naming-file.js';
import { readWhole } from '../disk/read-whole.js';
import { writeWhole } from '../disk/write-whole.js';
import { openResults, takesWithResults } from '../results/open-results.js';
import { readTake } from '../results/read-result.js';
import { readMarks } from './read-marks.js';

const LARGEST_MARKS_BYTES = 2 ** 24;

/** What a table is asked for. Paths are as the user gave them. */
export interface StandingRequest {
  readonly tool: Tool;
  /** a folder that `review` has written to with a brief */
  readonly outFolder: string;
  readonly chairs: number | null;
  /** CSV with the panel's marks */
  readonly marksPath?: string | undefined;
  readonly paper: PaperSize;
  /** that of the results when it is left out and they agree, else English */
  readonly language?: Language | undefined;
}

/** What was written. */
export interface StandingSummary {
  /** below the working folder, as the folder was given */
  readonly files: readonly string[];
  /** takes of the panel's marks that are not among the results */
  readonly unknown: readonly string[];
}

/**
 * Writes the table a director needs of a folder of results, as pages, CSV and JSON, and a blank sheet for the panel.
 *
 * @param request the folder, chairs and marks
 * @returns what was written
 * @throws InputError when there are no results with points, the marks cannot be read, or nothing can be written
 */
export async function runStanding(request: StandingRequest): Promise<StandingSummary> {
  const { outFolder, marksPath, tool, chairs, paper } = request;
  const names = takesWithResults(outFolder);
  const marks = marksPath === undefined ? [] : marksIn(marksPath);
  const languages: Language[] = [];
  const rows = names.map((name) => {
    const result = readTake(outFolder, name);
    languages.push(result.language ?? 'en');
    return standingRow(name, result);
  });
  if (rows.every(({ criteria }) => criteria.length === 0))
    throw new InputError('results-without-points').about(outFolder);
  openResults(outFolder);
  const language = request.language ?? agreedLanguage(languages);
  const standing = toStanding({ tool, rows, marks, chairs, language });
  const creationDate = pageDate(standing.groups.flatMap(({ takes }) => takes.map(({ date }) => date)));
  const contents = {
    'standing.pdf': await drawStanding({ standing, paper, creationDate }),
    'standing.csv': standingCsv(standing),
    'standing.json': toJson(standing),
    'panel-sheet.pdf': await drawPanelSheet({ standing, paper, creationDate }),
  };
  const files = Object.entries(contents).map(([file, content]) => {
    const path = join(outFolder, file);
    namingFile(path, () => writeWhole(path, content));
    return path;
  });
  return { files, unknown: standing.unknown };
}

function marksIn(path: string): PanelMark[] {
  return namingFile(path, () => readMarks(readWhole(path, LARGEST_MARKS_BYTES)));
}
