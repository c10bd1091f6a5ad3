import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Language } from '../../base/index.js';
import type { EngravedPart } from '../../engrave/index.js';
import { drawListeningRoom, type RoomPart, type RoomTake } from '../../report/index.js';
import { documentPath, type Etude, PAGES, SOUND } from '../../review/index.js';
import { readTake } from '../results/read-result.js';
import { readSoundFacts } from './read-sound-facts.js';

/** What a listening room is drawn from. */
export interface RoomSource {
  /** the folder for results */
  readonly folder: string;
  readonly etudes: readonly Etude[];
  /** one for each étude, null where it cannot be engraved */
  readonly engraved: readonly (EngravedPart | null)[];
  readonly language: Language;
}

/** Of the page, below the folder for results and below that of a player. */
export const ROOM_FILE = 'listen/index.html';

/**
 * Draws the room for some takes. Takes that were reviewed against another state of a score than the one that is known are left
 * out: their bars are not those of the page.
 *
 * @param source the folder, and the études
 * @param names of takes with results, in the order in which they are to be heard
 * @returns the page; null when nothing can be heard
 * @throws InputError when a result cannot be read
 */
export function drawRoom(source: RoomSource, names: readonly string[]): string | null {
  const takes = names
    .map((name) => roomTake(source.folder, name))
    .filter((take) => etudeOf(source, take) !== undefined);
  if (takes.every(({ sound }) => sound === null)) return null;
  const used = new Set(takes.map((take) => etudeOf(source, take)));
  return drawListeningRoom({
    language: source.language,
    blind: takes.some(({ result }) => result.take.blind === true),
    parts: source.etudes.flatMap((etude, i) => (used.has(etude) ? [roomPart(etude, source.engraved[i] ?? null)] : [])),
    takes,
  });
}

function etudeOf({ etudes }: RoomSource, { result }: RoomTake): Etude | undefined {
  return etudes.find(({ score }) => score.file === result.score.file && score.sha256 === result.score.sha256);
}

function roomPart({ part, brief, score }: Etude, engraved: EngravedPart | null): RoomPart {
  const [first] = part.tempos;
  const printed = first?.printed === true ? first.quarterBpm : null;
  return {
    file: score.file,
    part,
    engraved,
    targetBpm: brief === null ? printed : (brief.tempo?.quarterBpm ?? printed),
  };
}

function roomTake(folder: string, name: string): RoomTake {
  const facts = readSoundFacts(folder, name);
  const pages = documentPath(name, PAGES);
  return {
    name,
    result: readTake(folder, name),
    sound: facts === null ? null : addressOf(`sound/${name}.${SOUND.ending}`),
    facts,
    pages: existsSync(join(folder, pages)) ? addressOf(`../${pages}`) : null,
  };
}

/** Names may hold what means something else in an address. */
function addressOf(path: string): string {
  return path.split('/').map(encodeURIComponent).join('/');
}
