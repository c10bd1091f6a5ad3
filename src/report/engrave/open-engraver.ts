import type { VerovioToolkit } from 'verovio/esm';

/** Draws one document as SVG. */
export interface Engraver {
  /** all bars in one line that is never broken, at its natural width; each `note` with its id */
  readonly svg: string;
  /**
   * @param bar 0-based position of a bar
   * @returns SVG of this bar at the beginning of a line, with the clef and the key that hold there; null when it cannot be
   * engraved
   */
  readonly openingAt: (bar: number) => string | null;
}

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
/** Documents kept open; a run has a few scores. */
const MOST_OPEN = 8;

let toolkit: Promise<VerovioToolkit> | undefined;
/** What was opened, by its text, the latest last. */
const opened = new Map<string, Engraver>();

/**
 * Opens a document for engraving. The engraving program is loaded on first use, once a worker; it lays every document out
 * once, in a single line, from which excerpts are taken.
 *
 * @param musicXml the document as `engravingCopy` of the room `score` makes it
 * @returns what draws its bars; null when the engraving program does not accept the document
 *
 * Source: Verovio reference book, toolkit methods `loadData`, `select`, `redoLayout`, `renderToSVG`; option `breaks`.
 */
export async function openEngraver(musicXml: string): Promise<Engraver | null> {
  const known = opened.get(musicXml);
  if (known !== undefined) return known;
  toolkit ??= loadToolkit();
  const kit = await toolkit;
  const svg = attempted(() => drawn(kit, musicXml));
  if (svg === null) return null;
  const engraver: Engraver = { svg, openingAt: (bar) => attempted(() => drawn(kit, musicXml, bar)) };
  if (opened.size >= MOST_OPEN) opened.clear();
  opened.set(musicXml, engraver);
  return engraver;
}

/** The whole document in one line, or one bar by itself. */
function drawn(kit: VerovioToolkit, musicXml: string, bar?: number): string | null {
  kit.setOptions({ breaks: bar === undefined ? 'none' : 'auto' });
  kit.select(bar === undefined ? {} : { measureRange: `${bar + 1}` });
  const isRead = Boolean(kit.loadData(musicXml));
  return isRead && kit.getPageCount() === 1 ? kit.renderToSVG(1) : null;
}

/** A document the engraving program stumbles over costs its excerpts and nothing else. */
function attempted<T>(engrave: () => T): T | null {
  try {
    return engrave();
  } catch {
    toolkit = undefined;
    return null;
  }
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
