import { createHash } from 'node:crypto';
import { type Face, markupText, type OpenFont, webFont } from '../../page/index.js';
import { criterionSchema } from '../../result/index.js';
import type { Words } from '../../words/index.js';
import { deskHtml } from './desk-html.js';
import { type Markup, markupWith } from './markup.js';
import { partHtml } from './part-html.js';
import type { RoomContent } from './room-content.js';
import { ROOM_SCRIPT } from './room-script.js';
import { roomStyle } from './room-style.js';
import { takeSection } from './take-section.js';
import { waysHtml } from './ways-html.js';

/** Before anything is shown: what needs no script gives way to what does. */
const FIRST_SCRIPT = "document.documentElement.classList.add('live');";

/**
 * Writes the listening room: one page that asks for nothing but the sound files beside it, and can be read and heard
 * without scripts.
 *
 * @param content what it shows
 * @param title of the piece, or of the pieces
 * @param words in the language of the room
 * @param language its tag
 * @param faces the opened faces
 * @returns an HTML document
 *
 * Source: HTML Living Standard; Content Security Policy Level 3 (hashes of the scripts and of the one style sheet).
 */
export function roomHtml(
  content: RoomContent,
  title: string,
  words: Words,
  language: string,
  faces: Readonly<Record<Face, OpenFont>>,
): string {
  const markup = markupWith(faces.music);
  const body = bodyHtml(content, title, words, markup, faces.music);
  const letters = new Set(`${body}${JSON.stringify(words.room.script)}0123456789–·−+,.“”„…`.normalize('NFC'));
  const style = roomStyle({
    regular: webFont(faces.regular, letters),
    semibold: webFont(faces.semibold, letters),
    italic: webFont(faces.italic, letters),
  });
  return `<!DOCTYPE html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy([FIRST_SCRIPT, ROOM_SCRIPT], style)}">
<meta name="referrer" content="no-referrer">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${markupText(words.room.documentTitle(title))}</title>
<style>${style}</style>
<script>${FIRST_SCRIPT}</script>
</head>
${body}${dataHtml(content)}<script>${ROOM_SCRIPT}</script>
</body>
</html>
`;
}

/** Sound may come from beside the page: opened from a disk that is no origin, and from a server without ranges by way of a copy. */
function policy(scripts: readonly string[], style: string): string {
  const hash = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  return [
    "default-src 'none'",
    `script-src ${scripts.map(hash).join(' ')}`,
    `style-src ${hash(style)}`,
    'font-src data:',
    "media-src 'self' file: blob:",
    "connect-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

/** Data is no script: no policy on scripts forbids it, and no tag in it ends it. */
function dataHtml({ data, takeData }: RoomContent): string {
  const block = (id: string, value: unknown): string =>
    `<script type="application/json" id="${id}">${JSON.stringify(value).replaceAll('<', '\\u003c')}</script>\n`;
  return (
    block('room-data', data) + takeData.map((one, i) => (one === null ? '' : block(`take-data-${i}`, one))).join('')
  );
}

function bodyHtml(content: RoomContent, title: string, words: Words, markup: Markup, music: OpenFont): string {
  const { room } = words;
  const paragraph = (text: string, kind: string) => `<p class="${kind}">${markup(text)}</p>\n`;
  const names = [...new Set(content.takes.map(({ take }) => take.result.score.part))].filter((name) => name !== '');
  const said = [...(names.length === 1 ? names : []), room.takes(content.takes.length)];
  return `<body>
<header>
<h1><bdi>${markup(title)}</bdi></h1>
<p>${said.map((text) => `<bdi>${markup(text)}</bdi>`).join('  ·  ')}</p>
</header>
<main>
${paragraph(room.intro, 'intro live-only')}${paragraph(room.withoutScripts, 'intro quiet-only')}${deskHtml(content, words, markup)}<section class="score" aria-label="${markupText(room.names.part)}">
${content.parts.map(({ part, laidOut }, i) => partHtml(i, part, laidOut, words, music)).join('')}${paragraph(room.curves, 'soft')}</section>
${waysHtml(content, criterionSchema.options, words, markup)}<div class="takes">
${content.takes.map((take) => takeSection(take, words, markup)).join('')}</div>
</main>
<footer>${paragraph(words.smallPrint.practice, 'small')}${paragraph(room.caution, 'small')}</footer>
`;
}
