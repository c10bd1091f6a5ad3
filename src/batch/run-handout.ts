import { existsSync, lstatSync } from 'node:fs';
import { basename, join } from 'node:path';
import { agreedLanguage, InputError, type Language } from '../base/index.js';
import { gatherPdfs } from '../page/index.js';
import { drawHandoutIndex, type HandoutRow } from '../report/index.js';
import { csvText, type SectionRow, textCell } from '../result/index.js';
import { PAGES, pageDate } from '../review/index.js';
import { wordsIn } from '../words/index.js';
import { sheetsThere } from './disk/numbered-path.js';
import { LARGEST_DOCUMENT_BYTES, readWhole } from './disk/read-whole.js';
import { writeWhole } from './disk/write-whole.js';
import { failureOf } from './failures/failure-of.js';
import { type ChosenTake, chosenTakes } from './handout/chosen-takes.js';
import { folderNames } from './handout/folder-names.js';
import { mailOf } from './handout/mail-of.js';
import { writeRooms } from './handout/write-rooms.js';
import { ROOM_FILE } from './listen/draw-room.js';
import { takesWithResults } from './results/open-results.js';
import { readResult } from './results/read-result.js';
import { readRecord, recordPath } from './results/take-record.js';
import type { TakeFailure } from './types.js';

/** What is to be handed out. Paths are as the user gave them. */
export interface HandoutRequest {
  /** a folder that `review` has written to */
  readonly folder: string;
  /** where to write; below the folder when it is undefined */
  readonly out?: string | undefined;
  /** every take, not only the latest of each player */
  readonly all: boolean;
  /** of the page over everything and of subjects; that of the results when it is left out and they agree, else English */
  readonly language?: Language | undefined;
}

/** What was written. */
export interface HandoutSummary {
  readonly indexPath: string;
  readonly printPath: string;
  readonly mailPath: string;
  /** takes that are not handed out, with the reason */
  readonly failures: readonly TakeFailure[];
}

const OUT = 'handout';
const PLAYERS = 'players';
const FILES = { index: 'index.html', print: 'print.pdf', mail: 'mail.csv', section: 'section.pdf' } as const;
const MAIL_HEADS = ['player', 'mail', 'date', 'file', 'listening_page', 'subject'];

/** A take with what is handed out of it. */
interface HandedTake extends ChosenTake {
  readonly pages: Uint8Array;
  readonly mail: string;
}

/**
 * Makes what a director hands out of the results in a folder: a folder for each player, with a listening room of their own, one document to print, a page over
 * everything and a table for mail merge. Nothing is listened to, and nothing is sent.
 *
 * @param request the folder, where to write, and which takes
 * @returns what was written, and which takes are missing from it
 * @throws InputError when there is nothing to hand out, or it cannot be written
 */
export async function runHandout(request: HandoutRequest): Promise<HandoutSummary> {
  const { folder, out = join(folder, OUT) } = request;
  const { rows, failures } = rowsIn(folder);
  const taken = chosenTakes(rows, request.all).map((take) => handed(folder, take));
  const takes = taken.filter((take): take is HandedTake => 'pages' in take);
  if (takes.length === 0) throw new InputError('nothing-to-hand-out').about(folder);
  if (isLink(join(out, PLAYERS))) throw new InputError('folder-leads-away', { folder: PLAYERS }).about(out);
  const language = request.language ?? agreedLanguage(takes.map(({ row }) => row.language));
  const folders = folderNames([...new Set(takes.map(({ player }) => player))]);
  const rooms = await writeRooms(takes, {
    ...{ folder, language },
    folderOf: (player) => join(out, PLAYERS, folders.get(player) as string),
  });
  const written = { folder, out, language, folders, rooms: rooms.players };
  await writeHandout(takes, written);
  return {
    indexPath: join(out, FILES.index),
    printPath: join(out, FILES.print),
    mailPath: join(out, FILES.mail),
    failures: [...failures, ...taken.filter((take): take is TakeFailure => 'fault' in take), ...rooms.failures],
  };
}

function rowsIn(folder: string): { rows: SectionRow[]; failures: TakeFailure[] } {
  const rows: SectionRow[] = [];
  const failures: TakeFailure[] = [];
  for (const name of takesWithResults(folder)) {
    try {
      rows.push(readResult(folder, name));
    } catch (error) {
      failures.push(failureOf(`takes/${name}.json`, error));
    }
  }
  return { rows, failures };
}

function handed(folder: string, take: ChosenTake): HandedTake | TakeFailure {
  const { name } = take.row.take;
  const place = join(folder, 'takes', `${name}.pdf`);
  try {
    if (!existsSync(place)) throw new InputError('take-without-pages');
    return {
      ...take,
      pages: readWhole(place, LARGEST_DOCUMENT_BYTES),
      mail: mailOf(readRecord(recordPath(folder, name))?.roster ?? {}),
    };
  } catch (error) {
    return failureOf(`takes/${name}.pdf`, error);
  }
}

/** Where to write, and who has a room of their own. */
interface Written {
  readonly folder: string;
  readonly out: string;
  readonly language: Language;
  readonly folders: ReadonlyMap<string, string>;
  readonly rooms: ReadonlySet<string>;
}

/** Pages lead into the room beside the folder they are in: where there is one, they keep to that arrangement. */
async function writeHandout(
  takes: readonly HandedTake[],
  { folder, out, language, folders, rooms }: Written,
): Promise<void> {
  const words = wordsIn(language);
  const titleOf = ({ row }: HandedTake): string => row.score.title || row.score.file;
  const below = (player: string, path: string): string => `${PLAYERS}/${folders.get(player)}/${path}`;
  const pagesOf = ({ player, row }: HandedTake): string => {
    const file = `${row.take.name}.${PAGES.ending}`;
    return below(player, rooms.has(player) ? `${PAGES.folder}/${file}` : file);
  };
  for (const take of takes) writeWhole(join(out, pagesOf(take)), take.pages);
  const documents = takes.map((take) => ({ title: `${take.player} – ${titleOf(take)}`, bytes: take.pages }));
  const creationDate = pageDate(takes.map(({ row }) => row.take.date));
  const print = await gatherPdfs(documents, { title: words.handout.printTitle, language, creationDate });
  writeWhole(join(out, FILES.print), print.bytes);
  const rows = takes.map((take): HandoutRow => {
    const { toFix, toWatch, take: line } = take.row;
    return {
      ...{ player: take.player, piece: titleOf(take), date: line.date, pages: pagesOf(take) },
      listen: rooms.has(take.player) ? { file: below(take.player, ROOM_FILE), take: line.name } : null,
      found: line.outcome === 'reviewed' ? { fix: toFix, watch: toWatch } : null,
    };
  });
  const mails = rows.map(({ player, piece, date, pages, listen }, i) =>
    [
      ...[player, takes[i]?.mail ?? '', date ?? '', pages, listen?.file ?? ''],
      words.handout.subject(piece, date === null ? null : words.date(date)),
    ].map(textCell),
  );
  writeWhole(join(out, FILES.mail), csvText([MAIL_HEADS, ...mails]));
  const section = sheetsThere(join(folder, FILES.section));
  for (const sheet of section) writeWhole(join(out, basename(sheet)), readWhole(sheet, LARGEST_DOCUMENT_BYTES));
  const { print: printFile, mail, index } = FILES;
  const page = drawHandoutIndex({
    ...{ language, print: printFile, sheets: print.sheets, mail, rows },
    section: section.map((sheet) => basename(sheet)),
  });
  writeWhole(join(out, index), page);
}

function isLink(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true;
}
