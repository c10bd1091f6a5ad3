import { FACE_CLASSES, INKS } from '../../page/index.js';

/** The page's own name for its face: with other letters left out it may not go by the name of the whole. */
const FAMILY = 'Page Serif';

/**
 * @param fonts WOFF files of the three text faces
 * @returns the style sheet of the listening room: the look of the printed pages, on a screen of any width and on paper
 *
 * Source: CSS Fonts 4; WCAG 2.2, 1.4.11 and 2.4.13 for what shows the focus, 2.5.5 for the size of targets.
 */
export function roomStyle(fonts: Readonly<Record<keyof typeof FACE_CLASSES, Uint8Array>>): string {
  const face = (bytes: Uint8Array, weight: number, slant: string): string =>
    `@font-face{font-family:"${FAMILY}";font-weight:${weight};font-style:${slant};src:url(data:font/woff;base64,${Buffer.from(bytes).toString('base64')}) format("woff")}`;
  return [
    face(fonts.regular, 400, 'normal'),
    face(fonts.semibold, 600, 'normal'),
    face(fonts.italic, 400, 'italic'),
    TEXT,
    CONTROLS,
    SCORE,
    BESIDE,
    TELEPHONE,
    PAPER,
    `.${FACE_CLASSES.semibold}{font-weight:600}`,
    `.${FACE_CLASSES.italic}{font-style:italic}`,
    '',
  ].join('\n');
}

const TEXT = `*{box-sizing:border-box}
html{background:#fff;color:${INKS.text};font:1.0625rem/1.45 "${FAMILY}",Georgia,serif;-webkit-text-size-adjust:100%;scroll-padding:5rem 0 5rem}
body{max-width:66rem;margin:0 auto;padding:2rem 1.5rem 3rem;overflow-wrap:break-word}
svg text{font-family:"${FAMILY}",Georgia,serif}
h1,h2,h3,h4,p,figure,fieldset,dl,dd,ol,ul{margin:0;padding:0;border:0}
h1{font-size:2.1rem;font-weight:400;line-height:1.2}
h2{font-size:1.25rem;font-weight:600;color:${INKS.accent};line-height:1.3}
h3{font-size:1.05rem;font-weight:600;color:${INKS.accent};margin:1.6rem 0 .3rem}
h4{font-size:1.12rem;font-weight:600;line-height:1.3;margin:0}
header{border-bottom:2px solid ${INKS.accent};padding-bottom:.8rem}
bdi{display:inline-block;max-width:100%}
a{color:${INKS.accent}}
.intro{margin-top:1rem;max-width:42rem}
.soft,.small{color:${INKS.soft};font-size:.9rem}
.practice{font-style:italic}
.caption{font-style:italic}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.live-only{display:none}
.live .live-only{display:revert}
.live .quiet-only{display:none}
[hidden],.live .live-only[hidden]{display:none!important}
.sign{vertical-align:baseline}
footer{border-top:1px solid ${INKS.rule};margin-top:2.6rem;padding-top:.8rem}
footer p+p{margin-top:.4rem}`;

const CONTROLS = `button,select,input[type=text]{font:inherit;color:${INKS.accent};background:#fff;border:1px solid ${INKS.soft};border-radius:.3rem;min-height:2.6rem;padding:.3rem .8rem}
button{cursor:pointer;min-width:2.6rem}
select{padding-right:.4rem;max-width:100%}
input[type=text]{color:${INKS.text};padding:.3rem .5rem}
button:hover{background:${INKS.tint}}
button[aria-pressed=true]{background:${INKS.accent};border-color:${INKS.accent};color:#fff}
button[aria-disabled=true]{color:${INKS.soft}}
:focus-visible{outline:3px solid ${INKS.accent};outline-offset:2px}
.row,.choose{display:flex;flex-wrap:wrap;gap:.6rem 1rem;align-items:end;margin:.8rem 0}
.choose{gap:.2rem 1.4rem;margin:.4rem 0 0}
.choose button{border:0;border-radius:0;padding:.3rem 0;text-decoration:underline;text-decoration-thickness:1px;text-underline-offset:.2em}
.choose button:hover{background:none;text-decoration-thickness:2px}
#pages{display:inline-flex;align-items:center;min-height:2.6rem;text-underline-offset:.2em;text-decoration-thickness:1px}
.field{display:inline-flex;flex-direction:column;max-width:100%}
.field>span{font-size:.85rem;color:${INKS.soft};line-height:1.3}
.tick{display:inline-flex;align-items:center;gap:.5rem;min-height:2.6rem;cursor:pointer}
input[type=checkbox]{width:1.2rem;height:1.2rem;accent-color:${INKS.accent};margin:0}
.speeds,.ways{display:inline-flex;flex-wrap:wrap;min-inline-size:0}
.speeds label,.ways label{position:relative;cursor:pointer}
.speeds input,.ways input{position:absolute;inset:0;width:100%;height:100%;margin:0;opacity:0;cursor:pointer}
.speeds span,.ways span{display:flex;align-items:center;justify-content:center;min-width:2.6rem;min-height:2.6rem;color:${INKS.accent}}
.speeds input:checked+span,.ways input:checked+span{font-weight:600;box-shadow:inset 0 -3px 0 ${INKS.accent}}
.ways input:disabled+span{color:${INKS.soft};font-style:italic}
.speeds input:focus-visible+span,.ways input:focus-visible+span{outline:3px solid ${INKS.accent};outline-offset:-1px}
.go{margin-right:.5em}
.sign-round{display:none;vertical-align:-.15em}
.stop,[data-on] .start{display:none}
[data-on] .stop{display:inline}
.live .transport{display:flex;flex-wrap:wrap;align-items:center;gap:0 1rem;position:sticky;top:0;z-index:3;background:#fff;border-bottom:1px solid ${INKS.rule};padding:.5rem 0;margin-bottom:.8rem}
#go{min-width:7.5rem;border-width:1.5px;border-color:${INKS.accent}}
#go[data-on]{background:${INKS.accent};color:#fff}
#where{flex:1 1 6rem;min-width:0;font-size:1.05rem;overflow:hidden;text-overflow:ellipsis;white-space:nowrap}
.steps{display:inline-flex;gap:.4rem}
.steps button{min-width:2.6rem;font-size:1.4rem;line-height:1;padding:0 .6rem}
#said{flex:1 0 100%;color:${INKS.accent};font-size:.95rem}`;

const SCORE = `.part .narrow{display:none}
.line{position:relative;margin:.35rem 0 1.1rem}
.line svg{display:block;width:100%;height:auto;overflow:visible}
.bars{position:absolute;inset:0;pointer-events:none}
.bars button{position:absolute;top:0;bottom:0;padding:0;min-width:0;min-height:0;border:0;border-radius:0;background:transparent;pointer-events:auto;touch-action:pan-y;user-select:none;-webkit-user-select:none}
.bars button:hover{background:${INKS.accent}0d}
.bars button[aria-pressed=true]{background:${INKS.accent}1a;box-shadow:inset 0 -2px 0 ${INKS.accent}}
.bars button:focus-visible{outline-offset:-3px}
.playhead{stroke:${INKS.accent};stroke-width:1.3}
.level{fill:${INKS.tint};stroke:${INKS.tint};stroke-width:.4}
.level-line{fill:none;stroke:${INKS.soft};stroke-width:.6}
.tempo{fill:none;stroke:${INKS.text};stroke-width:.6}
.dot{fill:${INKS.text}}
.foot{stroke:${INKS.soft};stroke-width:.5}
.unplayed{fill:${INKS.soft};font-size:8px;font-style:italic}
.marks-off .marks{display:none}`;

const BESIDE = `.live .beside{display:block;border-top:1px solid ${INKS.rule};margin-top:1.2rem;padding-top:.3rem}
.ways{gap:0 1.6rem}
.ways span{padding:0 .2rem}
.way{margin:1rem 0 1.6rem;max-width:52rem}
.way>p{max-width:42rem}
#round{list-style:none;margin:.8rem 0;columns:20rem;column-gap:2rem}
#round li{break-inside:avoid;border-top:1px solid ${INKS.rule};display:grid;grid-template-columns:minmax(0,1fr) auto;align-items:center;column-gap:1rem}
#round button{border:0;border-radius:0;text-align:left;width:100%;padding:.3rem .4rem}
#round [aria-current=true]{background:${INKS.tint};font-weight:600}
#round span{min-width:0;overflow-wrap:anywhere;font-variant-numeric:tabular-nums}
.changes{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(17rem,100%),1fr));gap:0 2rem}
.changes ul{list-style:none}
.changes li{padding:.15rem 0}
.changes button{border:0;padding:.2rem 0;text-align:left;line-height:1.35}
.keys{margin:1rem 0}
.keys summary{cursor:pointer;color:${INKS.accent};min-height:2.6rem;display:flex;align-items:center}
.keys summary::before{content:"+";width:1.2em}
.keys[open] summary::before{content:"–"}
.keys dl>div{display:grid;grid-template-columns:9rem minmax(0,1fr);column-gap:1rem;max-width:36rem;padding:.15rem 0}
.keys dt{color:${INKS.accent}}
.take{border-top:1px solid ${INKS.rule};margin-top:1.4rem;padding-top:1.1rem}
.take .day{font-weight:400;color:${INKS.soft};font-size:1rem}
audio{max-width:100%;margin-top:.6rem}
.live .take,.live .take .pages{display:none}
.live .take.shown{display:block}
article{display:grid;grid-template-columns:8.5rem minmax(0,1fr);column-gap:1.4rem;padding:1.1rem 0}
article+article{border-top:1px solid ${INKS.rule}}
.margin{color:${INKS.accent};font-size:.95rem}
.told>p{margin-top:.3rem;max-width:42rem}
.told .row{margin:.5rem 0 0}
article.current{box-shadow:-.6rem 0 0 #fff,-.75rem 0 0 ${INKS.accent}}
.well p+p{margin-top:.3rem}`;

const TELEPHONE = `@media (max-width:44rem){body{padding:1.2rem 1rem 6.5rem}
h1{font-size:1.6rem}
.part .wide{display:none}
.part .narrow{display:block}
article{grid-template-columns:minmax(0,1fr)}
.margin{display:flex;gap:.8rem;align-items:baseline;margin-bottom:.2rem}
.live .transport{position:fixed;inset:auto 0 0;margin:0;padding:.4rem .6rem calc(.4rem + env(safe-area-inset-bottom));border-bottom:0;border-top:1px solid ${INKS.rule};flex-wrap:wrap;gap:0 .3rem;justify-content:space-between}
#where{flex:1 0 100%;font-size:.95rem;order:-1}
#said{order:-1}
#go{min-width:3.6rem}
.transport button{padding:.3rem .6rem}
.transport .go{margin:0}
.sign-round{display:inline}
#go-word,#loop span{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.ways{gap:0 1rem}
.keys dl>div{grid-template-columns:7rem minmax(0,1fr)}}
@media (prefers-reduced-motion:no-preference){html{scroll-behavior:smooth}}`;

const PAPER = `@media print{html{font-size:10pt}
body{max-width:none;padding:0}
.live .live-only,.live .transport,.live .beside,.bars,audio,.playhead{display:none!important}
.part .wide{display:block}
.part .narrow{display:none}
.line,article{break-inside:avoid}
.told .row{display:none}
h2,h3{break-after:avoid}}`;
