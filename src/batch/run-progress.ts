import { existsSync, statSync } from 'node:fs';
import { dirname, extname, join, resolve } from 'node:path';
import { agreedLanguage, InputError, type Language } from '../base/index.js';
import type { PaperSize } from '../page/index.js';
import { drawProgressSheet } from '../report/index.js';
import { toJson } from '../result/index.js';
import type { Tool } from '../review/index.js';
import { pageDate } from '../review/index.js';
import { type ProgressResult, toProgressResult } from '../weeks/index.js';
import { namingFile } from './disk/naming-file.js';
import { writeWhole } from './disk/write-whole.js';
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
 * The pages hold a block for each player and are made in memory, about a megabyte a player. Source: measured, see
 * tests/bench/README.md.
 */
const MOST_PLAYERS_ON_PAGES = 1000;

/** What was written. */
export interface ProgressSummary {
  readonly sheetPath: string;
  /** results that could not be read */
  readonly failures: readonly TakeFailure[];
  /** folders of results with numbers instead of names in which nobody can be followed */
  readonly blindApart: readonly string[];
  /** results of which nobody knows who played or when */
  readonly notFollowed: readonly string[];
  /** how many players there are when pages were asked for and would not fit into memory: data were written instead */
  readonly tooManyForPages: number | null;
}

/**
 * Compares results of several weeks and writes the sheet.
 *
 * @param request which results, where to write and how
 * @returns what was written, and what could not be read
 * @throws InputError when there is no result at all or nothing can be written; then nothing has been written
 */
export async function runProgress(request: ProgressRequest): Promise<ProgressSummary> {
  const history = readHistory(request.inputs);
  if (history.results.length === 0) throw nothingToCompare(request.inputs, history);
  const language = request.language ?? agreedLanguage(history.results.map(({ result }) => result.language ?? 'en'));
  const progress = toProgressResult({ tool: request.tool, language, ...history, failures: [...history.failures] });
  const players = progress.pieces.reduce((sum, etude) => sum + etude.players.length, 0);
  const blindApart = progress.blind?.apart ?? [];
  if (players === 0 && blindApart.length > 0) throw new InputError('nobody-to-follow', { folders: blindApart });
  const tooMany = request.format === 'pdf' && players > MOST_PLAYERS_ON_PAGES;
  const format = tooMany ? 'json' : request.format;
  const sheetPath = tooMany ? placeOf(request).replace(/\.pdf$/i, '.json') : placeOf(request);
  if (request.inputs.some((input) => resolve(input) === resolve(sheetPath))) {
    throw new InputError('sheet-over-result').about(sheetPath);
  }
  const content = format === 'json' ? toJson(progress) : await pagesOf(progress, request.paper);
  namingFile(sheetPath, () => writeWhole(sheetPath, content));
  const notFollowed = (progress.blind === undefined ? progress.unplaced : []).flatMap(({ file, player, date }) =>
    player === null || date === null ? [file] : [],
  );
  return { sheetPath, failures: history.failures, blindApart, notFollowed, tooManyForPages: tooMany ? players : null };
}

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

function pagesOf(progress: ProgressResult, paper: PaperSize): Promise<Uint8Array> {
  const days = progress.pieces.flatMap(({ players }) =>
    players.flatMap((player) => player.days.map(({ date }) => date)),
  );
  return drawProgressSheet({ progress, paper, creationDate: pageDate(days) });
}
