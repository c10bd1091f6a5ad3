import { createHash } from 'node:crypto';
import type { Language } from '../../base/index.js';
import { INKS, markupText, openFaces, webFont } from '../../page/index.js';
import { type Words, wordsIn } from '../../words/index.js';

/** One take that is handed out. Files are paths below the folder of the page. */
export interface HandoutRow {
  readonly player: string;
  readonly piece: string;
  /** ISO 8601 day, null when nobody knows it */
  readonly date: string | null;
  readonly pages: string;
  /** the listening room, and the take in it; null without one */
  readonly listen: { readonly file: string; readonly take: string } | null;
  /** null when the take was heard and not reviewed */
  readonly found: { readonly fix: number; readonly watch: number } | null;
}

/** What the page shows. */
export interface HandoutIndex {
  readonly language: Language;
  readonly print: string;
  /** sheets of paper it takes */
  readonly sheets: number;
  readonly mail: string;
  /** the section sheets, in order; none where there are none */
  readonly section: readonly string[];
  /** those of one player one after the other */
  readonly rows: readonly HandoutRow[];
}

/** The page's own name for its face: with other letters left out it may not go by the name of the whole. */
const FAMILY = 'Page Serif';

const RULES = `*{box-sizing:border-box}
html{background:#fff;color:${INKS.text};font:1.0625rem/1.45 "${FAMILY}",Georgia,serif;-webkit-text-size-adjust:100%}
body{max-width:56rem;margin:0 auto;padding:2.2rem 1.2rem 3rem;overflow-wrap:break-word}
h1,h2,p,ul{margin:0;padding:0}
h1{font-size:2.1rem;font-weight:400;line-height:1.2}
h2{font-size:1.25rem;font-weight:600;color:${INKS.accent};margin:2.2rem 0 .5rem}
header{border-bottom:2px solid ${INKS.accent};padding-bottom:.8rem}
.soft,footer{color:${INKS.soft};font-size:.9rem}
ul{list-style:none}
li+li{margin-top:.6rem}
a{color:${INKS.accent};text-underline-offset:.15em;display:inline-block;padding:.15rem 0}
a:hover{text-decoration-thickness:2px}
a:focus-visible{outline:3px solid ${INKS.accent};outline-offset:3px}
table{border-collapse:collapse;width:100%}
th,td{text-align:start;vertical-align:baseline;padding:.45rem 1.2rem .45rem 0}
thead th{color:${INKS.soft};font-size:.85rem;font-weight:600;border-bottom:1.5px solid ${INKS.accent}}
tbody th{font-weight:600}
tbody tr{border-bottom:1px solid ${INKS.rule}}
td a+a{margin-inline-start:1rem}
footer{border-top:1px solid ${INKS.rule};margin-top:2.6rem;padding-top:.8rem}
@media (max-width:40rem){thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}tbody tr,tbody th,tbody td{display:block}tbody tr{padding:.6rem 0}tbody th,tbody td{padding:.1rem 0}a{min-height:1.6rem}}
@media print{body{max-width:none;padding:0}a{color:inherit;text-decoration:none}tr{break-inside:avoid}thead{display:table-header-group}}`;

/**
 * Writes the page over everything that is handed out. It needs the files beside it and nothing else, and has no script.
 *
 * @param index what it shows
 * @returns an HTML document
 *
 * Source: HTML Living Standard; Content Security Policy Level 3 (hash of the one style sheet).
 */
export function drawHandoutIndex(index: HandoutIndex): string {
  const words = wordsIn(index.language);
  const body = bodyOf(index, words);
  const letters = new Set(body.normalize('NFC'));
  const faces = openFaces();
  const style = [
    fontFace(webFont(faces.regular, letters), 400),
    fontFace(webFont(faces.semibold, letters), 600),
    RULES,
  ].join('\n');
  const hash = createHash('sha256').update(style).digest('base64');
  return `<!DOCTYPE html>
<html lang="${index.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'sha256-${hash}'; font-src data:; base-uri 'none'; form-action 'none'">
<meta name="referrer" content="no-referrer">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${markupText(words.handout.title)}</title>
<style>${style}</style>
</head>
${body}
</html>
`;
}

function fontFace(bytes: Uint8Array, weight: number): string {
  const data = Buffer.from(bytes).toString('base64');
  return `@font-face{font-family:"${FAMILY}";font-weight:${weight};src:url(data:font/woff;base64,${data}) format("woff")}`;
}

function bodyOf({ print, sheets, mail, section, rows }: HandoutIndex, { handout, ...words }: Words): string {
  const players = new Set(rows.map(({ player }) => player)).size;
  const entry = (file: string, label: string, note: string): string =>
    `<li>${link(file, label)}${note === '' ? '' : ` <span class="soft">${markupText(note)}</span>`}</li>\n`;
  const sectionSheets = section.map((file, i) =>
    entry(file, i === 0 ? handout.section : `${handout.section} ${i + 1}`, ''),
  );
  const heads = [handout.player, handout.piece, handout.day, handout.found, handout.files];
  return `<body>
<header>
<h1>${markupText(handout.title)}</h1>
<p class="soft">${markupText(handout.facts(players, rows.length))}</p>
</header>
<main>
<section>
<h2>${markupText(handout.forAll)}</h2>
<ul>
${entry(print, handout.print, handout.sheets(sheets))}${sectionSheets.join('')}${entry(mail, handout.mail, handout.mailNote)}</ul>
</section>
<section>
<h2 id="players">${markupText(handout.players)}</h2>
<table aria-labelledby="players">
<thead><tr>${heads.map((head) => `<th scope="col">${markupText(head)}</th>`).join('')}</tr></thead>
<tbody>
${rows.map((row, i) => rowHtml(row, rows[i - 1], { handout, ...words })).join('')}</tbody>
</table>
</section>
</main>
<footer><p>${markupText(handout.caution)}</p></footer>
</body>`;
}

/** A player's name stands beside the first of their takes, and is there for readers beside the others. */
function rowHtml(row: HandoutRow, above: HandoutRow | undefined, { handout, date }: Words): string {
  const name = `<bdi>${markupText(row.player)}</bdi>`;
  const player = above?.player === row.player ? `<span class="soft">${name}</span>` : name;
  const found = row.found === null ? handout.notReviewed : handout.findings(row.found.fix, row.found.watch);
  const files = [
    link(row.pages, handout.pages, handout.pagesOf(row.player)),
    ...(row.listen === null ? [] : [roomLink(row.listen, handout.listen, handout.listenOf(row.player))]),
  ];
  const cells = [`<bdi>${markupText(row.piece)}</bdi>`, row.date === null ? '' : markupText(date(row.date))];
  const texts = [...cells, markupText(found), files.join(' ')];
  return `<tr><th scope="row">${player}</th>${texts.map((text) => `<td>${text}</td>`).join('')}</tr>\n`;
}

function roomLink({ file, take }: NonNullable<HandoutRow['listen']>, label: string, inWords: string): string {
  return anchor(`${addressOf(file)}#take=${encodeURIComponent(take)}`, label, inWords);
}

function link(file: string, label: string, inWords?: string): string {
  return anchor(addressOf(file), label, inWords);
}

function addressOf(file: string): string {
  return file.split('/').map(encodeURIComponent).join('/');
}

function anchor(address: string, label: string, inWords?: string): string {
  const spoken = inWords === undefined ? '' : ` aria-label="${markupText(inWords)}"`;
  return `<a href="${markupText(address)}"${spoken}>${markupText(label)}</a>`;
}
