import { describe, expect, it } from 'vitest';
import type { DrawingElement } from '../../src/page/drawing.js';
import type { PaperSize } from '../../src/page/index.js';
import { drawTakeReport } from '../../src/report/index.js';
import { layoutTakeReport } from '../../src/report/take/layout-take-report.js';
import { typesetterIn } from '../../src/report/typesetter-in.js';
import type { TakeResult } from '../../src/result/index.js';
import { type Part, readPart } from '../../src/score/index.js';
import { wordsIn } from '../../src/words/words-in.js';
import { findingAt, playedAsWritten } from '../helpers/marked-excerpts.js';
import { inspectPdf } from '../helpers/pdf-tools.js';
import { attributes, dynamic, note, scoreOf } from '../score/score-of.js';

const squeezed = (text: string): string => text.replace(/\s+/g, '');

/** Four quarters a bar; a mark in every fourth one when the part has dynamics. */
function partOf(bars: number, marked: boolean): Part {
  const quarters = ['C5', 'D5', 'E5', 'F5'].map((pitch) => note(pitch, 1, { type: 'quarter' })).join('');
  const marks = (i: number) => (marked && i % 4 === 0 ? dynamic(i % 8 === 0 ? 'p' : 'f') : '');
  return readPart(
    scoreOf(Array.from({ length: bars }, (_, i) => (i === 0 ? attributes(1) : '') + marks(i) + quarters)),
  );
}

const CRITERIA = [
  'notes',
  'rhythm',
  'tempo',
  'dynamics',
  'articulation',
  'breath',
  'intonation',
  'continuity',
  'sound',
] as const;

async function pagesOf(part: Part, paper: PaperSize, change: (result: TakeResult) => TakeResult = (result) => result) {
  const criteria = CRITERIA.map((criterion) => ({ criterion, judged: true, fix: 0, watch: 0, summary: 'as written' }));
  const result = change({ ...playedAsWritten(part), criteria });
  const seconds = 1 + 0.6 * 4 * part.bars.length;
  const levelDb = new Float32Array(Math.ceil(seconds / 0.02)).fill(-30);
  const creationDate = new Date('2026-03-02T00:00:00Z');
  return inspectPdf(
    await drawTakeReport({ result, part, loudness: { hopSeconds: 0.02, levelDb }, paper, creationDate }),
  );
}

describe.each(['a4', 'letter'] as const)('a take without findings, on %s', (paper) => {
  it('has one page, cautions and all', async () => {
    const pdf = await pagesOf(partOf(20, true), paper);
    expect(pdf.pages).toBe(1);
    expect(squeezed(pdf.pageTexts[0] ?? '')).toContain('Theseresultssupportapanel');
  });
});

describe('the table of criteria', () => {
  it.each([12, 18, 24, 30])('is in one piece, whatever stands before it (%d bars)', async (bars) => {
    const part = partOf(bars, true);
    const found = [findingAt(part, 'missed-note', 4), findingAt(part, 'missed-note', 9)];
    const pdf = await pagesOf(part, 'a4', (result) => ({ ...result, findings: found.slice(0, 1 + (bars % 4) / 2) }));
    const pagesWith = (text: string) => pdf.pageTexts.flatMap((page, i) => (squeezed(page).includes(text) ? [i] : []));
    expect(pagesWith('Bycriterion')).toHaveLength(1);
    expect(pagesWith('Continuity')).toEqual(pagesWith('Bycriterion'));
  });
});

describe('a last page', () => {
  // White is taken back only where that spares the page: with more to say, a second page comes and is used.
  it('is there as soon as there is something to stand on it', async () => {
    const part = partOf(20, true);
    const found = [4, 9, 20, 30, 40].map((index) =>
      findingAt(part, 'missed-note', index, { text: `Told at note ${index}.` }),
    );
    const pdf = await pagesOf(part, 'a4', (result) => ({ ...result, findings: found }));
    expect(pdf.pages).toBe(2);
    expect(squeezed(pdf.pageTexts[1] ?? '').length).toBeGreaterThan(500);
  });
});

/** What is written on a page, furniture left out. */
function textOn(page: number, { children }: DrawingElement): string {
  return children
    .flatMap((child) =>
      'tag' in child
        ? [textOn(page, child)]
        : child.page === page
          ? child.items.map((item) => (item.kind === 'text' ? item.text : ''))
          : [],
    )
    .join('');
}

describe('the cautions', () => {
  it('never have a page for themselves, however much is told', () => {
    const part = partOf(60, true);
    const typesetter = typesetterIn('en');
    const loudness = { hopSeconds: 0.02, levelDb: new Float32Array(5000).fill(-30) };
    const criteria = CRITERIA.map((criterion) => ({
      criterion,
      judged: true,
      fix: 0,
      watch: 0,
      summary: 'as written',
    }));
    const lastPages = Array.from({ length: 40 }, (_, count) => {
      const findings = Array.from({ length: count }, (_, i) =>
        findingAt(part, 'missed-note', 2 * i, { text: `Told ${i}.` }),
      );
      const result = { ...playedAsWritten(part), criteria, findings };
      const { root, pages } = layoutTakeReport({ result, part, loudness, paper: 'a4' }, typesetter, null);
      return textOn(pages - 1, root);
    });
    const begins = wordsIn('en').smallPrint.practice.slice(0, 20);
    expect(lastPages.every((text) => text.includes(begins))).toBe(true);
    expect(lastPages.filter((text) => text.startsWith(begins))).toEqual([]);
  });
});

describe('the whole take at a glance', () => {
  const words = wordsIn('en').glance;

  it('says in a sentence what was not heard, instead of rows without a curve', async () => {
    const part = partOf(200, true);
    const heard = part.notes.filter(({ barIndex }) => barIndex < 60).length;
    const pdf = await pagesOf(part, 'a4', (result) => ({
      ...result,
      notes: result.notes.map(({ onset: _, offset: __, playedMidi: ___, ...written }, i) =>
        i < heard ? (result.notes[i] as (typeof result.notes)[number]) : { ...written, status: 'left-out' as const },
      ),
    }));
    const told = squeezed(pdf.pageTexts.join(' '));
    // 200 bars are five rows of 40; the first two are heard
    expect(told).toContain(squeezed(words.notHeard(words.bars('81', '200'))));
    const curves = pdf.elements.filter(({ alternative }) => alternative?.startsWith('Loudness over'));
    expect(curves.map(({ alternative }) => /bars \d+ to \d+/.exec(alternative!)?.[0])).toEqual([
      'bars 1 to 40',
      'bars 41 to 80',
    ]);
  });

  it('keeps no room for marks that the part does not have, nor says what they would show', async () => {
    const [plain, marked] = [await pagesOf(partOf(8, false), 'a4'), await pagesOf(partOf(8, true), 'a4')];
    const heading = (pdf: typeof plain) => {
      const top = (word: string) => pdf.words.find(({ text }) => text === word)!.top;
      return top('criterion') - top('glance');
    };
    expect(heading(plain)).toBeLessThan(heading(marked) - 15);
    expect(squeezed(plain.pageTexts[0]!)).not.toContain('Heavylines');
    expect(squeezed(marked.pageTexts[0]!)).toContain('Heavylines');
  });

  it('says once why tempo was not measured', async () => {
    const pdf = await pagesOf(partOf(8, false), 'a4', (result) => ({
      ...result,
      tempo: { notMeasured: 'too few bars with steady notes', code: 'too-few-bars' },
      criteria: result.criteria.map((line) =>
        line.criterion === 'tempo'
          ? { ...line, summary: 'not measured: too few bars with steady notes', reason: { code: 'too-few-bars' } }
          : line,
      ),
    }));
    expect(pdf.bookmarks.map(({ title }) => title)).not.toContain('What was not measured');
  });
});
