import type { Link } from '../page/index.js';
import type { ResultFinding } from '../result/index.js';
import { concernsWholeTake, type Words } from '../words/index.js';

/** The listening room, as a take's pages lead to it. */
export interface RoomPlace {
  /** address of the room, relative to the pages */
  readonly page: string;
  /** name of the take in it */
  readonly take: string;
}

/**
 * @param room where the take can be heard; undefined where it cannot
 * @param finding of the take
 * @param words in the language of the pages
 * @returns the way to the very bars in the room; undefined where there is no room
 */
export function roomLink(room: RoomPlace | undefined, finding: ResultFinding, words: Words): Link | undefined {
  if (room === undefined) return undefined;
  const { kind, bar, toBar, pass } = finding;
  const bars = {
    bar,
    ...(toBar === undefined || toBar === bar ? {} : { to: toBar }),
    ...(pass > 1 ? { pass: String(pass) } : {}),
  };
  const said = Object.entries({ ...(concernsWholeTake(kind) ? {} : bars), take: room.take });
  const asked = said.map(([name, value]) => `${name}=${encodeURIComponent(value)}`).join('&');
  return { address: `${room.page}#${asked}`, alternative: words.page.hearInRoom(words.place(finding)) };
}
