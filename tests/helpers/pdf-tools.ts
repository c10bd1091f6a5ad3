import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A PDF object as qpdf's JSON (version 2) gives it: names begin with `/`, texts with `u:`, references end in ` R`. */
export type PdfValue = null | boolean | number | string | PdfValue[] | { [key: string]: PdfValue };

/** A PDF seen by independent programs: qpdf for objects, poppler for text and fonts. */
export interface InspectedPdf {
  readonly catalog: Record<string, PdfValue>;
  /** structure elements in reading order */
  readonly elements: readonly StructureElement[];
  /** whether the catalog says that the document is tagged, and that its title is shown instead of its file name */
  readonly marked: boolean;
  readonly showsTitle: boolean;
  /** entries of the outline in reading order, the first level is 0 */
  readonly bookmarks: readonly { readonly title: string; readonly depth: number; readonly page: number }[];
  readonly pages: number;
  /** text of each page in reading order of the page */
  readonly pageTexts: readonly string[];
  readonly fonts: readonly { readonly name: string; readonly embedded: boolean }[];
  /** words with their boxes in points from the page's top left corner */
  readonly words: readonly WordBox[];
  /** what `qpdf --check` says, empty when the file is sound */
  readonly faults: string;
  readonly metadata: string;
  readonly title: string;
  /** what can be pressed, page by page, in the order of the pages' own lists */
  readonly links: readonly LinkPlace[];
  /** operators that show text or paint outside any marked content */
  readonly unmarked: readonly string[];
}

export interface LinkPlace {
  readonly page: number;
  readonly address: string | null;
  /** what it says where it cannot be seen */
  readonly contents: string | null;
  /** structure type of the element it belongs to, by the tree that leads from annotations to elements */
  readonly belongsTo: string | null;
  /** left, bottom, right, top in points from the page's bottom left corner */
  readonly box: readonly number[];
}

export interface StructureElement {
  readonly tag: string;
  readonly depth: number;
  readonly parent: string | null;
  readonly alternative: string | null;
  readonly actualText: string | null;
  readonly scope: string | null;
  readonly hasBox: boolean;
}

export interface WordBox {
  readonly page: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly pageWidth: number;
  readonly pageHeight: number;
  readonly text: string;
}

/**
 * @param bytes a PDF file
 * @returns what qpdf and poppler find in it
 */
export function inspectPdf(bytes: Uint8Array): InspectedPdf {
  const folder = mkdtempSync(join(tmpdir(), 'takesheet-pdf-'));
  const file = join(folder, 'page.pdf');
  try {
    writeFileSync(file, bytes);
    const objects = readObjects(file);
    const find = (value: PdfValue | undefined): PdfValue => resolve(objects, value ?? null);
    const catalog = find((objects.get('trailer') as Record<string, PdfValue>)['/Root']) as Record<string, PdfValue>;
    const info = find((objects.get('trailer') as Record<string, PdfValue>)['/Info']) as Record<string, PdfValue>;
    const check = spawnSync('qpdf', ['--check', file], { encoding: 'utf8' });
    const pages = Number(/Pages:\s+(\d+)/.exec(run('pdfinfo', [file]))?.[1]);
    return {
      catalog,
      elements: readTree(find, catalog['/StructTreeRoot']),
      marked: (find(catalog['/MarkInfo']) as Record<string, PdfValue> | null)?.['/Marked'] === true,
      showsTitle:
        (find(catalog['/ViewerPreferences']) as Record<string, PdfValue> | null)?.['/DisplayDocTitle'] === true,
      bookmarks: readOutline(find, catalog),
      pages,
      pageTexts: Array.from({ length: pages }, (_, i) =>
        run('pdftotext', ['-f', `${i + 1}`, '-l', `${i + 1}`, '-layout', file, '-']),
      ),
      fonts: readFonts(run('pdffonts', [file])),
      words: readWords(run('pdftotext', ['-bbox', file, '-'])),
      faults: check.status === 0 ? '' : `${check.stdout}${check.stderr}`,
      metadata: run('pdfinfo', ['-meta', file]),
      title: textOf(find(info['/Title'])) ?? '',
      links: readLinks(find, catalog),
      unmarked: readPageContents(file).flatMap(unmarkedIn),
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function run(program: string, options: readonly string[]): string {
  return execFileSync(program, options, { encoding: 'utf8', maxBuffer: 2 ** 27, stdio: ['ignore', 'pipe', 'pipe'] });
}

function readObjects(file: string): Map<string, PdfValue> {
  const json = JSON.parse(run('qpdf', ['--json=2', '--json-key=qpdf', '--json-stream-data=none', file]));
  const [, objects] = json.qpdf as [unknown, Record<string, { value?: PdfValue; stream?: { dict: PdfValue } }>];
  return new Map(
    Object.entries(objects).map(([key, object]) => [
      key.replace(/^obj:/, ''),
      object.value ?? object.stream?.dict ?? null,
    ]),
  );
}

/** Content streams of the pages, decoded by qpdf. */
function readPageContents(file: string): string[] {
  const json = JSON.parse(run('qpdf', ['--json=2', '--json-stream-data=inline', '--decode-level=generalized', file]));
  const [, objects] = json.qpdf as [unknown, Record<string, { stream?: { data: string } }>];
  return (json.pages as { contents: string[] }[]).flatMap(({ contents }) =>
    contents.map((reference) =>
      Buffer.from(objects[`obj:${reference}`]?.stream?.data ?? '', 'base64').toString('latin1'),
    ),
  );
}

/** Path-painting, text-showing and marked-content operators, one a line. Source: ISO 32000-1, 8.5.3, 9.4.3, 14.6. */
function unmarkedIn(content: string): string[] {
  let depth = 0;
  return content.split('\n').filter((line) => {
    const operator = line.trim().split(/\s+/).at(-1) ?? '';
    if (/^(BDC|BMC)$/.test(operator)) depth += 1;
    if (operator === 'EMC') depth -= 1;
    return depth === 0 && /^(S|s|f|F|f\*|B|B\*|b|b\*|Tj|TJ|sh|Do)$/.test(operator);
  });
}

function resolve(objects: Map<string, PdfValue>, value: PdfValue): PdfValue {
  return typeof value === 'string' && / R$/.test(value) ? (objects.get(value) ?? null) : value;
}

function textOf(value: PdfValue | undefined): string | null {
  return typeof value === 'string' && value.startsWith('u:') ? value.slice(2) : null;
}

function readTree(find: (value: PdfValue | undefined) => PdfValue, root: PdfValue | undefined): StructureElement[] {
  const elements: StructureElement[] = [];
  const visit = (value: PdfValue, depth: number, parent: string | null): void => {
    const node = find(value);
    if (Array.isArray(node)) for (const child of node) visit(child, depth, parent);
    if (node === null || typeof node !== 'object' || Array.isArray(node)) return;
    const tag = typeof node['/S'] === 'string' ? node['/S'].slice(1) : null;
    if (tag !== null) {
      const attributes = (find(node['/A']) ?? {}) as Record<string, PdfValue>;
      const scope = attributes['/Scope'];
      elements.push({
        tag,
        depth,
        parent,
        alternative: textOf(node['/Alt']),
        actualText: textOf(node['/ActualText']),
        scope: typeof scope === 'string' ? scope.slice(1) : null,
        hasBox: Array.isArray(attributes['/BBox']),
      });
    }
    if (node['/K'] !== undefined) visit(node['/K'], depth + 1, tag ?? parent);
  };
  visit(root ?? null, 0, null);
  return elements;
}

/** Source: ISO 32000-1, 12.5.2, 12.6.4.7 and 14.7.4.4 (structure parents of annotations). */
function readLinks(find: (value: PdfValue | undefined) => PdfValue, catalog: Record<string, PdfValue>): LinkPlace[] {
  const dict = (value: PdfValue | undefined) => (find(value) ?? {}) as Record<string, PdfValue>;
  const parents = new Map<PdfValue, PdfValue>();
  const numbers = find(dict(dict(catalog['/StructTreeRoot'])['/ParentTree'])['/Nums']) as PdfValue[];
  for (let i = 0; i < numbers.length; i += 2) parents.set(numbers[i] ?? null, numbers[i + 1] ?? null);
  const pages = find(dict(catalog['/Pages'])['/Kids']) as PdfValue[];
  return pages.flatMap((one, page) =>
    ((find(dict(one)['/Annots']) ?? []) as PdfValue[]).map((annotation): LinkPlace => {
      const { '/A': action, '/Contents': contents, '/Rect': box, '/StructParent': key } = dict(annotation);
      const element = dict(parents.get(key ?? null));
      return {
        page,
        address: textOf(dict(action)['/URI']),
        contents: textOf(contents),
        belongsTo: typeof element['/S'] === 'string' ? element['/S'].slice(1) : null,
        box: find(box) as number[],
      };
    }),
  );
}

function readOutline(
  find: (value: PdfValue | undefined) => PdfValue,
  catalog: Record<string, PdfValue>,
): InspectedPdf['bookmarks'] {
  const kids = (find(catalog['/Pages']) as Record<string, PdfValue>)['/Kids'];
  const pages = find(kids) as PdfValue[];
  const found: { title: string; depth: number; page: number }[] = [];
  const visit = (first: PdfValue | undefined, depth: number): void => {
    for (let node = find(first); node !== null && typeof node === 'object' && !Array.isArray(node); ) {
      const [page] = find(node['/Dest']) as PdfValue[];
      found.push({ title: textOf(node['/Title']) ?? '', depth, page: pages.indexOf(page as PdfValue) });
      visit(node['/First'], depth + 1);
      node = find(node['/Next']);
    }
  };
  visit((find(catalog['/Outlines']) as Record<string, PdfValue> | null)?.['/First'], 0);
  return found;
}

function readFonts(listing: string): InspectedPdf['fonts'] {
  return listing
    .split('\n')
    .slice(2)
    .filter((line) => line.trim() !== '')
    .map((line) => {
      const [name = '', ...rest] = line.trim().split(/\s+/);
      return { name, embedded: rest.at(-5) === 'yes' };
    });
}

function readWords(html: string): WordBox[] {
  const words: WordBox[] = [];
  let [page, pageWidth, pageHeight] = [-1, 0, 0];
  for (const line of html.split('\n')) {
    const start = /<page width="([\d.]+)" height="([\d.]+)"/.exec(line);
    if (start !== null) [page, pageWidth, pageHeight] = [page + 1, Number(start[1]), Number(start[2])];
    const word = /<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*)<\/word>/.exec(line);
    if (word === null) continue;
    const [left, top, right, bottom] = word.slice(1, 5).map(Number) as [number, number, number, number];
    words.push({ page, left, right, top, bottom, pageWidth, pageHeight, text: word[5] as string });
  }
  return words;
}
