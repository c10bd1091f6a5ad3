import type { Listening } from './listening.js';
import { byId } from './room.js';

/**
 * The bars as written, as played, and both before one's own turn.
 *
 * @param listening what can be heard
 */
export function practise(listening: Listening): void {
  const click = (): boolean => byId<HTMLInputElement>('click').checked;
  byId('written').addEventListener('click', () => listening.playModel({ click: click(), yourTurn: false }));
  byId('played').addEventListener('click', () => listening.hear());
  byId('in-turn').addEventListener('click', () => listening.inTurn(click()));
}
