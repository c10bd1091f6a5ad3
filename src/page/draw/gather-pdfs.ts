import type { PDFContext, PDFDict, PDFDocument, PDFObject, PDFRef } from '@cantoo/pdf-lib';
import type { Language } from '../../base/index.js';
import { asXmlText } from './as-xml-text.js';

type Library = typeof import('@cantoo/pdf-lib');

/** Pages that belong together, as a document of their own. */
export interface Pages {
  /** what the bookmark to them says */
  readonly title: string;
  /** a PDF that `drawPdf` has drawn */
  readonly bytes: Uint8Array;
}

/** What is said of the whole. */
export interface Gathering {
  readonly title: string;
  readonly language: Language;
  /** goes into the file instead of the clock */
  readonly creationDate: Date;
}

/** Documents in one, to be printed on both sides. */
export interface Gathered {
  readonly bytes: Uint8Array;
  readonly sheets: number;
}

/**
 * Puts documents one after the other for printing on both sides of the paper: each begins on a sheet of its own, so that an
 * empty page follows one with an odd number of pages. Their structure and a bookmark to each are kept.
 *
 * @param documents in the order in which they are printed, at least one
 * @param gathering what is said of the whole
 * @returns one tagged PDF 1.7, and how many sheets of paper it takes; the same input gives the same bytes
 * @throws Error when a document is not a PDF
 *
 * Source: ISO 32000-1, 12.2 (Duplex), 14.7.4.4 (structure parents); ISO 14289-1 for what the whole must say of itself.
 */
export async function gatherPdfs(documents: readonly Pages[], gathering: Gathering): Promise<Gathered> {
  const library = await import('@cantoo/pdf-lib');
  const whole = await library.PDFDocument.create({ updateMetadata: false });
  const parts: GatheredPart[] = [];
  let pages = 0;
  for (const { title, bytes } of documents) {
    const source = await library.PDFDocument.load(bytes, { updateMetadata: false });
    const part = copied(library, source, whole, pages);
    parts.push({ title, ...part });
    pages += part.pages.length;
    if (pages % 2 === 1) {
      addEmptyPage(library, whole, source.getPage(0).getSize(), pages);
      pages += 1;
    }
  }
  describe(library, whole, gathering);
  addStructure(library, whole, parts);
  addBookmarks(library, whole, parts);
  const bytes = await whole.save({ useObjectStreams: true, updateFieldAppearances: false });
  return { bytes, sheets: pages / 2 };
}

interface CopiedPart {
  readonly pages: readonly PDFRef[];
  /** its structure, whole */
  readonly root: PDFRef;
  /** by page: what each piece of marked content belongs to */
  readonly parents: readonly (readonly [page: number, pieces: PDFObject])[];
}

interface GatheredPart extends CopiedPart {
  readonly title: string;
}

/** Structure is copied with its pages, so that both still speak of each other. */
function copied(library: Library, source: PDFDocument, whole: PDFDocument, before: number): CopiedPart {
  const { PDFName, PDFArray, PDFDict, PDFNumber, PDFObjectCopier } = library;
  const name = (text: string) => PDFName.of(text);
  const copier = PDFObjectCopier.for(source.context, whole.context);
  const tree = source.catalog.lookup(name('StructTreeRoot'), PDFDict);
  const root = tree.lookup(name('K'), PDFArray).get(0) as PDFRef;
  source.context.lookup(root, PDFDict).delete(name('P'));
  leaveLinksOut(library, source, root);
  const pages = source.getPages().map((page, i) => {
    page.node.set(name('StructParents'), PDFNumber.of(before + i));
    const ref = copier.copy(page.ref);
    const parent = whole.catalog.insertLeafNode(ref, before + i);
    whole.context.lookup(ref, PDFDict).set(name('Parent'), parent);
    return ref;
  });
  const numbers = tree.lookup(name('ParentTree'), PDFDict).lookup(name('Nums'), PDFArray);
  const parents = source.getPages().map((_, i) => [before + i, copier.copy(numbers.get(2 * i + 1))] as const);
  return { pages, root: copier.copy(root), parents };
}

/** On paper nothing leads anywhere: what was a link stays as the text it is. */
function leaveLinksOut({ PDFName, PDFArray, PDFDict }: Library, source: PDFDocument, root: PDFRef): void {
  const name = (text: string) => PDFName.of(text);
  for (const page of source.getPages()) page.node.delete(name('Annots'));
  const isReference = (kid: PDFObject): boolean => kid instanceof PDFDict && kid.get(name('Type')) === name('OBJR');
  const visit = (element: PDFDict): void => {
    const kids = element.lookup(name('K'));
    const all = kids instanceof PDFArray ? kids.asArray() : [];
    for (const kid of all.map((one) => source.context.lookup(one))) {
      if (kid instanceof PDFDict && kid.has(name('S'))) visit(kid);
    }
    if (element.get(name('S')) !== name('Link')) return;
    element.set(name('S'), name('Span'));
    element.delete(name('Alt'));
    const left = all.filter((one) => !isReference(source.context.lookup(one) as PDFObject));
    element.set(name('K'), source.context.obj(left as never));
  };
  visit(source.context.lookup(root, PDFDict));
}

function addEmptyPage(
  { PDFName, PDFPageLeaf }: Library,
  whole: PDFDocument,
  { width, height }: { readonly width: number; readonly height: number },
  at: number,
): void {
  const page = PDFPageLeaf.withContextAndParent(whole.context, whole.catalog.get(PDFName.of('Pages')) as PDFRef);
  page.set(PDFName.of('MediaBox'), whole.context.obj([0, 0, width, height]));
  page.setParent(whole.catalog.insertLeafNode(whole.context.register(page), at));
}

function describe(
  { PDFName, PDFString }: Library,
  whole: PDFDocument,
  { title, language, creationDate }: Gathering,
): void {
  const { catalog, context } = whole;
  whole.setTitle(title);
  whole.setCreationDate(creationDate);
  whole.setCreator('takesheet');
  catalog.set(PDFName.of('Lang'), PDFString.of(language));
  catalog.set(PDFName.of('MarkInfo'), context.obj({ Marked: true }));
  catalog.set(
    PDFName.of('ViewerPreferences'),
    context.obj({ DisplayDocTitle: true, Duplex: 'DuplexFlipLongEdge', PrintScaling: 'None', PickTrayByPDFSize: true }),
  );
  catalog.set(PDFName.of('PageMode'), PDFName.of('UseOutlines'));
  const metadata = context.stream(metadataText(title), { Type: 'Metadata', Subtype: 'XML' });
  catalog.set(PDFName.of('Metadata'), context.register(metadata));
}

/** Source: ISO 16684-1 (XMP); ISO 14289-1, 5. */
function metadataText(title: string): string {
  return `<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/" xmlns:dc="http://purl.org/dc/elements/1.1/">
<pdfuaid:part>1</pdfuaid:part>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${asXmlText(title)}</rdf:li></rdf:Alt></dc:title>
</rdf:Description></rdf:RDF></x:xmpmeta>
<?xpacket end="r"?>`;
}

function addStructure({ PDFName, PDFDict }: Library, whole: PDFDocument, parts: readonly GatheredPart[]): void {
  const { catalog, context } = whole;
  const tree = context.obj({ Type: 'StructTreeRoot' }) as PDFDict;
  const treeRef = context.register(tree);
  const document = context.obj({ Type: 'StructElem', S: 'Document', P: treeRef, K: parts.map(({ root }) => root) });
  const documentRef = context.register(document);
  for (const { root } of parts) {
    const part = context.lookup(root, PDFDict);
    part.set(PDFName.of('S'), PDFName.of('Part'));
    part.set(PDFName.of('P'), documentRef);
  }
  const parents = parts.flatMap((part) => part.parents);
  tree.set(PDFName.of('K'), context.obj([documentRef]));
  tree.set(PDFName.of('ParentTree'), context.register(context.obj({ Nums: parents.flat() } as never)));
  tree.set(PDFName.of('ParentTreeNextKey'), context.obj(Math.max(...parents.map(([page]) => page)) + 1));
  catalog.set(PDFName.of('StructTreeRoot'), treeRef);
}

function addBookmarks({ PDFName, PDFHexString }: Library, whole: PDFDocument, parts: readonly GatheredPart[]): void {
  const { catalog, context } = whole;
  const outline = context.nextRef();
  const refs = parts.map(() => context.nextRef());
  for (const [i, { title, pages }] of parts.entries()) {
    const entry = {
      Title: PDFHexString.fromText(title),
      Parent: outline,
      Dest: [pages[0] as PDFRef, 'Fit'],
      ...(i > 0 ? { Prev: refs[i - 1] as PDFRef } : {}),
      ...(i < refs.length - 1 ? { Next: refs[i + 1] as PDFRef } : {}),
    };
    context.assign(refs[i] as PDFRef, context.obj(entry));
  }
  const first = refs[0] as PDFRef;
  const last = refs.at(-1) as PDFRef;
  context.assign(outline, outlineIn(context, first, last, refs.length));
  catalog.set(PDFName.of('Outlines'), outline);
}

function outlineIn(context: PDFContext, first: PDFRef, last: PDFRef, count: number): PDFDict {
  return context.obj({ Type: 'Outlines', First: first, Last: last, Count: count });
}
