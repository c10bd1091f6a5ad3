import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { groupBy, type Language } from '../../base/index.js';
import { documentPath, SOUND } from '../../review/index.js';
import { LARGEST_DOCUMENT_BYTES, readWhole } from '../disk/read-whole.js';
import { writeWhole } from '../disk/write-whole.js';
import { failureOf } from '../failures/failure-of.js';
import { drawRoom, ROOM_FILE, type RoomSource } from '../listen/draw-room.js';
import { keptRoomSource } from '../listen/write-room.js';
import type { TakeFailure } from '../types.js';
import type { ChosenTake } from './chosen-takes.js';

/** Where results are, and where players' folders go. */
interface Places {
  readonly folder: string;
  readonly language: Language;
  readonly folderOf: (player: string) => string;
}

/** Who got a room. */
interface WrittenRooms {
  readonly players: ReadonlySet<string>;
  readonly failures: readonly TakeFailure[];
}

/**
 * Gives each player a listening room with their own takes alone, where the folder for results has one.
 *
 * @param takes that are handed out, those of one player one after the other
 * @param places where to read and to write
 * @returns players whose takes can be heard in a room of their own, and rooms that could not be written
 */
export async function writeRooms(takes: readonly ChosenTake[], places: Places): Promise<WrittenRooms> {
  const { folder, language } = places;
  if (!existsSync(join(folder, ROOM_FILE))) return { players: new Set(), failures: [] };
  try {
    const source = await keptRoomSource(folder, language);
    const ends = [...groupBy(takes, ({ player }) => player)].map(([player, own]) =>
      writeRoomOf(player, own, source, places),
    );
    return {
      players: new Set(ends.flatMap((end) => (typeof end === 'string' ? [end] : []))),
      failures: ends.flatMap((end) => (end === null || typeof end === 'string' ? [] : [end])),
    };
  } catch (error) {
    return { players: new Set(), failures: [failureOf(ROOM_FILE, error)] };
  }
}

/** @returns the player; null where nothing can be heard of them */
function writeRoomOf(
  player: string,
  takes: readonly ChosenTake[],
  source: RoomSource,
  { folder, folderOf }: Places,
): string | TakeFailure | null {
  try {
    const names = takes.map(({ row }) => row.take.name);
    const page = drawRoom(source, names);
    if (page === null) return null;
    for (const path of names.map((name) => documentPath(name, SOUND))) {
      if (!existsSync(join(folder, path))) continue;
      writeWhole(join(folderOf(player), path), readWhole(join(folder, path), LARGEST_DOCUMENT_BYTES));
    }
    writeWhole(join(folderOf(player), ROOM_FILE), page);
    return player;
  } catch (error) {
    return failureOf(ROOM_FILE, error);
  }
}
