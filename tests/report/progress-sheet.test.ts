import { describe, expect, it } from 'vitest';
import type { Failure } from '../../src/base/index.js';
import type { PaperSize } from '../../src/page/index.js';
import { drawProgressSheet } from '../../src/report/index.js';
import type { FoundResult } from '../../src/weeks/index.js';
import { inspectPdf } from '../helpers/pdf-tools.js';
import { wholeSheet } from '../helpers/progress-of.js';
import { sampleReview } from '../helpers/sample-review.js';
import { atTempo, day, inBar, notJudged, takeOfWeeks } from '../helpers/weeks.js';

const { tool } = sampleReview();
const creationDate = new Date('2026-03-16T00:00:00Z');
const fault: Failure = { code: 'result-of-other-version', facts: { version: '7', tool: '', readVersion: 1 } };
const failures = [{ file: 'old/x.json', code: 'bad-result', fault }];

function draw(results: readonly FoundResult[], paper: PaperSize = 'a4'): Promise<Uint8Array> {
  const lost: never[] = [];
  return drawProgressSheet({ ...wholeSheet({ tool, results, lost, failures }), paper, creationDate });
}

const inWords = (text: string) => text.replace(/\s+/g, ' ');

const weeks = (player: string, count: number, faster = 1) =>
  Array.from({ length: count }, (_, i) => {
    const findings = i % 3 === 0 ? [inBar('3'), inBar('9')] : [inBar('9', 'watch')];
    return takeOfWeeks({ player, date: day(7 * i), findings, changed: atTempo(70 + faster * i) });
  });

describe('the progress sheet', () => {
  it('tells who moved, first the music, then the number', async () => {
    const pdf = inspectPdf(
      await draw([
        takeOfWeeks({ findings: [inBar('3')], changed: atTempo(80) }),
        takeOfWeeks({ date: day(14), changed: atTempo(99) }),
        takeOfWeeks({ player: 'Bo Ek', date: day(7) }),
      ]),
    );
    const text = inWords(pdf.pageTexts.join(' '));
    expect(text).toContain('The tempo has come nearer to the mark: 99 % of the mark (2 March: 80).');
    expect(text).toContain('Mended: the wrong note in bar 3. Better: tempo. Nothing is open.');
    expect(text).toContain('Goal for the next lesson: Play it through once, as at the audition.');
    expect(text).toContain('No take of this étude in the week of 9 March.');
    expect(text).toContain('The first take, with nothing to mend.');
    expect(text).toContain('These results support a panel; they never replace one.');
    expect(text).toContain('old/x.json');
    expect(text).not.toMatch(/\bp\s*[<=]\s*0?\.\d/);
    expect([pdf.faults, pdf.unmarked]).toEqual(['', []]);
    expect(pdf.title).toContain('Over the weeks');
    expect(pdf.fonts.every(({ embedded }) => embedded)).toBe(true);
  });

  it('says in words what its figures show', async () => {
    const pdf = inspectPdf(await draw([...weeks('Ada', 3, 10), ...weeks('Bo', 2)]));
    const figures = pdf.elements.filter(({ tag }) => tag === 'Figure').map(({ alternative }) => alternative);
    // Over the section the bars and what moved; for Ada the bars and what moved; for Bo the bars.
    expect(figures).toHaveLength(5);
    expect(figures.every((text) => text !== null && text.length > 20)).toBe(true);
    expect(figures.join(' ')).toContain('Tempo, % of the mark: 2 March 70, 9 March 80, 16 March 90 (better).');
    expect(figures.join(' ')).toContain('Bar 3, Another note was played: 2 Mar to fix, 9 Mar free, 16 Mar free');
    expect(pdf.elements.every(({ tag, hasBox }) => tag !== 'Figure' || hasBox)).toBe(true);
  });

  it('tells each player in one line first, then on a page of their own; one alone begins on the first page', async () => {
    const pdf = inspectPdf(await draw([...weeks('Ada', 3, 10), ...weeks('Bo', 2), takeOfWeeks({ player: 'Cy' })]));
    const [first, ...pages] = pdf.pageTexts.map(inWords);
    expect(first).toMatch(/Ada 3 Mended: the wrong note in bar 3\. Better: tempo\. Nearly there: /);
    expect(first).toMatch(/Cy 1 The first take, with nothing to mend\./);
    for (const name of ['Ada', 'Bo', 'Cy']) {
      const own = pages.filter((text) => text.startsWith(`${name} `));
      expect([name, own.length, own[0]?.includes('Goal for the next lesson: ')]).toEqual([name, 1, true]);
    }
    const alone = inspectPdf(await draw(weeks('Ada', 3, 10))).pageTexts.map(inWords);
    expect(alone[0]).toContain('Goal for the next lesson: Listen together: the wrong note in bar 9.');
    expect(alone.join(' ')).not.toContain('How everybody stands');
  });

  it('calls what was not judged so, with the reason', async () => {
    const changed = notJudged('tempo', 'not judged: below the tempo for practice');
    const pdf = inspectPdf(await draw([takeOfWeeks({ changed }), takeOfWeeks({ date: day(7), changed })]));
    const text = inWords(pdf.pageTexts.join(' '));
    expect(text).toContain('Tempo: not judged: below the tempo for practice.');
    expect(pdf.elements.filter(({ tag }) => tag === 'Figure')).toEqual([]);
  });

  it('holds 20 weeks, 20 players and long names, and nothing leaves the page or is cut', async () => {
    const long = 'Anne-Katharina Wilhelmine von der Lindenfels-Oberhausen';
    const results = [...weeks(long, 20), ...Array.from({ length: 19 }, (_, i) => weeks(`Player${100 + i}`, 2)).flat()];
    const pdf = inspectPdf(await draw(results, 'letter'));
    const text = inWords(pdf.pageTexts.join(' '));
    expect(text).toContain('20 takes on 20 days, 2 March to 13 July 2026');
    expect(text.split(long).length).toBeGreaterThan(1);
    for (let i = 0; i < 19; i++) expect(text).toContain(`Player${100 + i}`);
    expect(text).not.toContain('…');
    for (const word of pdf.words) {
      expect([word.text, word.left > 40, word.right < word.pageWidth - 40]).toEqual([word.text, true, true]);
      const middle = (word.top + word.bottom) / 2;
      expect([word.text, middle > 40, middle < word.pageHeight - 24]).toEqual([word.text, true, true]);
    }
  });

  it('shows several études each by itself', async () => {
    const { score } = takeOfWeeks().result;
    const other = { score: { ...score, sha256: 'ef'.repeat(32), title: 'Étude: The Weir' } };
    const pdf = inspectPdf(await draw([...weeks('Ada', 2), takeOfWeeks({ player: 'Ada', changed: other })]));
    const text = inWords(pdf.pageTexts.join(' '));
    expect(text).toContain('Étude: The Weir, Clarinet in B');
    expect(pdf.elements.filter(({ tag }) => tag === 'H1')).toHaveLength(1);
    expect(pdf.title).toBe('Over the weeks');
  });

  it('is the same bytes every time', async () => {
    const results = weeks('Ada', 2);
    expect(Buffer.from(await draw(results)).equals(Buffer.from(await draw(results)))).toBe(true);
  });
});
