import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { applyBrief, readBrief } from '../../src/brief/index.js';
import { readDemoScore } from '../../src/demo/index.js';
import type { PaperSize } from '../../src/page/index.js';
import { drawStudySheet } from '../../src/report/index.js';
import { toStudyDocument } from '../../src/result/index.js';
import { engravingCopy, readPart } from '../../src/score/index.js';
import { type StudyPlan, studyPlan } from '../../src/study/index.js';
import { type InspectedPdf, inspectPdf } from '../helpers/pdf-tools.js';
import { attributes, note, scoreOf } from '../score/score-of.js';

const creationDate = new Date('2000-01-01T00:00:00Z');
const withoutSpaces = (text: string): string => text.replace(/\s+/g, '');

interface Drawn {
  readonly bytes: Uint8Array;
  readonly plan: StudyPlan;
}

async function draw(
  score: Uint8Array,
  paper: PaperSize = 'a4',
  page = '',
  musicXml = engravingCopy(score),
): Promise<Drawn> {
  const part = readPart(score);
  const brief = readBrief(page, part);
  const plan = studyPlan(part, brief);
  return { plan, bytes: await drawStudySheet({ plan, part: applyBrief(part, brief), musicXml, paper, creationDate }) };
}

/** Heights by the middle, as a music face's box is several lines high. */
function expectInsideMargins(pdf: InspectedPdf): void {
  for (const word of pdf.words) {
    expect([word.text, word.left >= 40, word.right <= word.pageWidth - 40]).toEqual([word.text, true, true]);
    const middle = (word.top + word.bottom) / 2;
    expect([word.text, middle >= 30, middle <= word.pageHeight - 24]).toEqual([word.text, true, true]);
  }
}

describe('a study sheet', () => {
  let drawn: Drawn;
  let pdf: InspectedPdf;
  let text = '';

  beforeAll(async () => {
    drawn = await draw(readDemoScore());
    pdf = inspectPdf(drawn.bytes);
    text = withoutSpaces(pdf.pageTexts.join(' '));
  });

  it('is a sound PDF of one to four pages, small enough to send', () => {
    expect(pdf.faults).toBe('');
    expect(pdf.pages).toBeLessThanOrEqual(4);
    expect(drawn.bytes.length).toBeLessThan(250_000);
  });

  it('embeds every face it uses', () => {
    for (const font of pdf.fonts) expect(font).toMatchObject({ embedded: true });
    expect(pdf.fonts.map((font) => font.name).join()).not.toMatch(/Times|Helvetica|Courier|Symbol/);
  });

  // Source: ISO 14289-1 (PDF/UA-1), 7.1 (title, language, all content tagged or artifact), 7.3 (figures), 7.4 (headings).
  it('is tagged: language, title, headings that skip no level, figures with a text and a box', () => {
    expect(pdf.catalog['/Lang']).toBe('u:en');
    expect(pdf.title).toBe('Étude: The Ferry at Low Tide – Study sheet');
    expect(pdf.unmarked).toEqual([]);
    const levels = pdf.elements.filter(({ tag }) => /^H\d$/.test(tag)).map(({ tag }) => Number(tag[1]));
    expect(levels[0]).toBe(1);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    for (const [i, level] of levels.slice(1).entries()) expect(level - (levels[i] as number)).toBeLessThanOrEqual(1);
    const figures = pdf.elements.filter(({ tag }) => tag === 'Figure');
    expect(figures.length).toBeGreaterThanOrEqual(5);
    for (const figure of figures) {
      expect(figure.alternative?.length).toBeGreaterThan(40);
      expect(figure.hasBox).toBe(true);
    }
  });

  it('says what it has to say, in order', () => {
    const headings = ['easilymisread', 'Wheretobreathe', 'Howloud', 'Tongueandslur', 'Cominginafterarest', 'Fermatas'];
    const places = [...headings, 'Howtopractiseit', 'Practisewithcare'].map((words) => text.indexOf(words));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });

  it('gives the reason of every trap and every step of practice', () => {
    // Signs come from the music face and margins stand beside the text, so words are looked for one by one.
    const document = toStudyDocument(drawn.plan, 'en') as Record<'traps' | 'practice', Record<string, string>[]>;
    const said = [...document.traps.map(({ reason }) => reason), ...document.practice.map(({ text }) => text)];
    for (const word of said.join(' ').split(' ')) {
      if (/^[\w,.;]+$/.test(word)) expect(text.toLowerCase()).toContain(word.toLowerCase());
    }
  });

  it('names the ringed notes in the text of its figures', () => {
    const figure = pdf.elements.find(({ alternative }) => alternative?.startsWith('Bars 3–5'));
    expect(figure?.alternative).toContain('B♮ in bar 4, B♭ in bar 5');
  });

  it('is the same bytes every time, whatever was drawn in between', async () => {
    await draw(scoreOf([attributes(1) + note('C5', 4)]), 'letter');
    expect(Buffer.from((await draw(readDemoScore())).bytes).equals(Buffer.from(drawn.bytes))).toBe(true);
  });

  // Source: ISO 216 (A4 = 210 × 297 mm); ANSI/ASME Y14.1 (A = 8.5 × 11 in); 72 points to the inch.
  it('fits A4 and Letter', async () => {
    const letter = inspectPdf((await draw(readDemoScore(), 'letter')).bytes);
    expect([letter.words[0]?.pageWidth, letter.words[0]?.pageHeight]).toEqual([8.5 * 72, 11 * 72]);
    expect(pdf.words[0]?.pageWidth).toBeCloseTo((210 / 25.4) * 72, 1);
    expectInsideMargins(letter);
    expectInsideMargins(pdf);
  });
});

describe('a study sheet at the limits', () => {
  it('has the teacher’s words first', async () => {
    const page = 'watch:\n  - { bar: 9, toBar: 10, reason: "Keep the triplets equal." }\ntempo: { quarterBpm: 80 }';
    const pdf = inspectPdf((await draw(readDemoScore(), 'a4', page)).bytes);
    const text = withoutSpaces(pdf.pageTexts[0] ?? '');
    expect(text).toContain('Keepthetripletsequal.');
    expect(text.indexOf('Keepthetriplets')).toBeLessThan(text.indexOf('easilymisread'));
    expect(text).toContain('at80quarternotesaminute;72to88isfine');
  });

  it('is written without excerpts when the part cannot be engraved', async () => {
    const pdf = inspectPdf((await draw(readDemoScore(), 'a4', '', 'no music')).bytes);
    expect(pdf.faults).toBe('');
    expect(pdf.elements.filter(({ tag }) => tag === 'Figure')).toHaveLength(1);
    expect(withoutSpaces(pdf.pageTexts.join(' '))).toContain('endedatthebarline');
  });

  it.each(['morning-round.musicxml', 'river-stones.musicxml', 'three-gates.xml'])('is written for %s', async (file) => {
    const { bytes } = await draw(readFileSync(join(import.meta.dirname, '../../fixtures/scores', file)));
    const pdf = inspectPdf(bytes);
    expect(pdf.faults).toBe('');
    expect(pdf.pages).toBeLessThanOrEqual(2);
    expectInsideMargins(pdf);
  });

  it('tells a part with problems what they are', async () => {
    const score = scoreOf([attributes(1) + note('G4', 4), note('A4', 5), note('B4', 4)]);
    const text = withoutSpaces(inspectPdf((await draw(score)).bytes).pageTexts.join(' '));
    expect(text).toContain('Bar2istoolong');
    expect(text).toContain('notempoismarked');
    expect(text).toContain('Thepartmarksnodynamics');
  });

  it('stays readable for a long part: some excerpts, the rest in words', async () => {
    const bars = Array.from({ length: 120 }, (_, i) => {
      const start = i === 0 ? attributes(1) : '';
      return start + (i % 4 === 0 ? note('F#4', 2, { accidental: 'sharp' }) + note('F#4', 2) : note('G4', 4));
    });
    const { bytes, plan } = await draw(scoreOf(bars));
    const pdf = inspectPdf(bytes);
    expect(plan.traps).toHaveLength(30);
    expect(pdf.elements.filter(({ alternative }) => alternative?.includes('rings'))).toHaveLength(10);
    expect(pdf.pages).toBeLessThanOrEqual(4);
    expectInsideMargins(pdf);
  });
});
