import { markupText } from '../../page/index.js';
import type { Words } from '../../words/index.js';
import type { Markup } from './markup.js';
import type { RoomContent } from './room-content.js';

/**
 * @param content of the room
 * @param criteria that takes can be put in order by, and marked by
 * @param words in the language of the room
 * @param markup turns text into markup
 * @returns the three ways to listen: one take, take after take, day by day; one is shown at a time
 */
export function waysHtml(
  { data }: RoomContent,
  criteria: readonly Parameters<Words['criterion']>[0][],
  words: Words,
  markup: Markup,
): string {
  const { room } = words;
  const several = data.takes.filter(({ part }) => part !== null).length > 1;
  const players = data.takes.map(({ player }) => player).filter((player) => player !== '');
  const days = new Set(players).size < players.length;
  const ways = [
    ['take', room.ways.take, true],
    ['round', room.ways.round, several],
    ['days', room.ways.days, days],
  ] as const;
  const choices = ways
    .filter(([, , there]) => there)
    .map(
      ([way, name], i) =>
        `<label><input type="radio" name="way" value="${way}"${i === 0 ? ' checked' : ''}><span>${markup(name)}</span></label>`,
    );
  const choice = `<fieldset class="ways"><legend class="unseen">${markup(room.names.ways)}</legend>${choices.join('')}</fieldset>
`;
  return `<div class="beside live-only">
${choices.length > 1 ? choice : ''}${practiseHtml(words, markup)}${several ? roundHtml(criteria, words, markup) : ''}${days ? daysHtml(words, markup) : ''}${keysHtml(words, markup)}</div>
`;
}

const button = (id: string, text: string): string => `<button type="button" id="${id}">${text}</button>`;
const field = (name: string, control: string): string => `<label class="field"><span>${name}</span>${control}</label>`;

function practiseHtml({ room: { practise } }: Words, markup: Markup): string {
  return `<section class="way" id="way-take">
<h2>${markup(practise.heading)}</h2>
<p>${markup(practise.about)}</p>
<div class="row">${button('written', markup(practise.written))}${button('played', markup(practise.played))}${button('in-turn', markup(practise.inTurn))}<label class="tick"><input type="checkbox" id="click"><span>${markup(practise.click)}</span></label></div>
<p class="soft">${markup(practise.model)}</p>
</section>
`;
}

function roundHtml(criteria: readonly Parameters<Words['criterion']>[0][], words: Words, markup: Markup): string {
  const { round } = words.room;
  const option = (value: string, text: string) => `<option value="${value}">${markupText(text)}</option>`;
  const names = criteria.map((criterion) => [criterion, words.criterion(criterion)] as const);
  const orders = [
    option('list', round.byList),
    ...names.map(([value, name]) => option(value, round.byCriterion(name))),
    option('lot', round.byLot),
  ];
  const louds = option('matched', round.matched) + option('recorded', round.asRecorded);
  return `<section class="way" id="way-round" hidden>
<h2>${markup(round.heading)}</h2>
<p>${markup(round.about)}</p>
<div class="row">${field(markup(round.order), `<select id="order">${orders.join('')}</select>`)}${field(markup(round.loudness), `<select id="loudness">${louds}</select>`)}<button type="button" id="reveal" hidden>${markup(round.reveal)}</button></div>
<p class="soft" id="softer"></p>
<div class="row">${field(markup(round.judge), '<input id="judge" type="text" autocomplete="off" size="12">')}${field(
    markup(round.criterion),
    `<select id="criterion">${names.map(([value, name]) => option(value, name)).join('')}</select>`,
  )}${field(markup(round.mark), '<input id="mark" type="text" inputmode="decimal" autocomplete="off" size="4">')}${field(
    markup(round.word),
    '<input id="word" type="text" autocomplete="off" size="18">',
  )}</div>
<p class="soft" id="marks-said" role="status"></p>
<ol id="round"></ol>
<div class="row">${button('save', markup(round.save))}${button('forget', markup(round.forget))}</div>
<p class="soft">${markup(round.kept)}</p>
</section>
`;
}

function daysHtml({ room: { days } }: Words, markup: Markup): string {
  const list = (id: string, name: string) => `<div id="${id}" hidden><h3>${markup(name)}</h3><ul></ul></div>`;
  return `<section class="way" id="way-days" hidden>
<h2>${markup(days.heading)}</h2>
<p>${markup(days.about)}</p>
<div class="row">${field(markup(days.player), '<select id="player"></select>')}${field(markup(days.earlier), '<select id="then"></select>')}${field(markup(days.later), '<select id="now"></select>')}</div>
<div class="row">${button('both', markup(days.oneAfterOther))}${button('alternate', markup(days.alternate))}${button('change', markup(days.change))}</div>
<div class="changes">${list('gone', days.gone)}${list('fresh', days.fresh)}${list('still', days.still)}${list('not-comparable', days.notComparable)}</div>
</section>
`;
}

function keysHtml({ room }: Words, markup: Markup): string {
  const rows = room.keys.map(([keys, does]) => `<div><dt>${markup(keys)}</dt><dd>${markup(does)}</dd></div>`);
  return `<details class="keys"><summary>${markup(room.keysHeading)}</summary><dl>${rows.join('')}</dl></details>
`;
}
