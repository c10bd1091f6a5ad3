import { createHash } from 'node:crypto';
import { type Face, markupText, type OpenFont, webFont } from '../../page/index.js';
import type { ResultFinding, TakeResult } from '../../result/index.js';
import { type Words, wordsIn } from '../../words/index.js';
import { captionsOf } from '../curves/captions-of.js';
import { isOfWholeTake } from '../is-of-whole-take.js';
import { titleOf } from '../title-of.js';
import { entryHtml } from './entry-html.js';
import type { ListeningContent } from './listening-content.js';
import { type Markup, markupWith } from './markup.js';
import { PAGE_SCRIPT } from './page-script.js';
import { pageStyle } from './page-style.js';
import { pictureHtml } from './picture-html.js';

const MOST_PRAISE = 3;
const FIRST = 3;
/** Pixels of the screen a point takes: the whole take has the whole width. */
const WHOLE_SCALE = 2;

/**
 * Writes a listening page: one file that needs no other, asks for nothing from anywhere, and can be read without scripts.
 *
 * @param content what it shows
 * @param faces the opened faces
 * @returns an HTML document
 *
 * Source: HTML Living Standard; Content Security Policy Level 3 (hashes of the one script and the one style sheet).
 */
export function pageHtml(content: ListeningContent, faces: Readonly<Record<Face, OpenFont>>): string {
  const { result } = content;
  const { language = 'en' } = result;
  const words = wordsIn(language);
  const markup = markupWith(faces.music);
  const body = `<body>
${headHtml(result, words, markup)}<main>
${result.outcome === 'reviewed' ? reviewedHtml(content, words, markup, faces.music) : notReviewedHtml(result, result.outcome, words, markup)}</main>
<footer>${paragraphs([words.smallPrint.practice, words.listen.caution], markup)}</footer>
<script>${PAGE_SCRIPT}</script>
</body>`;
  const letters = new Set(body.normalize('NFC'));
  const style = pageStyle({
    regular: webFont(faces.regular, letters),
    semibold: webFont(faces.semibold, letters),
    italic: webFont(faces.italic, letters),
  });
  const who = result.take.player ?? result.take.file;
  return `<!DOCTYPE html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy(PAGE_SCRIPT, style)}">
<meta name="referrer" content="no-referrer">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${markupText(words.listen.documentTitle(titleOf(result), who))}</title>
<style>${style}</style>
</head>
${body}
</html>
`;
}

function policy(script: string, style: string): string {
  const hash = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  return [
    "default-src 'none'",
    `script-src ${hash(script)}`,
    `style-src ${hash(style)}`,
    'font-src data:',
    'media-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

/** Names are set apart from what stands around them, whichever way their letters run. */
function headHtml(result: TakeResult, words: Words, markup: Markup): string {
  const { take, score } = result;
  const apart = (text: string): string => `<bdi>${markup(text)}</bdi>`;
  const who = [take.player, score.part, take.date === null ? null : words.date(take.date)];
  const line = who.flatMap((text) => (text === null || text === '' ? [] : [apart(text)]));
  return `<header>
<h1>${apart(titleOf(result))}</h1>
${line.length === 0 ? '' : `<p>${line.join('  ·  ')}</p>\n`}<p class="soft">${apart(take.file)}</p>
</header>
`;
}

function reviewedHtml(content: ListeningContent, words: Words, markup: Markup, music: OpenFont): string {
  const { result, entries, wholeTake, shortened, more } = content;
  const praise = result.findings.filter(({ weight }) => weight === 'well').slice(0, MOST_PRAISE);
  const articles = entries.map((entry, i) => entryHtml(entry, i + 1, words, markup, music));
  const [first, also] = [articles.slice(0, FIRST), articles.slice(FIRST)];
  const heard = entries.some(({ clip }) => clip !== null);
  return `${heard ? introHtml(words, markup) : ''}${section(
    words.page.wentWell,
    praise.length === 0
      ? ''
      : `<div class="well">${praise.map((finding) => praiseHtml(finding, words, markup)).join('')}</div>`,
    markup,
  )}${section(
    words.page.workOn[first.length] ?? '',
    first.length === 0 ? paragraphs([words.page.nothing], markup) : first.join(''),
    markup,
  )}${section(words.listen.also, also.join(''), markup)}${shortened ? `<p class="soft">${markup(words.listen.enough)}</p>\n` : ''}${more > 0 ? `<p class="soft">${markup(words.table.more(more))}</p>\n` : ''}${section(
    words.listen.wholeTake,
    `${wholeTake.map((picture) => `<figure>${pictureHtml(picture, music, WHOLE_SCALE)}</figure>\n`).join('')}<div class="soft">${paragraphs(captionsOf(words, result, content.beat), markup)}</div>`,
    markup,
  )}`;
}

/** Praise, and where it belongs when that is not the whole take. */
function praiseHtml(finding: ResultFinding, words: Words, markup: Markup): string {
  const place = isOfWholeTake(finding) ? '' : ` <span class="soft">${markup(words.place(finding))}</span>`;
  return `<p>${markup(finding.text)}${place}</p>\n`;
}

function introHtml(words: Words, markup: Markup): string {
  return `<p class="intro">${markup(words.listen.intro)}<span class="with-scripts" hidden> ${markup(words.listen.keys)}</span></p>
<p class="intro without-scripts">${markup(words.listen.withoutScripts)}</p>
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
  return `${section(heading, paragraphs([what], markup), markup)}${section(words.notReviewedHeadings.tries, paragraphs(tries, markup), markup)}${section(
    words.notReviewedHeadings.recording,
    paragraphs(cautions, markup),
    markup,
  )}`;
}

function section(heading: string, content: string, markup: Markup): string {
  return content === '' ? '' : `<section>\n<h2>${markup(heading)}</h2>\n${content}</section>\n`;
}

function paragraphs(texts: readonly string[], markup: Markup): string {
  return texts.map((text) => `<p>${markup(text)}</p>\n`).join('');
}
