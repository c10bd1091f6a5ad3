import { beforeAll, describe, expect, it } from 'vitest';
import { readDemoScore } from '../../src/demo/index.js';
import { engravePart } from '../../src/engrave/engrave-part.js';
import type { PaperSize } from '../../src/page/index.js';
import { drawTakeReport } from '../../src/report/index.js';
import type { TakeResult } from '../../src/result/index.js';
import type { ResultFinding } from '../../src/result/schema/take-result-schema.js';
import { engravingCopy, type Part, readPart } from '../../src/score/index.js';
import { findingAt, playedAsWritten } from '../helpers/marked-excerpts.js';
import { type InspectedPdf, inspectPdf } from '../helpers/pdf-tools.js';
import { attributes, note, scoreOf } from '../score/score-of.js';

const creationDate = new Date('2026-03-02T00:00:00Z');
const withoutSpaces = (text: string): string => text.replace(/\s+/g, '');

interface Page {
  readonly findings: (part: Part) => readonly ResultFinding[];
  readonly score?: Uint8Array;
  readonly paper?: PaperSize;
  readonly musicXml?: string;
  readonly title?: string;
  readonly player?: string;
}

async function draw({
  findings,
  score = readDemoScore(),
  paper = 'a4',
  musicXml,
  title,
  player,
}: Page): Promise<Uint8Array> {
  const part = readPart(score);
  const plain = playedAsWritten(part);
  const result: TakeResult = {
    ...plain,
    take: { ...plain.take, player: player ?? plain.take.player },
    score: { ...plain.score, title: title ?? plain.score.title },
    criteria: [{ criterion: 'notes', fix: 1, watch: 0, summary: '101 of 102 notes as written' }],
    findings: [...findings(part)],
  };
  const loudness = { hopSeconds: 0.02, levelDb: new Float32Array(3000).fill(-30) };
  const engraved = () => engravePart(musicXml ?? engravingCopy(score));
  return drawTakeReport({ result, part, loudness, paper, creationDate, engraved });
}

const three = (part: Part): ResultFinding[] => [
  findingAt(part, 'accidental', 20, {
    misreading: 'carried-past-barline',
    text: 'Here it is a B♭ again, you played B.',
  }),
  findingAt(part, 'missed-note', 48, { text: 'The D here was left out.' }),
  findingAt(part, 'fermata-long', 78, { measured: { value: 3.3, unit: 'times the written length' } }),
  findingAt(part, 'late-entry', 67, { measured: { value: 0.2, unit: 's' }, text: 'This one stands in the table.' }),
];

/** Everything stays inside the page's margins; heights by the middle, as a music face's box is several lines high. */
function expectInsideMargins(pdf: InspectedPdf): void {
  for (const word of pdf.words) {
    expect([word.text, word.left >= 40, word.right <= word.pageWidth - 40]).toEqual([word.text, true, true]);
    const middle = (word.top + word.bottom) / 2;
    expect([word.text, middle >= 30, middle <= word.pageHeight - 24]).toEqual([word.text, true, true]);
  }
}

describe('a take’s pages with excerpts', () => {
  let bytes: Uint8Array;
  let pdf: InspectedPdf;

  beforeAll(async () => {
    bytes = await draw({ findings: three });
    pdf = inspectPdf(bytes);
  });

  it('are a sound PDF with embedded faces, small enough to send', () => {
    expect(pdf.faults).toBe('');
    expect(bytes.length).toBeLessThan(400_000);
    for (const font of pdf.fonts) expect(font).toMatchObject({ embedded: true });
  });

  // Source: ISO 14289-1 (PDF/UA-1), 7.1 (marked, title shown, language), 7.2 (reading order by structure), 7.3, 7.4, 7.5.
  it('are read in order: headings that skip no level, figures with a text, tables with heads, language and title', () => {
    expect(pdf.catalog['/Lang']).toBe('u:en');
    expect(pdf.marked).toBe(true);
    expect(pdf.showsTitle).toBe(true);
    expect(pdf.title).toBe('Étude: The Ferry at Low Tide – Ada Lindqvist');
    expect(pdf.unmarked).toEqual([]);
    const levels = pdf.elements.filter(({ tag }) => /^H\d$/.test(tag)).map(({ tag }) => Number(tag[1]));
    expect(levels[0]).toBe(1);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    expect(levels.filter((level) => level === 3)).toHaveLength(3);
    for (const [i, level] of levels.slice(1).entries()) expect(level - (levels[i] as number)).toBeLessThanOrEqual(1);
    for (const head of pdf.elements.filter(({ tag }) => tag === 'TH')) expect(head.scope).toMatch(/^(Row|Column)$/);
    for (const table of ['Row', 'Column']) expect(pdf.elements.some(({ scope }) => scope === table)).toBe(true);
  });

  it('show each of the first three things in notes, after its heading, with a text that stands for it', () => {
    const figures = pdf.elements.filter(({ tag }) => tag === 'Figure');
    // three excerpts, loudness, tempo
    expect(figures).toHaveLength(5);
    for (const figure of figures) {
      expect(figure.hasBox).toBe(true);
      expect(figure.alternative?.length).toBeGreaterThan(40);
    }
    expect(figures[0]?.alternative).toContain('Here it is a B♭ again');
    for (const [i, element] of pdf.elements.entries()) {
      if (element.tag === 'H3') expect(pdf.elements[i + 1]?.tag).toBe('Figure');
    }
  });

  it('show in notes only what is told first', () => {
    const alternatives = pdf.elements.map(({ alternative }) => alternative ?? '').join(' ');
    expect(alternatives).not.toContain('This one stands in the table');
    expect(withoutSpaces(pdf.pageTexts.join(' '))).toContain('Thisonestandsinthetable.');
  });

  // Source: ISO 32000-1, 12.3.3; ISO 14289-1, 7.17.
  it('have a bookmark for every heading, on its page', () => {
    const headings = pdf.elements.filter(({ tag }) => /^H\d$/.test(tag));
    expect(pdf.bookmarks.map(({ depth }) => `H${depth + 1}`)).toEqual(headings.map(({ tag }) => tag));
    expect(pdf.bookmarks[0]).toEqual({ title: 'Étude: The Ferry at Low Tide', depth: 0, page: 0 });
    for (const { title, page } of pdf.bookmarks.filter(({ depth }) => depth < 2))
      expect(withoutSpaces(pdf.pageTexts[page] ?? '')).toContain(withoutSpaces(title));
  });

  it('are the same bytes every time, whatever was engraved in between', async () => {
    await draw({ findings: three, title: 'Another', paper: 'letter' });
    expect(Buffer.from(await draw({ findings: three })).equals(Buffer.from(bytes))).toBe(true);
  });

  it('tell the same in words where the part cannot be engraved', async () => {
    const plain = inspectPdf(await draw({ findings: three, musicXml: 'no music' }));
    expect(plain.elements.filter(({ tag }) => tag === 'Figure')).toHaveLength(2);
    for (const { text } of three(readPart(readDemoScore())))
      expect(withoutSpaces(plain.pageTexts.join(' '))).toContain(withoutSpaces(text));
  });
});

/** Words of the workshop that no player is told. Common practice of plain writing. */
const JARGON =
  /\b(?:RMS|dBFS|FFT|spectr\w+|confidence|threshold\w*|onset\w*|offset\w*|MIDI|envelope|algorithm\w*|median|percentile|outlier\w*|standard deviation|regression|signal\w*|frames?|align\w*|segment\w*|detect\w*|semitones? away|score-informed|null|undefined|NaN)\b/i;

describe('a player’s pages', () => {
  it('hold no word of the workshop, whatever was found', async () => {
    const kinds = ['hesitation', 'wrong-note', 'tuning-off', 'staccato-long', 'restart', 'dragging'] as const;
    const findings = (part: Part) => kinds.map((kind, i) => findingAt(part, kind, 3 * i + 4));
    const pdf = inspectPdf(await draw({ findings }));
    const text = [...pdf.pageTexts, ...pdf.elements.map(({ alternative }) => alternative ?? '')].join(' ');
    expect(JARGON.exec(text)?.[0]).toBeUndefined();
    expect('The onset was late').toMatch(JARGON);
  });

  it('name a later time through a repeat', async () => {
    const findings = (part: Part) => [findingAt(part, 'missed-note', 5, { pass: 2 })];
    expect(withoutSpaces(inspectPdf(await draw({ findings })).pageTexts[0] ?? '')).toContain('(secondtime)');
  });
});

describe('hard cases', () => {
  const bars = (count: number): Uint8Array =>
    scoreOf(
      Array.from({ length: count }, (_, i) => {
        const notes = ['C5', 'D5', 'E5', 'F5'].map((pitch) => note(pitch, 1, { type: 'quarter' })).join('');
        return (i === 0 ? attributes(1) : '') + notes;
      }),
    );

  it.each([
    ['Greek', 'Σπουδή στο ποτάμι', 'Ελένη Παππά', null],
    ['Cyrillic', 'Этюд у реки', 'Ольга Иванова', null],
    ['Chinese', '江上渡船', '李小明', null],
    ['Arabic', 'دراسة النهر', 'ليلى حداد', null],
    ['Tamil', 'ஆறு', 'மீனா', 'Tamilletters'],
    ['signs', 'Étude 🎵', 'Ada 🎷', '[sign]'],
  ])('titles and names in %s are drawn or named, never boxed', async (_, title, player, named) => {
    const pdf = inspectPdf(await draw({ findings: three, title, player }));
    const text = withoutSpaces(pdf.pageTexts[0] ?? '');
    expect(pdf.faults).toBe('');
    expect(pdf.title).toBe(`${title} – ${player}`);
    expect(pdf.bookmarks[0]?.title).toBe(title);
    if (named === null) expect(text).toContain(withoutSpaces(title));
    else {
      expect(text).toContain(named);
      expect(pdf.elements.some(({ actualText }) => actualText?.includes(title))).toBe(true);
    }
    expect(text).not.toMatch(/[\uFFFD■□]/);
    expectInsideMargins(pdf);
  });

  it.each(['a4', 'letter'] as const)(
    'forty findings, the longest names and 300 bars on %s: nothing is cut',
    async (paper) => {
      const findings = (part: Part) =>
        Array.from({ length: 40 }, (_, i) =>
          findingAt(part, i % 2 === 0 ? 'missed-note' : 'note-out-of-tune', 29 * i, {
            measured: { value: 30, unit: 'cents' },
            text: `Finding number ${1000 + i} is told here.`,
          }),
        );
      const title = `A very long title ${'that goes on '.repeat(14)}to its end`;
      const player = `Maximiliana ${'Wolfeschlegelsteinhausenbergerdorff-'.repeat(5)}Ó Súilleabháin`;
      const pdf = inspectPdf(await draw({ findings, score: bars(300), title, player, paper }));
      const text = withoutSpaces(pdf.pageTexts.join(' '));
      for (let i = 0; i < 40; i++) expect(text).toContain(`Findingnumber${1000 + i}istoldhere`);
      expect(text).toContain(withoutSpaces(title));
      expect(text).toContain('ÓSúilleabháin');
      expect(pdf.faults).toBe('');
      expectInsideMargins(pdf);
    },
  );

  it('one bar, and one thing to work on', async () => {
    const findings = (part: Part) => [findingAt(part, 'missed-note', 2)];
    const pdf = inspectPdf(await draw({ findings, score: bars(1) }));
    expect(pdf.pages).toBe(1);
    expect(pdf.elements.filter(({ tag }) => tag === 'Figure')).toHaveLength(3);
    expectInsideMargins(pdf);
  });

  it('one bar of ninety-six notes is drawn smaller rather than cut', async () => {
    const many = Array.from({ length: 96 }, () => note('C5', 1, { type: '32nd' })).join('');
    const score = scoreOf([attributes(8, 0, '12/4') + many]);
    const pdf = inspectPdf(await draw({ findings: (part) => [findingAt(part, 'missed-note', 90)], score }));
    expect(pdf.elements.filter(({ tag }) => tag === 'Figure')).toHaveLength(3);
    expectInsideMargins(pdf);
  });
});
