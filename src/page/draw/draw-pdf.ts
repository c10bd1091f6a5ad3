import type { Drawing, DrawingElement, Item, PageMarks, PathItem, TextItem } from '../drawing.js';
import { INKS } from '../inks.js';
import { RIGHT_TO_LEFT } from '../right-to-left.js';
import { asXmlText } from './as-xml-text.js';
import { openFace } from './faces/faces.js';
import type { OpenFont } from './faces/open-font.js';
import { loadPdfKit } from './faces/pdf-kit.js';
import { type Bookmark, outlineOf } from './outline.js';
import { tracePath } from './trace-path.js';

/**
 * Draws a document as a tagged PDF 1.7 with embedded faces.
 *
 * @param drawing pages, structure and furniture as plain data
 * @param creationDate goes into the file instead of the clock, so that the same drawing gives the same bytes
 * @returns the PDF file
 *
 * Source: ISO 32000-1 (PDF 1.7); ISO 14289-1 (PDF/UA-1) for what the tags must hold.
 */
export async function drawPdf(drawing: Drawing, creationDate: Date): Promise<Uint8Array> {
  const doc = openDocument(drawing, creationDate, openFace('regular'));
  const bytes = collect(doc);
  for (let page = 0; page < drawing.pages; page++) doc.addPage();
  for (const marks of drawing.artifacts) {
    doc.switchToPage(marks.page);
    doc.markContent('Artifact', { type: 'Pagination' });
    drawItems(doc, marks.items);
    doc.endMarkedContent();
  }
  doc.addStructure(structure(doc, drawing.root));
  addOutline(doc, outlineOf(drawing.root));
  doc.end();
  return bytes;
}

function openDocument(drawing: Drawing, creationDate: Date, font: OpenFont): PDFKit.PDFDocument {
  const options = {
    autoFirstPage: false,
    bufferPages: true,
    size: [drawing.pageWidth, drawing.pageHeight],
    margin: 0,
    pdfVersion: '1.7',
    subset: 'PDF/UA',
    tagged: true,
    lang: drawing.language ?? 'en',
    displayTitle: true,
    font,
    info: { Title: drawing.title, CreationDate: creationDate, Creator: 'takesheet', Producer: 'PDFKit' },
  };
  const PDFDocument = loadPdfKit();
  const doc = new PDFDocument(options as unknown as PDFKit.PDFDocumentOptions);
  const endMetadata = doc.endMetadata.bind(doc);
  // PDFKit writes the title into the XML metadata as it stands, where & and < would break it
  doc.endMetadata = () => {
    doc.info.Title = asXmlText(drawing.title);
    endMetadata();
  };
  return doc;
}

/** Bookmarks for every heading; readers show them when asked, not by themselves. */
function addOutline(doc: PDFKit.PDFDocument, bookmarks: readonly Bookmark[]): void {
  const add = (parent: PDFKit.PDFOutline, { text, page, top, children }: Bookmark): void => {
    doc.switchToPage(page);
    // PDFKit counts the left edge from the right one
    const place = { top, left: doc.page.width, expanded: true };
    const item = parent.addItem(text, place);
    for (const child of children) add(item, child);
  };
  for (const bookmark of bookmarks) add(doc.outline, bookmark);
  (doc as unknown as { _root: { data: Record<string, string> } })._root.data.PageMode = 'UseNone';
}

function collect(doc: PDFKit.PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = [];
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    doc.on('error', reject);
  });
}

function structure(doc: PDFKit.PDFDocument, element: DrawingElement): PDFKit.PDFStructureElement {
  const children = element.children.map((child) =>
    'tag' in child ? structure(doc, child) : markedContent(doc, element.tag, child),
  );
  if (element.tag === 'Link') return linkElement(doc, element, children);
  const options = {
    ...(element.alternative === undefined ? {} : { alt: element.alternative }),
    ...(element.actualText === undefined ? {} : { actual: element.actualText }),
    ...(element.scope === undefined ? {} : { scope: element.scope }),
    ...(element.box === undefined ? {} : { bbox: element.box }),
  };
  return doc.struct(element.tag, options, children);
}

/** The link is a place on its page and an element of the structure, and both know of each other. */
function linkElement(
  doc: PDFKit.PDFDocument,
  { address = '', alternative = '', box = [0, 0, 0, 0], children }: DrawingElement,
  content: readonly (PDFKit.PDFStructureElement | PDFKit.PDFStructureContent)[],
): PDFKit.PDFStructureElement {
  const page = children.find((child): child is PageMarks => !('tag' in child))?.page ?? 0;
  const element = doc.struct('Link', { alt: alternative });
  for (const one of content) element.add(one);
  doc.switchToPage(page);
  const [left, top, right, bottom] = box;
  // PDFKit writes texts made as objects as texts, and others as names
  const options = { structParent: element, Contents: new String(alternative) };
  doc.link(left, top, right - left, bottom - top, address, options as unknown as PDFKit.Mixins.AnnotationOption);
  element.end();
  return element;
}

/** Drawn at once and marked by hand: a closure given to PDFKit would be marked on whatever page is current. */
function markedContent(doc: PDFKit.PDFDocument, tag: string, marks: PageMarks): PDFKit.PDFStructureContent {
  doc.switchToPage(marks.page);
  const content = doc.markStructureContent(tag);
  drawItems(doc, marks.items);
  doc.endMarkedContent();
  return content;
}

function drawItems(doc: PDFKit.PDFDocument, items: readonly Item[]): void {
  for (const item of items) {
    if (item.kind === 'text') drawText(doc, item);
    else drawPath(doc, item);
  }
}

function drawText(doc: PDFKit.PDFDocument, item: TextItem): void {
  const font = openFace(item.face);
  useFace(doc, font);
  doc.fontSize(item.size).fillColor(INKS[item.ink]);
  const draw = (): unknown => doc.text(item.text, item.x, item.baseline, { lineBreak: false, baseline: 'alphabetic' });
  if (spellsItself(font, item)) draw();
  else spelling(doc, item.text, draw);
}

/** Marks what is drawn with its text, between `BT` and `ET`, because PDFKit turns the page round for text alone. */
function spelling(doc: PDFKit.PDFDocument, actual: string, draw: () => unknown): void {
  const content = doc as unknown as { addContent?: (line: string) => unknown };
  const add = content.addContent?.bind(doc);
  content.addContent = (line) => {
    if (line === 'BT') doc.markContent('Span', { actual });
    add?.(line);
    if (line === 'ET') doc.endMarkedContent();
    return doc;
  };
  draw();
  delete content.addContent;
}

/**
 * Whether the glyphs, one after the other, give the letters of the text. In scripts that move letters about, or set marks
 * over them, they do not, and a reader needs the text beside them. From right to left readers put letters in order themselves.
 */
function spellsItself(font: OpenFont, { face, text }: TextItem): boolean {
  if (!face.startsWith('lent') || RIGHT_TO_LEFT.test(text)) return true;
  if (/\p{M}/u.test(text)) return false;
  const { glyphs } = font.layout(text);
  return String.fromCodePoint(...glyphs.flatMap(({ codePoints }) => codePoints)) === text;
}

/** A face is opened the first time a document uses it and found by its name from then on. */
function useFace(doc: PDFKit.PDFDocument, font: OpenFont): void {
  const known = (doc as unknown as { _fontFamilies: Record<string, unknown> })._fontFamilies[font.postscriptName];
  doc.font(known === undefined ? (font as unknown as string) : font.postscriptName);
}

function drawPath(doc: PDFKit.PDFDocument, item: PathItem): void {
  tracePath(doc, item.path);
  if (item.fill !== undefined) doc.fillColor(INKS[item.fill]);
  if (item.stroke !== undefined) {
    doc
      .lineWidth(item.width ?? 0.5)
      .strokeColor(INKS[item.stroke])
      .lineCap(item.cap ?? 'round')
      .lineJoin(item.cap === undefined ? 'round' : 'miter');
    if (item.dash === undefined) doc.undash();
    else doc.dash(item.dash[0], { space: item.dash[1] });
  }
  if (item.fill !== undefined && item.stroke !== undefined) doc.fillAndStroke();
  else if (item.fill !== undefined) doc.fill();
  else doc.stroke();
}
