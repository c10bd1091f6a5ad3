import { FACE_CLASSES, INKS } from '../../page/index.js';

/** The page's own name for its face: with other letters left out it may not go by the name of the whole. */
const FAMILY = 'Page Serif';

/**
 * @param fonts WOFF files of the three text faces
 * @returns the style sheet of a listening page: the look of the printed pages, on a screen of any width
 *
 * Source: CSS Fonts 4; WCAG 2.2, 1.4.11 and 2.4.13 for what shows the focus.
 */
export function pageStyle(fonts: Readonly<Record<keyof typeof FACE_CLASSES, Uint8Array>>): string {
  const face = (bytes: Uint8Array, weight: number, slant: string): string =>
    `@font-face{font-family:"${FAMILY}";font-weight:${weight};font-style:${slant};src:url(data:font/woff;base64,${Buffer.from(bytes).toString('base64')}) format("woff")}`;
  return `${face(fonts.regular, 400, 'normal')}
${face(fonts.semibold, 600, 'normal')}
${face(fonts.italic, 400, 'italic')}
${RULES}
.${FACE_CLASSES.semibold}{font-weight:600}
.${FACE_CLASSES.italic}{font-style:italic}
`;
}

const RULES = `*{box-sizing:border-box}
html{background:#fff;color:${INKS.text};font:1.0625rem/1.45 "${FAMILY}",Georgia,serif;-webkit-text-size-adjust:100%}
body{max-width:56rem;margin:0 auto;padding:2.2rem 1.2rem 3rem;overflow-wrap:break-word}
svg text{font-family:"${FAMILY}",Georgia,serif}
h1,h2,h3,p,figure{margin:0}
h1{font-size:2.1rem;font-weight:400;line-height:1.2}
h2{font-size:1.25rem;font-weight:600;color:${INKS.accent};margin:2.4rem 0 .4rem}
h3{font-size:1.12rem;font-weight:600;line-height:1.3}
header{border-bottom:2px solid ${INKS.accent};padding-bottom:.8rem}
header .soft{margin-top:.15rem}
header bdi{display:inline-block;max-width:100%}
.intro{margin-top:1rem;max-width:40rem}
.soft,figcaption,footer{color:${INKS.soft};font-size:.9rem}
figcaption{font-style:italic}
.practice{font-style:italic}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
article{display:grid;grid-template-columns:8rem minmax(0,1fr);column-gap:1.4rem;padding:1.3rem 0 1.6rem;position:relative}
article+article{border-top:1px solid ${INKS.rule}}
.margin{color:${INKS.accent};font-size:.95rem}
.numeral{font-size:2.4rem;line-height:1}
.told>p{margin-top:.35rem;max-width:40rem}
figure{margin:.9rem 0}
figure svg{display:block;max-width:100%;height:auto}
figcaption{margin-top:.35rem}
.player{display:flex;flex-wrap:wrap;align-items:center;gap:.5rem;margin:.9rem 0}
.player [hidden]{display:none}
audio{max-width:100%}
button{font:inherit;color:${INKS.accent};background:#fff;border:1.5px solid ${INKS.accent};border-radius:.3rem;padding:.4rem .9rem;min-height:2.6rem;cursor:pointer}
button:hover{background:${INKS.tint}}
button[aria-pressed=true]{background:${INKS.accent};color:#fff}
button:focus-visible{outline:3px solid ${INKS.accent};outline-offset:3px}
.go{margin-right:.5em}
.stop,[aria-pressed=true] .start{display:none}
[aria-pressed=true] .stop{display:inline}
.playhead{stroke:${INKS.accent};stroke-width:1.4}
.sign{vertical-align:baseline}
.well p+p{margin-top:.3rem}
footer{border-top:1px solid ${INKS.rule};margin-top:2.6rem;padding-top:.8rem}
footer p+p{margin-top:.4rem}
@media (max-width:44rem){article{grid-template-columns:minmax(0,1fr)}.margin{display:flex;gap:.8rem;align-items:baseline;margin-bottom:.3rem}h1{font-size:1.7rem}.hear{flex-basis:100%}}
@media (hover:none){.with-scripts{display:none}}`;
