import { markupText } from '../../page/index.js';
import type { Words } from '../../words/index.js';
import type { Markup } from './markup.js';
import type { RoomContent } from './room-content.js';

/** A triangle, and the square that stands there while the sound goes on. */
const SIGNS =
  '<svg class="go" viewBox="0 0 10 10" width="0.8em" height="0.8em" aria-hidden="true"><path class="start" d="M1 0L10 5L1 10Z" fill="currentColor"/><path class="stop" d="M1 1H9V9H1Z" fill="currentColor"/></svg>';

/** An arrow that comes back to where it began; drawn where there is no room for words. */
const ROUND =
  '<svg class="sign-round" viewBox="0 0 12 12" width="1.1em" height="1.1em" aria-hidden="true"><path d="M10.5 6A4.5 4.5 0 1 1 8.6 2.3M8.9 0V2.7H6.2" fill="none" stroke="currentColor" stroke-width="1.4"/></svg>';

/**
 * @param content of the room
 * @param words in the language of the room
 * @param markup turns text into markup
 * @returns the controls of what is heard; they come to life with the script and are not there without it
 */
export function deskHtml({ takes, data }: RoomContent, words: Words, markup: Markup): string {
  const { room } = words;
  const options = takes.map(({ label, day }, i) => {
    const head = data.takes[i];
    const name = day === '' ? label : `${label}, ${day}`;
    return `<option value="${i}"${head?.part === null ? ' class="unheard"' : ''}>${markupText(name)}</option>`;
  });
  const speeds = room.speeds.map(
    ({ rate, label }, i) =>
      `<label><input type="radio" name="speed" value="${rate}"${i === 0 ? ' checked' : ''}><span>${markup(label)}</span></label>`,
  );
  const step = (id: string, sign: string, name: string) =>
    `<button type="button" id="${id}" aria-label="${markupText(name)}"><span aria-hidden="true">${sign}</span></button>`;
  return `<section class="desk live-only" aria-label="${markupText(room.names.player)}">
<div class="choose">
<label class="field"><span>${markup(room.take)}</span><select id="take">${options.join('')}</select></label>
<a id="pages" hidden>${markup(room.pages)}</a>
<label class="tick"><input type="checkbox" id="pencil" checked><span>${markup(room.marksShown)}</span></label>
</div>
<div class="choose">
<button type="button" id="whole">${markup(room.wholeTake)}</button>
<button type="button" id="onward">${markup(room.onward)}</button>
<button type="button" id="fewer">${markup(room.fewerBars)}</button>
<button type="button" id="more">${markup(room.moreBars)}</button>
<button type="button" id="pass" hidden></button>
</div>
</section>
<div class="transport live-only" role="group" aria-label="${markupText(room.names.player)}">
<button type="button" id="go">${SIGNS}<span id="go-word">${markup(room.hear)}</span></button>
<p id="where"></p>
<button type="button" id="loop" aria-pressed="false">${ROUND}<span>${markup(room.loop)}</span></button>
<fieldset class="speeds"><legend class="unseen">${markup(room.names.speed)}</legend>${speeds.join('')}</fieldset>
<span class="steps">${step('previous', '‹', room.previous)}${step('next', '›', room.next)}</span>
<p id="said" role="status"></p>
</div>
`;
}
