import { XMLValidator } from 'fast-xml-parser';
import { beforeAll, describe, expect, it } from 'vitest';
import { notMeasured } from '../../src/base/index.js';
import type { PaperSize } from '../../src/page/index.js';
import { drawTakeReport } from '../../src/report/index.js';
import type { ResultFinding } from '../../src/result/index.js';
import { type InspectedPdf, inspectPdf } from '../helpers/pdf-tools.js';
import { resultOf, SAMPLE_FINDINGS, type SampleOptions, sampleReview } from '../helpers/sample-review.js';

const creationDate = new Date('2026-03-02T00:00:00Z');

function draw(options: SampleOptions = {}, paper: PaperSize = 'a4'): Promise<Uint8Array> {
  const { part, loudness, ...rest } = sampleReview(options);
  return drawTakeReport({
    result: resultOf({ part, ...rest }),
    part,
    loudness,
    paper,
    creationDate,
  });
}

const withoutSpaces = (text: string) => text.replace(/\s+/g, '');

/** Everything stays inside the page's margins; heights by the middle, as a music face's box is several lines high. */
function expectInsideMargins(pdf: InspectedPdf): void {
  for (const word of pdf.words) {
    expect([word.text, word.left >= 40, word.right <= word.pageWidth - 40]).toEqual([word.text, true, true]);
    const middle = (word.top + word.bottom) / 2;
    expect([word.text, middle >= 40, middle <= word.pageHeight - 24]).toEqual([word.text, true, true]);
  }
}

describe('a take’s pages', () => {
  let bytes: Uint8Array;
  let pdf: InspectedPdf;

  beforeAll(async () => {
    bytes = await draw({ title: 'Étude in B♭ <No. 2> & “Trio”', cautions: [{ code: 'rings-long', facts: {} }] });
    pdf = inspectPdf(bytes);
  });

  it('are a sound PDF of two pages, small enough to send', () => {
    expect(pdf.faults).toBe('');
    expect(pdf.pages).toBe(2);
    expect(bytes.length).toBeLessThan(200_000);
  });

  it('embed every face they use', () => {
    expect(pdf.fonts.length).toBeGreaterThanOrEqual(3);
    for (const font of pdf.fonts) expect(font).toMatchObject({ embedded: true });
    expect(pdf.fonts.map((font) => font.name).join()).not.toMatch(/Times|Helvetica|Courier|Symbol/);
  });

  // Source: ISO 14289-1 (PDF/UA-1), 7.1 (marked, title shown, dc:title, language) and 5 (identification).
  it('name their language and title, and say what they conform to', () => {
    expect(pdf.catalog['/Lang']).toBe('u:en');
    expect(pdf.title).toBe('Étude in B♭ <No. 2> & “Trio” – Ada Lindqvist');
    expect(XMLValidator.validate(pdf.metadata)).toBe(true);
    expect(pdf.metadata).toContain('<pdfuaid:part>1</pdfuaid:part>');
    expect(pdf.metadata).toContain('&lt;No. 2&gt; &amp;');
  });

  // Source: ISO 32000-1, 14.8.4; ISO 14289-1, 7.3 (figures), 7.4 (headings), 7.5 (tables).
  it('carry a structure: headings that skip no level, figures with a text, tables with heads', () => {
    const tags = pdf.elements.map((element) => element.tag);
    expect(pdf.elements[0]).toMatchObject({ tag: 'Document', parent: null });
    expect(tags.filter((tag) => tag === 'H1')).toHaveLength(1);
    const levels = tags.filter((tag) => /^H\d$/.test(tag)).map((tag) => Number(tag[1]));
    expect(levels[0]).toBe(1);
    for (const [i, level] of levels.slice(1).entries()) expect(level - (levels[i] as number)).toBeLessThanOrEqual(1);
    const figures = pdf.elements.filter((element) => element.tag === 'Figure');
    expect(figures).toHaveLength(2);
    for (const figure of figures) {
      expect(figure.alternative?.length).toBeGreaterThan(40);
      expect(figure.hasBox).toBe(true);
    }
    for (const head of pdf.elements.filter((element) => element.tag === 'TH'))
      expect(head.scope).toMatch(/^(Row|Column)$/);
    for (const cell of pdf.elements.filter((element) => /^T[HD]$/.test(element.tag))) expect(cell.parent).toBe('TR');
    for (const row of pdf.elements.filter((element) => element.tag === 'TR')) expect(row.parent).toBe('Table');
  });

  // Source: ISO 14289-1, 7.1: all content is tagged or marked as an artifact.
  it('leave nothing outside the structure but furniture', () => {
    expect(pdf.unmarked).toEqual([]);
  });

  it('describe the picture of loudness by its marks', () => {
    const figure = pdf.elements.find((element) => element.tag === 'Figure');
    expect(figure?.alternative).toMatch(/bars 1 to 24/);
    expect(figure?.alternative).toMatch(/p in bar 1: −\d+(\.\d)? dB/);
    expect(figure?.alternative).toMatch(/crescendo from bar 4 to bar 4: 4\.6 dB from end to end/);
    expect(figure?.alternative).toMatch(/diminuendo from bar 12 to bar 12: not measured/);
  });

  it('say what they have to say, in order', () => {
    const text = withoutSpaces(pdf.pageTexts.join(' '));
    const order = ['Whatwentwell', 'Thefirstthreethingstoworkon', 'Thewholetakeataglance', 'Bycriterion'];
    const places = [...order, 'Everythingelse', 'Abouttherecording', 'Whatwasnotmeasured', 'neverreplaceone'].map(
      (words) => text.indexOf(words),
    );
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    for (const finding of SAMPLE_FINDINGS) {
      for (const word of finding.text.split(' ')) expect(text).toContain(word.replace(/\s/g, ''));
    }
    expect(text).toContain('toofewnoteswereheardinit');
  });

  it('tell no finding twice', () => {
    const text = withoutSpaces(pdf.pageTexts.join(' '));
    for (const { text: said } of SAMPLE_FINDINGS.filter(({ text: words }) => words.length < 60)) {
      expect(text.split(withoutSpaces(said))).toHaveLength(2);
    }
  });

  it('are the same bytes every time, whatever was drawn in between', async () => {
    await draw({ bars: 3, title: 'Ж Ω another one', player: 'Ωmega' }, 'letter');
    const again = await draw({ title: 'Étude in B♭ <No. 2> & “Trio”', cautions: [{ code: 'rings-long', facts: {} }] });
    expect(Buffer.from(again).equals(Buffer.from(bytes))).toBe(true);
  });

  // Source: ISO 216 (A4 = 210 × 297 mm); ANSI/ASME Y14.1 (A = 8.5 × 11 in); 72 points to the inch.
  it('fit A4 and Letter', async () => {
    const letter = inspectPdf(await draw({}, 'letter'));
    expect(letter.pages).toBe(2);
    expect([letter.words[0]?.pageWidth, letter.words[0]?.pageHeight]).toEqual([8.5 * 72, 11 * 72]);
    expect(pdf.words[0]?.pageWidth).toBeCloseTo((210 / 25.4) * 72, 1);
    expect(pdf.words[0]?.pageHeight).toBeCloseTo((297 / 25.4) * 72, 1);
    expectInsideMargins(letter);
    expectInsideMargins(pdf);
  });
});

describe('pages at the limits', () => {
  const many = Array.from({ length: 40 }, (_, i): ResultFinding => {
    return {
      ...(SAMPLE_FINDINGS[i % 6] as ResultFinding),
      bar: `${2 * i + 1}`,
      index: 10 * i,
      text: `Finding number ${1000 + i} is told here.`,
    };
  });

  it('hold a part of 300 bars and 40 findings: every one is told, nothing is cut', async () => {
    const long = 'A title that goes on and on about “quotes”, B♭ and é, over more than a single line of the page';
    const pdf = inspectPdf(await draw({ bars: 300, findings: many, title: long, file: `${'x'.repeat(140)}.wav` }));
    const text = withoutSpaces(pdf.pageTexts.join(' '));
    for (let i = 0; i < 40; i++) expect(text).toContain(`Findingnumber${1000 + i}istoldhere`);
    expect(text).toContain(withoutSpaces(long));
    expect(text.match(/x{20,}/g)?.reduce((sum, part) => sum + part.length, 0)).toBeGreaterThanOrEqual(140);
    expect(pdf.elements.filter((element) => element.tag === 'Figure')).toHaveLength(14);
    expect(pdf.faults).toBe('');
    expectInsideMargins(pdf);
  });

  it('hold a part of one bar and no finding', async () => {
    const pdf = inspectPdf(await draw({ bars: 1, findings: [] }));
    expect(pdf.pages).toBe(1);
    expect(withoutSpaces(pdf.pageTexts.join())).toContain('Nothingstoodout');
    expectInsideMargins(pdf);
  });

  it('say what was not measured and why, and draw no tempo then', async () => {
    const { part, loudness, measurements, ...rest } = sampleReview();
    const reason = notMeasured('too-few-bars');
    const unmeasured = {
      ...measurements,
      recording: { ...measurements.recording, levelRiding: true },
      tempo: reason,
      levels: measurements.levels.map((level) => ({ ...level, levelDb: notMeasured('level-moved') })),
    };
    const bare = { ...part, dynamics: [], hairpins: [], dynamicEvents: [] };
    const result = resultOf({ ...rest, part: bare, measurements: unmeasured });
    const silence = { ...loudness, levelDb: loudness.levelDb.map(() => Number.NEGATIVE_INFINITY) };
    const pdf = inspectPdf(await drawTakeReport({ result, part: bare, loudness: silence, paper: 'a4', creationDate }));
    const text = withoutSpaces(pdf.pageTexts.join(' '));
    expect(text).toContain('Tempo:toofewbarswithsteadynotes.');
    expect(text).toContain('Thelevelunderpinbar1,thelevelundermfinbar5');
    expect(text).toContain('notyourplaying');
    expect(pdf.elements.filter((element) => element.tag === 'Figure')).toHaveLength(1);
    expect(pdf.faults).toBe('');
  });

  it('name the letters they cannot draw, say so, and keep the true name for readers', async () => {
    const pdf = inspectPdf(await draw({ player: 'தமிழ் ᚠ' }));
    const named = pdf.elements.find((element) => element.actualText?.includes('தமிழ் ᚠ'));
    expect(named?.tag).toBe('P');
    const text = withoutSpaces(pdf.pageTexts.join(' '));
    expect(text).toContain('[Tamilletters0BA4-0BAE-0BBF-0BB4-0BCD][otherletters16A0]');
    expect(text).toContain('standforletters');
    expect(text).toContain('npminstall@fontsource-variable/noto-serif-tamil.');
  });

  it('draw names in other scripts as they are', async () => {
    const pdf = inspectPdf(await draw({ player: '中村 さくら' }));
    expect(withoutSpaces(pdf.pageTexts[0] ?? '')).toContain('中村さくら');
    expect(pdf.pageTexts.join(' ')).not.toContain('stand for letters');
    expect(pdf.faults).toBe('');
  });

  it('draw names in Greek, Cyrillic and with accents as they are', async () => {
    const pdf = inspectPdf(await draw({ player: 'Žofie Ольга Ελένη Ó Súilleabháin' }));
    expect(withoutSpaces(pdf.pageTexts[0] ?? '')).toContain('ŽofieОльгаΕλένηÓSúilleabháin');
  });
});

describe('a take that was not reviewed', () => {
  it.each([
    ['other', 'does not fit the part'],
    ['nothing', 'could not be heard'],
  ] as const)('gets one kind page: %s', async (fit, words) => {
    const pdf = inspectPdf(await draw({ fit, cautions: [{ code: 'noisy', facts: {} }] }));
    const text = withoutSpaces(pdf.pageTexts.join(' '));
    expect(pdf.pages).toBe(1);
    expect(text).toContain(withoutSpaces(words));
    expect(text).toContain('Whattotry');
    expect(text).toContain('softnotesmaybelostinit');
    expect(text).not.toContain('Bycriterion');
    expect(pdf.elements.some((element) => element.tag === 'Figure')).toBe(false);
  });
});
