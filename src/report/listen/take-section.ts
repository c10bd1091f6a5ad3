import { markupText } from '../../page/index.js';
import type { ResultFinding, TakeResult } from '../../result/index.js';
import type { Words } from '../../words/index.js';
import { isOfWholeTake } from '../is-of-whole-take.js';
import type { Markup } from './markup.js';
import type { RoomTake } from './room-input.js';

const MOST_PRAISE = 3;

/** A take's place in the room, and what it is called there. */
export interface NamedTake {
  readonly take: RoomTake;
  readonly number: number;
  readonly label: string;
  readonly day: string;
}

/**
 * @param number place of the take in the room
 * @param finding of that take
 * @returns the id of the element that tells the finding
 */
export function findingId(number: number, result: TakeResult, finding: ResultFinding): string {
  return `take-${number}-${result.findings.indexOf(finding)}`;
}

/**
 * What is told of one take: its sound with the browser's own controls, and its findings. It can be read and heard without
 * scripts; with them it is shown when its take is.
 *
 * @param named the take
 * @param words in the language of the room
 * @param markup turns text into markup
 * @returns a `section`
 *
 * Source: HTML Living Standard.
 */
export function takeSection(named: NamedTake, words: Words, markup: Markup): string {
  const { take, number, label, day } = named;
  const { result, sound, pages } = take;
  const name = day === '' ? label : `${label}, ${day}`;
  const heard =
    sound === null
      ? `<p class="soft">${markup(words.room.silent)}</p>\n`
      : `<audio controls preload="none" aria-label="${markupText(words.room.audioName(name))}" src="${markupText(sound)}"></audio>\n`;
  const printed =
    pages === null ? '' : `<p class="pages"><a href="${markupText(pages)}">${markup(words.room.pages)}</a></p>\n`;
  const told =
    result.outcome === 'reviewed'
      ? foundHtml(number, result, words, markup)
      : notReviewedHtml(result, result.outcome, words, markup);
  return `<section class="take" id="take-${number}" aria-labelledby="take-${number}-name">
<h2 id="take-${number}-name"><bdi class="who">${markup(label)}</bdi>${day === '' ? '' : ` <span class="day">${markup(day)}</span>`}</h2>
${heard}${printed}${told}</section>
`;
}

function foundHtml(number: number, result: TakeResult, words: Words, markup: Markup): string {
  const praise = result.findings.filter(({ weight }) => weight === 'well').slice(0, MOST_PRAISE);
  const told = result.findings.filter(({ weight }) => weight !== 'well');
  const well = praise.map((finding) => praiseHtml(finding, words, markup)).join('');
  const articles = told.map((finding) => findingHtml(findingId(number, result, finding), finding, words, markup));
  return `${well === '' ? '' : `<div class="well">\n<h3>${markup(words.page.wentWell)}</h3>\n${well}</div>\n`}<h3>${markup(words.room.findings)}</h3>
${articles.length === 0 ? `<p>${markup(words.room.nothingFound)}</p>\n` : articles.join('')}`;
}

function praiseHtml(finding: ResultFinding, words: Words, markup: Markup): string {
  const place = isOfWholeTake(finding) ? '' : ` <span class="soft">${markup(words.place(finding))}</span>`;
  return `<p>${markup(finding.text)}${place}</p>\n`;
}

function findingHtml(id: string, finding: ResultFinding, words: Words, markup: Markup): string {
  const { headline, why } = words.finding(finding);
  const place = words.place(finding);
  const paragraph = (text: string, kind = ''): string =>
    text === '' ? '' : `<p${kind === '' ? '' : ` class="${kind}"`}>${markup(text)}</p>\n`;
  const caption = words.caption(finding.kind);
  const measured =
    finding.measured === undefined ? '' : words.page.measured(words.measured(finding.measured, finding.kind));
  return `<article id="${id}" aria-labelledby="${id}-head">
<div class="margin"><p class="place">${markup(place)}</p>${finding.weight === 'watch' ? `<p class="soft">${markup(words.page.worthAListen)}</p>` : ''}</div>
<div class="told"><h4 id="${id}-head">${markup(headline)}<span class="unseen">${markup(words.room.ofPlace(place))}</span></h4>
${paragraph(finding.text)}${paragraph(why)}${paragraph(finding.practice === '' ? '' : words.page.toPractise(finding.practice), 'practice')}${paragraph(measured, 'soft')}${paragraph(caption ?? '', 'soft caption')}</div>
</article>
`;
}

function notReviewedHtml(
  result: TakeResult,
  outcome: keyof Words['notReviewed'],
  words: Words,
  markup: Markup,
): string {
  const { heading, what, tries } = words.notReviewed[outcome];
  const { cautions } = result.recording;
  const all = (texts: readonly string[]) => texts.map((text) => `<p>${markup(text)}</p>\n`).join('');
  const about =
    cautions.length === 0 ? '' : `<h3>${markup(words.notReviewedHeadings.recording)}</h3>\n${all(cautions)}`;
  return `<h3>${markup(heading)}</h3>\n${all([what])}<h3>${markup(words.notReviewedHeadings.tries)}</h3>\n${all(tries)}${about}`;
}
