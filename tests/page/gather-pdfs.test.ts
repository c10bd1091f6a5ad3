import { beforeAll, describe, expect, it } from 'vitest';
import { createTypesetter, drawPdf, gatherPdfs, Sheet, STYLES } from '../../src/page/index.js';
import { inspectPdf } from '../helpers/pdf-tools.js';

const typesetter = createTypesetter(() => '[other letters]');
const creationDate = new Date(Date.UTC(2026, 2, 2));

async function pagesOf(title: string, pages: number): Promise<{ title: string; bytes: Uint8Array }> {
  const sheet = new Sheet({ typesetter, paper: 'a4', title, foot: title });
  for (let page = 1; page <= pages; page++) {
    sheet.write('H1', `${title}, page ${page}`, STYLES.title);
    if (page < pages) sheet.ensure(sheet.fullHeight);
  }
  return { title, bytes: await drawPdf(sheet.finish(), creationDate) };
}

const gathering = { title: 'To print & to hand out', language: 'en', creationDate } as const;
let whole: Uint8Array = new Uint8Array();

beforeAll(async () => {
  const gathered = await gatherPdfs(
    [await pagesOf('Ada', 3), await pagesOf('李明华', 2), await pagesOf('Cleo', 1)],
    gathering,
  );
  whole = gathered.bytes;
  expect(gathered.sheets).toBe(4);
});

describe('documents gathered for printing on both sides', () => {
  it('begin on odd pages, so on sheets of their own', () => {
    const { pageTexts, bookmarks, faults } = inspectPdf(whole);
    expect(faults).toBe('');
    const firsts = pageTexts.map((text) => /(\S+), page (\d)/.exec(text)?.slice(1).join(' ') ?? '');
    expect(firsts).toEqual(['Ada 1', 'Ada 2', 'Ada 3', '', '李明华 1', '李明华 2', 'Cleo 1', '']);
    expect(bookmarks).toEqual([
      { title: 'Ada', depth: 0, page: 0 },
      { title: '李明华', depth: 0, page: 4 },
      { title: 'Cleo', depth: 0, page: 6 },
    ]);
  });

  // Source: ISO 32000-1, table 150 (Duplex)
  it('ask the printer for both sides, turned over the long edge', () => {
    const { catalog } = inspectPdf(whole);
    expect(catalog['/ViewerPreferences']).toMatchObject({ '/Duplex': '/DuplexFlipLongEdge', '/PrintScaling': '/None' });
  });

  it('keep their structure and say what they are', () => {
    const pdf = inspectPdf(whole);
    expect(pdf).toMatchObject({ marked: true, showsTitle: true, title: gathering.title, unmarked: [] });
    expect(pdf.metadata).toContain('<pdfuaid:part>1');
    expect(pdf.metadata).toContain('To print &amp; to hand out');
    expect(pdf.elements.filter(({ tag }) => tag === 'Part')).toHaveLength(3);
    expect(pdf.elements.filter(({ tag }) => tag === 'H1')).toHaveLength(6);
    expect(pdf.fonts.every(({ embedded }) => embedded)).toBe(true);
  });

  it('are the same bytes each time', async () => {
    const again = await gatherPdfs(
      [await pagesOf('Ada', 3), await pagesOf('李明华', 2), await pagesOf('Cleo', 1)],
      gathering,
    );
    expect(Buffer.from(again.bytes).equals(Buffer.from(whole))).toBe(true);
  });
});
