import type { VerovioToolkit } from 'verovio/esm';

/** Draws bars of one document as SVG. */
export interface Engraver {
  /**
   * @param fromBar 0-based position of the first bar
   * @param toBar 0-based position of the last bar
   * @param widthUnits width of a system in units of the engraver, 180 to a staff space
   * @returns SVG of these bars, as many systems as they need, each `note` with its id; null when it cannot be engraved
   */
  readonly svgOf: (fromBar: number, toBar: number, widthUnits: number) => string | null;
  /** whether the document writes a time signature in this bar, counted from 0 */
  readonly printsTime: (bar: number) => boolean;
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
  breaks: 'auto',
  minLastJustification: 0.5,
  spacingLinear: 0.3,
  mnumInterval: 0,
  svgViewBox: true,
  svgRemoveXlink: true,
  xmlIdSeed: 1,
};

let toolkit: Promise<VerovioToolkit> | undefined;
/** The document the toolkit holds; it holds one at a time. */
let loaded: Engraver | undefined;
/** The text that was opened last, and what draws it. */
let latest: { readonly musicXml: string; readonly engraver: Engraver } | undefined;

/**
 * Opens a document for engraving. The engraving program is loaded on first use, once a worker; several documents may be
 * open, but going back and forth between them loads them anew each time; the one opened last is not loaded again.
 *
 * @param musicXml the document as `engravingCopy` of the room `score` makes it
 * @returns what draws its bars; null when the engraving program does not accept the document
 *
 * Source: Verovio reference book, toolkit methods `loadData`, `select`, `redoLayout`, `renderToSVG`.
 */
export async function openEngraver(musicXml: string): Promise<Engraver | null> {
  if (latest?.musicXml === musicXml) return latest.engraver;
  toolkit ??= loadToolkit();
  const kit = await toolkit;
  const load = (): boolean => attempted(() => Boolean(kit.loadData(musicXml))) ?? false;
  const timed = new Set(musicXml.split('<measure').flatMap((text, i) => (/<time[\s>]/.test(text) ? [i - 1] : [])));
  const engraver: Engraver = {
    printsTime: (bar) => timed.has(bar),
    svgOf: (fromBar, toBar, widthUnits) => {
      if (loaded !== engraver) {
        loaded = engraver;
        if (!load()) return null;
      }
      return attempted(() => {
        kit.setOptions({ pageWidth: Math.round(widthUnits / 10) });
        kit.select({ measureRange: `${fromBar + 1}-${toBar + 1}` });
        kit.redoLayout();
        return kit.getPageCount() === 1 ? kit.renderToSVG(1) : null;
      });
    },
  };
  loaded = engraver;
  if (!load()) return null;
  latest = { musicXml, engraver };
  return engraver;
}

/** A document the engraving program stumbles over costs its excerpts and nothing else. */
function attempted<T>(engrave: () => T): T | null {
  try {
    return engrave();
  } catch {
    loaded = undefined;
    latest = undefined;
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
