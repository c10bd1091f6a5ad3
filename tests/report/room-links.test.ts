import { beforeAll, describe, expect, it } from 'vitest';
import { gatherPdfs } from '../../src/page/index.js';
import { drawTakeReport } from '../../src/report/index.js';
import type { ResultFinding } from '../../src/result/index.js';
import { type InspectedPdf, inspectPdf } from '../helpers/pdf-tools.js';
import { resultOf, SAMPLE_FINDINGS, sampleReview } from '../helpers/sample-review.js';

const creationDate = new Date('2026-03-02T00:00:00Z');
const ROOM = { page: '../listen/index.html', take: 'ada & co #2' };

function draw(room?: typeof ROOM, findings: readonly ResultFinding[] = SAMPLE_FINDINGS): Promise<Uint8Array> {
  const { part, loudness, ...rest } = sampleReview({ findings });
  const result = resultOf({ part, ...rest });
  return drawTakeReport({ result, part, loudness, paper: 'a4', creationDate, ...(room === undefined ? {} : { room }) });
}

describe('places on a take’s pages', () => {
  let bytes: Uint8Array;
  let plain: InspectedPdf;
  let pdf: InspectedPdf;

  beforeAll(async () => {
    bytes = await draw(ROOM);
    [plain, pdf] = [inspectPdf(await draw()), inspectPdf(bytes)];
  });

  it('lead nowhere where there is no room', () => {
    expect(plain.links).toEqual([]);
    expect(plain.elements.map(({ tag }) => tag)).not.toContain('Link');
  });

  it('lead to the very bar of the take in the room', () => {
    const asked = pdf.links.map(({ address }) => {
      const url = new URL(address ?? '', 'file:///sheets/takes/ada.pdf');
      expect(url.pathname).toBe('/sheets/listen/index.html');
      // ISO 32000-1, 12.6.4.7: in signs of 7-bit ASCII
      expect(address).toMatch(/^[!-~]+$/);
      const said = new URLSearchParams(url.hash.slice(1));
      expect(said.get('take')).toBe(ROOM.take);
      return said.get('bar');
    });
    expect(asked.slice(0, 3)).toEqual(['3', '13', '9']);
    expect(asked.length).toBeGreaterThan(3);
    expect(inspectPdf(bytes).pages).toBe(plain.pages);
  });

  it('lead to several bars, to the second time, and for the take as a whole to the take', async () => {
    const [first] = SAMPLE_FINDINGS as [ResultFinding];
    const { index: _, beat: __, ...overBars } = first;
    const findings: ResultFinding[] = [
      { ...overBars, kind: 'rushing', criterion: 'tempo', bar: '5', toBar: '8', pass: 2 },
      { ...overBars, kind: 'tuning-off', criterion: 'intonation' },
    ];
    const { links } = inspectPdf(await draw(ROOM, findings));
    const asked = links.map(({ address }) => [...new URLSearchParams((address ?? '').split('#')[1])].slice(0, -1));
    expect(asked).toEqual([
      [
        ['bar', '5'],
        ['to', '8'],
        ['pass', '2'],
      ],
      [],
    ]);
  });

  // Source: ISO 14289-1 (PDF/UA-1), 7.18.1 and 7.18.5: links stand in Link elements and say in words where they lead.
  it('are links in the structure, with words for those who do not see them', () => {
    const elements = pdf.elements.filter(({ tag }) => tag === 'Link');
    expect(elements).toHaveLength(pdf.links.length);
    expect(new Set(elements.map(({ parent }) => parent))).toEqual(new Set(['H3', 'TH']));
    for (const { belongsTo, contents, box } of pdf.links) {
      expect(belongsTo).toBe('Link');
      expect(contents).toMatch(/^Hear it in the listening room: /);
      const [left = 0, bottom = 0, right = 0, top = 0] = box;
      expect(right - left).toBeGreaterThan(40);
      expect(top - bottom).toBeGreaterThan(9);
    }
    expect(elements.map(({ alternative }) => alternative)).toEqual(pdf.links.map(({ contents }) => contents));
  });

  it('lie over the words they stand for', () => {
    const [first] = pdf.links;
    const word = pdf.words.find(({ page, text }) => page === first?.page && text === 'Bar');
    const [left = 0, bottom = 0, right = 0, top = 0] = first?.box ?? [];
    expect(word?.left).toBeGreaterThanOrEqual(left - 1);
    expect(word?.right).toBeLessThan(right);
    const [above, below] = [(word?.pageHeight ?? 0) - (word?.top ?? 0), (word?.pageHeight ?? 0) - (word?.bottom ?? 0)];
    expect((above + below) / 2).toBeLessThan(top);
    expect((above + below) / 2).toBeGreaterThan(bottom);
  });

  it('leave everything else as it is', async () => {
    expect(pdf.faults).toBe('');
    expect(pdf.unmarked).toEqual([]);
    expect(pdf.pageTexts).toEqual(plain.pageTexts);
    expect(pdf.bookmarks).toEqual(plain.bookmarks);
    expect(await draw(ROOM)).toEqual(bytes);
  });

  it('are text alone on paper', async () => {
    const { bytes: printed } = await gatherPdfs([{ title: 'Ada', bytes }], {
      title: 'All',
      language: 'en',
      creationDate,
    });
    const whole = inspectPdf(printed);
    expect(whole.faults).toBe('');
    expect(whole.links).toEqual([]);
    expect(whole.elements.map(({ tag }) => tag)).not.toContain('Link');
    expect(whole.pageTexts.slice(0, pdf.pages)).toEqual(pdf.pageTexts);
  });
});
