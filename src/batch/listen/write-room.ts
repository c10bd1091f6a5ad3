import { join } from 'node:path';
import type { Language } from '../../base/index.js';
import { engraveInThread } from '../../engrave/index.js';
import { writeWhole } from '../disk/write-whole.js';
import { failureOf } from '../failures/failure-of.js';
import type { TakeEnd, TakeFailure } from '../types.js';
import { drawRoom, ROOM_FILE, type RoomSource } from './draw-room.js';
import { keptEtudes } from './kept-scores.js';

/**
 * Writes the listening room for all takes of a section.
 *
 * @param ends how the takes ended, in the order of the section
 * @param source the folder for results, and the études; asked for last
 * @returns nothing, or one failure when the room could not be written
 */
export async function writeRoom(
  ends: readonly TakeEnd[],
  source: () => RoomSource | Promise<RoomSource>,
): Promise<TakeFailure[]> {
  const names = ends.flatMap((end) => ('row' in end ? [end.name] : []));
  try {
    const known = await source();
    const page = known.etudes.length === 0 ? null : drawRoom(known, names);
    if (page !== null) writeWhole(join(known.folder, ROOM_FILE), page);
    return [];
  } catch (error) {
    return [failureOf('listen', error)];
  }
}

/**
 * @param folder the folder for results
 * @param language of the page
 * @returns what a room can be drawn from without the files of the review: the scores kept beside the records, laid out anew
 * @throws InputError when a kept score cannot be read
 */
export async function keptRoomSource(folder: string, language: Language): Promise<RoomSource> {
  const etudes = keptEtudes(folder);
  const engraving = engraveInThread(etudes.map(({ musicXml = null }) => musicXml));
  try {
    return { folder, etudes, engraved: await engraving.parts, language };
  } finally {
    await engraving.stop();
  }
}
