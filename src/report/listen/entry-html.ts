import { markupText, type OpenFont } from '../../page/index.js';
import type { Words } from '../../words/index.js';
import type { ListeningEntry } from './listening-content.js';
import type { Markup } from './markup.js';
import { pictureHtml } from './picture-html.js';

/** Pixels of the screen a point takes: the column beside the margin is about 690 wide. */
const EXCERPT_SCALE = 2;
const CURVES_SCALE = 2;

/**
 * @param entry a finding, with what can be seen and heard of it
 * @param number its place among the findings, from 1
 * @param pageWords in the language of the take
 * @param markup turns text into markup
 * @param music the opened music face
 * @returns the finding as an `article`
 *
 * Source: HTML Living Standard.
 */
export function entryHtml(
  entry: ListeningEntry,
  number: number,
  pageWords: Words,
  markup: Markup,
  music: OpenFont,
): string {
  const { finding, excerpt, curves } = entry;
  const words = pageWords.finding(finding);
  const place = pageWords.place(finding);
  const paragraph = (text: string, kind = ''): string =>
    text === '' ? '' : `<p${kind === '' ? '' : ` class="${kind}"`}>${markup(text)}</p>\n`;
  const watch = finding.weight === 'watch' ? `<p class="soft">${markup(pageWords.page.worthAListen)}</p>` : '';
  return `<article aria-labelledby="finding-${number}">
<div class="margin"><p class="numeral" aria-hidden="true">${number}</p><p class="place">${markup(place)}</p>${watch}</div>
<div class="told">
<h3 id="finding-${number}">${markup(words.headline)}<span class="unseen">${markup(pageWords.listen.ofPlace(place))}</span></h3>
${excerpt === null ? '' : `<figure>${pictureHtml(excerpt, music, EXCERPT_SCALE)}<figcaption>${markup(excerpt.caption)}</figcaption></figure>\n`}${playerHtml(entry, place, pageWords, markup)}${paragraph(finding.text)}${paragraph(words.why)}${paragraph(finding.practice === '' ? '' : pageWords.page.toPractise(finding.practice), 'practice')}${paragraph(
  finding.measured === undefined ? '' : pageWords.page.measured(pageWords.measured(finding.measured, finding.kind)),
  'soft',
)}${curves === null ? '' : `<figure>${pictureHtml(curves, music, CURVES_SCALE)}<figcaption>${markup(curves.caption)}</figcaption></figure>\n`}</div>
</article>
`;
}

/** The buttons come to life with the script; without it the browser's own controls stay. */
function playerHtml({ clip }: ListeningEntry, place: string, pageWords: Words, markup: Markup): string {
  if (clip === null) return '';
  const source = `data:audio/wav;base64,${Buffer.from(clip).toString('base64')}`;
  const hear = button(1, ` class="hear"`, `${SIGNS}${markup(pageWords.listen.hear(place))}`);
  const slower = pageWords.listen.speeds.map(({ rate, label }) =>
    button(rate, '', `${markup(label)}<span class="unseen">${markup(pageWords.listen.ofPlace(place))}</span>`),
  );
  const audio = `<audio controls preload="none" aria-label="${markupText(pageWords.listen.audioName(place))}" src="${source}"></audio>`;
  return `<div class="player">${hear}${slower.join('')}${audio}</div>\n`;
}

function button(rate: number, more: string, content: string): string {
  return `<button type="button"${more} data-rate="${rate}" aria-pressed="false" hidden>${content}</button>`;
}

/** A triangle, and the square that stands there while the sound goes on. */
const SIGNS =
  '<svg class="go" viewBox="0 0 10 10" width="0.8em" height="0.8em" aria-hidden="true"><path class="start" d="M1 0L10 5L1 10Z" fill="currentColor"/><path class="stop" d="M1 1H9V9H1Z" fill="currentColor"/></svg>';
