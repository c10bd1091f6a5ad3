import type { RoomData } from '../room-data.js';
import { barsAsked, readAddress, writeAddress } from './address.js';
import { Days } from './days.js';
import { Deck } from './deck.js';
import { keys } from './keys.js';
import { Listening } from './listening.js';
import { ModelPlayer } from './model.js';
import { PartView } from './part-view.js';
import { Player } from './player.js';
import { practise } from './practise.js';
import { Room, readBlock, type State } from './room.js';
import { Round } from './round.js';
import { tellTakes } from './told.js';
import { Transport } from './transport.js';

const data = readBlock<RoomData>('room-data');
if (data !== null) open(data);

function open(data: RoomData): void {
  const room = new Room(data, atFirst(data));
  const home = document.createElement('div');
  home.hidden = true;
  document.body.append(home);
  const player = new Player(new Deck(home));
  const listening = new Listening(room, player, new ModelPlayer());
  const showTold = tellTakes(room, listening);
  const views = data.parts.map((part, number) => new PartView(room, number, part, () => listening.hear()));
  const view = (): PartView | null => views[room.head?.part ?? -1] ?? null;
  const transport = new Transport(room, listening);
  practise(listening);
  const round = document.getElementById('way-round') === null ? null : new Round(room, listening, transport);
  const days = document.getElementById('way-days') === null ? null : new Days(room, listening);
  ways(room, listening);
  keys({ room, listening, transport, part: view, round, days });
  const showTake = (): void => {
    for (const one of views) one.hidden = one !== view();
    view()?.showTake();
    view()?.showBars();
    showTold();
  };
  room.watch((state, before) => {
    player.rate = state.rate;
    if (state.rate !== before.rate && state.heard !== null && state.heard.what !== 'take') listening.playModelAgain();
    if (state.take !== before.take) showTake();
    else if (state.bars !== before.bars) view()?.showBars();
    if (state.way !== before.way || state.hidden !== before.hidden) showTold();
    if (state.hidden !== before.hidden || state.lot !== before.lot) transport.nameTakes();
    if (state.heard !== null && before.heard === null) follow(room, listening, view);
    if (state.matched !== before.matched || state.way !== before.way) player.volume = listening.volumeOf(state.take);
    if (state.take !== before.take || state.bars !== before.bars || state.hidden !== before.hidden) remember(room);
  });
  go(room);
  showTake();
  transport.show();
  window.addEventListener('hashchange', () => go(room));
}

function atFirst(data: RoomData): State {
  const take = data.takes.findIndex(({ part, sound }) => part !== null && sound !== null);
  return {
    take: Math.max(0, take),
    bars: { from: 0, to: 0 },
    loop: false,
    rate: 1,
    way: 'take',
    order: 'list',
    lot: data.takes.map((_, i) => i),
    hidden: false,
    matched: true,
    pair: [],
    heard: null,
  };
}

/** One way to listen is shown at a time. */
function ways(room: Room, listening: Listening): void {
  for (const radio of document.querySelectorAll<HTMLInputElement>('input[name=way]')) {
    radio.addEventListener('change', () => {
      listening.stop();
      for (const section of document.querySelectorAll<HTMLElement>('.way')) {
        section.hidden = section.id !== `way-${radio.value}`;
      }
      room.set({ way: radio.value as State['way'] });
    });
  }
}

/** The line follows for as long as something sounds. */
function follow(room: Room, listening: Listening, view: () => PartView | null): void {
  const step = (): void => {
    const { heard } = room.state;
    view()?.showHead(heard === null ? null : listening.quarters);
    if (heard !== null) requestAnimationFrame(step);
  };
  step();
}

/** Goes where the address says. */
function go(room: Room): void {
  const asked = readAddress(location.hash, room.data.takes);
  if (asked.take !== null && asked.take !== room.state.take) room.set({ take: asked.take });
  const bars = barsAsked(asked, room.part?.bars ?? []);
  if (bars !== null && (bars.from !== room.state.bars.from || bars.to !== room.state.bars.to)) room.set({ bars });
}

/** Keeps the address at what is chosen, so that it can be passed on. */
function remember(room: Room): void {
  const name = room.state.hidden ? null : (room.head?.name ?? null);
  history.replaceState(null, '', writeAddress(room.state.bars, room.part?.bars ?? [], name));
}
