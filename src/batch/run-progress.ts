import { existsSync, statSync } from 'node:fs';
import { dirname, extname, join, resolve } from 'node:path';
import { agreedLanguage, InputError, type Language } from '../base/index.js';
import type { PaperSize } from '../page/index.js';
import { drawProgressSheet } from '../report/index.js';
import { jsonPieces } from '../result/index.js';
import type { Tool } from '../review/index.js';
import { pageDate } from '../review/index.js';
import {
  type ProgressInParts,
  type ProgressSheet,
  progressDocument,
  progressInParts,
  progressSheets,
} from '../weeks/index.js';
import { namingFile } from './disk/naming-file.js';
import { numberedPath } from './disk/numbered-path.js';
import { writeWhole } from './disk/write-whole.js';
import { growSlowly } from './grow-slowly.js';
import { type History, readHistory } from './history/read-history.js';
import type { TakeFailure } from './types.js';

/** What a comparison over weeks is asked for. Paths are as the user gave them. */
export interface ProgressRequest {
  readonly tool: Tool;
  /** folders and files with results */
  readonly inputs: readonly string[];
  /** file or folder; in the first folder given when it is undefined */
  readonly out?: string | undefined;
  readonly format: 'pdf' | 'json';
  readonly paper: PaperSize;
  /** of the sheet; that of the results when it is left out and they agree, else English */
  readonly language?: Language | undefined;
}

/**
 * A sheet holds pages for each player and is made in memory, about a megabyte a player; what is beyond goes on in another
 * file. Source: measured, see tests/bench/README.md.
 */
const MOST_PLAYERS_ON_A_SHEET = 150;

/** What was written. */
export interface ProgressSummary {
  /** at least one; several where there are more players than one sheet holds */
  readonly sheetPaths: readonly string[];
  /** results that could not be read */
  readonly failures: readonly TakeFailure[];
  /** folders of results with numbers instead of names in which nobody can be followed */
  readonly blindApart: readonly string[];
  /** results of which nobody knows who played or when */
  readonly notFollowed: readonly string[];
}

/**
 * Compares results of several weeks and writes the sheet, or several where one would be too large.
 *
 * @param request which results, where to write and how
 * @returns what was written, and what could not be read
 * @throws InputError when there is no result at all or nothing can be written; then nothing has been written
 */
export async function runProgress(request: ProgressRequest): Promise<ProgressSummary> {
  growSlowly();
  const history = readHistory(request.inputs);
  if (history.results.length === 0) throw nothingToCompare(request.inputs, history);
  const language = request.language ?? agreedLanguage(history.results.map(({ result }) => result.language));
  const progress = progressInParts({ tool: request.tool, language, ...history, failures: [...history.failures] });
  const { blind, unplaced } = progress.about;
  const blindApart = blind?.apart ?? [];
  const isFollowed = progress.pieces.some(({ count }) => count > 0);
  if (!isFollowed && blindApart.length > 0) throw new InputError('nobody-to-follow', { folders: blindApart });
  const sheetPath = placeOf(request);
  if (request.inputs.some((input) => resolve(input) === resolve(sheetPath))) {
    throw new InputError('sheet-over-result').about(sheetPath);
  }
  const sheetPaths = await (request.format === 'json' ? writeData : writePages)(progress, sheetPath, request.paper);
  const notFollowed = (blind === undefined ? unplaced : []).flatMap(({ file, player, date }) =>
    player === null || date === null ? [file] : [],
  );
  return { sheetPaths, failures: history.failures, blindApart, notFollowed };
}

async function writeData(progress: ProgressInParts, path: string): Promise<string[]> {
  namingFile(path, () => writeWhole(path, jsonPieces(progressDocument(progress))));
  return [path];
}

/** One sheet is in memory at a time. The second is called like the first, with `-2` before the ending. */
async function writePages(progress: ProgressInParts, path: string, paper: PaperSize): Promise<string[]> {
  const paths: string[] = [];
  for (const sheet of progressSheets(progress, MOST_PLAYERS_ON_A_SHEET)) {
    const here = numberedPath(path, sheet.sheet);
    const bytes = await drawProgressSheet({ ...sheet, paper, creationDate: pageDate(daysIn(sheet)) });
    namingFile(here, () => writeWhole(here, bytes));
    paths.push(here);
  }
  return paths;
}

const daysIn = ({ progress }: ProgressSheet): string[] =>
  progress.pieces.flatMap(({ players }) => players.flatMap(({ days }) => days.map(({ date }) => date)));

function nothingToCompare(inputs: readonly string[], { failures }: History): InputError {
  const [first] = failures;
  if (first === undefined) return new InputError('no-result-found', { inputs });
  const { file, fault } = first;
  return new InputError('no-result-readable', { file, failure: fault, more: failures.length - 1 });
}

/** A name with the ending of the format is a file, any other a folder. */
function placeOf({ inputs, out, format }: ProgressRequest): string {
  const name = `progress.${format}`;
  const isFolder = (path: string) => existsSync(path) && statSync(path).isDirectory();
  if (out !== undefined) return !isFolder(out) && extname(out).toLowerCase() === `.${format}` ? out : join(out, name);
  const first = inputs[0] ?? '';
  return join(isFolder(first) ? first : dirname(first), name);
}
