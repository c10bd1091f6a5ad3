import type { Days } from './days.js';
import type { Listening } from './listening.js';
import type { PartView } from './part-view.js';
import type { Room } from './room.js';
import type { Round } from './round.js';
import type { Transport } from './transport.js';

const RATES: Readonly<Record<string, number>> = { '1': 1, '2': 0.75, '3': 0.5 };

/** What keys act on. */
export interface Hands {
  readonly room: Room;
  readonly listening: Listening;
  readonly transport: Transport;
  readonly part: () => PartView | null;
  readonly round: Round | null;
  readonly days: Days | null;
}

/**
 * The keyboard. Keys with a letter act only while the keyboard is on the part or on the controls of what is heard, so that
 * nobody who speaks or types sets them off elsewhere.
 *
 * @param hands what keys act on
 *
 * Source: WCAG 2.2, 2.1.4.
 */
export function keys(hands: Hands): void {
  document.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') hands.listening.stop();
    if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return;
    const at = event.target instanceof Element ? event.target : null;
    const onBar = at?.closest('.bars') != null;
    const onDesk = at?.closest('.transport, .score') != null;
    const act = (onBar ? onBars(hands, event) : null) ?? (onDesk ? onLetters(hands, event) : null);
    if (act === null) return;
    event.preventDefault();
    act();
  });
}

function onBars({ room, listening, transport, part }: Hands, event: KeyboardEvent): (() => void) | null {
  const last = (room.part?.bars.length ?? 1) - 1;
  const moved = (move: () => void) => () => {
    move();
    part()?.focus();
    if (!event.shiftKey || room.state.heard?.what === 'take') listening.hear();
  };
  const acts: Readonly<Record<string, () => void>> = {
    ArrowRight: moved(() => part()?.step(1, event.shiftKey)),
    ArrowLeft: moved(() => part()?.step(-1, event.shiftKey)),
    Home: moved(() => part()?.choose(0)),
    End: moved(() => part()?.choose(last)),
    ArrowDown: () => transport.step(1),
    ArrowUp: () => transport.step(-1),
    ' ': () => transport.toggle(),
    Enter: () => listening.hear(),
  };
  return acts[event.key] ?? null;
}

function onLetters({ transport, round, days, room }: Hands, event: KeyboardEvent): (() => void) | null {
  const key = event.key.toLowerCase();
  const rate = RATES[key];
  if (rate !== undefined) return () => transport.rate(rate);
  if (key === 'l') return () => transport.loop();
  if (key === 'p') return () => transport.pass();
  if (key === 'x' && room.state.way === 'days' && days !== null) return () => days.change();
  if (key === 'm' && room.state.way === 'round' && round !== null) return () => round.focusMark();
  return null;
}
