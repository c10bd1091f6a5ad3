import type { VerovioToolkit } from 'verovio/esm';

const OPTIONS = {
  font: 'Bravura',
  scale: 100,
  pageHeight: 60_000,
  adjustPageHeight: true,
  pageMarginTop: 0,
  pageMarginBottom: 0,
  pageMarginLeft: 0,
  pageMarginRight: 0,
  header: 'none',
  footer: 'none',
  spacingLinear: 0.3,
  mnumInterval: 1,
  svgViewBox: true,
  svgRemoveXlink: true,
  xmlIdSeed: 1,
};

let toolkit: Promise<VerovioToolkit> | undefined;

/**
 * Lays a document out and draws it. The engraving program is loaded on first use.
 *
 * @param musicXml the document as `engravingCopy` of the room `score` makes it
 * @param breakBefore 0-based positions of bars that begin a line; with none, all bars stand in one line at its natural width
 * @returns pages as SVG, each `note` with its id; null when the engraving program does not accept the document
 *
 * Source: Verovio reference book, toolkit methods `loadData`, `renderToSVG`; option `breaks`.
 */
export async function drawDocument(musicXml: string, breakBefore: readonly number[] = []): Promise<string[] | null> {
  toolkit ??= loadToolkit();
  const kit = await toolkit;
  try {
    kit.setOptions({ breaks: breakBefore.length === 0 ? 'none' : 'encoded' });
    if (!kit.loadData(withBreaks(musicXml, breakBefore))) return null;
    return Array.from({ length: kit.getPageCount() }, (_, page) => kit.renderToSVG(page + 1));
  } catch {
    // A document the engraving program stumbles over costs its excerpts and nothing else.
    toolkit = undefined;
    return null;
  }
}

function withBreaks(musicXml: string, breakBefore: readonly number[]): string {
  if (breakBefore.length === 0) return musicXml;
  const [head = '', ...bars] = musicXml.split(/(?=<measure[\s>])/);
  const broken = new Set(breakBefore);
  return head + bars.map((bar, i) => (broken.has(i) ? bar.replace('>', '><print new-system="yes"/>') : bar)).join('');
}

async function loadToolkit(): Promise<VerovioToolkit> {
  const [{ default: createModule }, { VerovioToolkit: Toolkit, enableLog, LOG_OFF }] = await Promise.all([
    import('verovio/wasm'),
    import('verovio/esm'),
  ]);
  const module = await createModule();
  enableLog(LOG_OFF, module);
  const kit = new Toolkit(module);
  kit.setOptions(OPTIONS);
  return kit;
}
