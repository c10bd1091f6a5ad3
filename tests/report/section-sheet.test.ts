import { describe, expect, it } from 'vitest';
import type { PaperSize } from '../../src/page/index.js';
import { drawSectionSheets } from '../../src/report/index.js';
import { type SectionResult, sectionRow, toSectionResult } from '../../src/result/index.js';
import { oneSheet } from '../helpers/one-sheet.js';
import { inspectPdf } from '../helpers/pdf-tools.js';
import { resultOf, SAMPLE_FINDINGS, type Sample, sampleReview } from '../helpers/sample-review.js';

const creationDate = new Date('2026-03-02T00:00:00Z');

function draw(count: number, bars = 24, paper: PaperSize = 'a4'): Promise<Uint8Array> {
  return oneSheet({ section: sectionOf(count, bars), paper, creationDate });
}

function sectionOf(count: number, bars = 24): SectionResult {
  const { tool } = sampleReview({ bars });
  const kinds = [0, 1, 2].map((kind) => {
    return sampleReview({ bars, findings: SAMPLE_FINDINGS.filter((_, k) => (kind + k) % 3 !== 0) });
  });
  const other = sampleReview({ bars, fit: 'other' });
  const rows = Array.from({ length: count }, (_, i) => {
    const sample = i === 2 ? other : (kinds[i % 3] as Sample);
    return sectionRow(`take-${i}`, resultOf({ ...sample, player: `Player${100 + i}` }));
  });
  const failures =
    count > 1
      ? [{ file: 'week 1/broken.wav', code: 'wav-damaged', fault: { code: 'wav-format-cut', facts: {} } as const }]
      : [];
  return toSectionResult({ tool, rows, failures });
}

describe('the section sheet', () => {
  it('shows who needs what, which bars, and what failed', async () => {
    const pdf = inspectPdf(await draw(9));
    const text = pdf.pageTexts.join(' ');
    for (let i = 0; i < 9; i++) expect(text).toContain(`Player${100 + i}`);
    expect(text.replace(/\s+/g, ' ')).toMatch(/Player102 .*does not fit the/);
    expect(text).toContain('week 1/broken.wav');
    expect(text).toMatch(/Bar 3, beat 2 +An accidental was misread +Notes +\d of 8/);
    expect(pdf.faults).toBe('');
    expect(pdf.unmarked).toEqual([]);
    expect(pdf.words[0]?.pageWidth).toBeGreaterThan(pdf.words[0]?.pageHeight ?? 0);
  });

  it('describes the map bar by bar', async () => {
    const figures = inspectPdf(await draw(4)).elements.filter((element) => element.tag === 'Figure');
    expect(figures).toHaveLength(1);
    expect(figures[0]?.alternative).toMatch(/Player101: bar 3 \(1 \/ 0\)/);
  });

  it('holds 64 takes of 150 bars: every take has its row, heads come again, nothing leaves the page', async () => {
    const bytes = await draw(64, 150, 'letter');
    const pdf = inspectPdf(bytes);
    const rows = pdf.elements.filter((element) => element.tag === 'TH' && element.scope === 'Row');
    expect(rows.length).toBeGreaterThanOrEqual(64);
    const headed = pdf.pageTexts.filter((text) => text.includes('Articulation') && text.includes('Continuity'));
    expect(headed.length).toBeGreaterThanOrEqual(3);
    for (const word of pdf.words) {
      expect([word.text, word.left > 40, word.right < word.pageWidth - 40]).toEqual([word.text, true, true]);
      const middle = (word.top + word.bottom) / 2;
      expect([word.text, middle > 40, middle < word.pageHeight - 24]).toEqual([word.text, true, true]);
    }
    expect(pdf.fonts.every((font) => font.embedded)).toBe(true);
    expect(bytes.length).toBeLessThan(500_000);
  });

  // 90 quarters are 60 dotted quarters: three eighths are a beat of six eighths (common practice).
  it('counts the beats of the metre where a result says them, quarters elsewhere', async () => {
    const takes = (['dotted-quarter', 'quarter', undefined] as const).map((countedIn, i) => {
      const result = resultOf(sampleReview({ player: `Player${i}` }));
      if ('notMeasured' in result.tempo) throw new Error('the sample has a tempo');
      const { countedIn: _, ...tempo } = { ...result.tempo, playedQuarterBpm: 90 };
      const counted = countedIn === undefined ? tempo : { ...tempo, countedIn };
      return sectionRow(`take-${i}`, { ...result, tempo: counted });
    });
    const section = toSectionResult({ tool: sampleReview().tool, rows: takes, failures: [] });
    expect(section.takes.map(({ playedQuarterBpm }) => playedQuarterBpm)).toEqual([90, 90, 90]);
    const text = inspectPdf(await oneSheet({ section, paper: 'a4', creationDate })).pageTexts.join(' ');
    expect(text).toContain('Beats are what the metronome counts in each part.');
    expect([0, 1, 2].map((i) => new RegExp(`Player${i} [^/]*\\d+ / \\d+ +(\\d+) `).exec(text)?.[1])).toEqual([
      '60',
      '90',
      '90',
    ]);
  });

  it.each([
    ['quarter', 'Beats are quarter notes.'],
    ['dotted-quarter', 'Beats are dotted quarters.'],
    ['half', 'Beats are half notes.'],
    [undefined, 'Beats are quarter notes.'],
  ] as const)('says which note a beat is (%s)', async (countedIn, said) => {
    const result = resultOf(sampleReview());
    if ('notMeasured' in result.tempo) throw new Error('the sample has a tempo');
    const { countedIn: _, ...tempo } = result.tempo;
    const row = sectionRow('take', { ...result, tempo: countedIn === undefined ? tempo : { ...tempo, countedIn } });
    const section = toSectionResult({ tool: sampleReview().tool, rows: [row], failures: [] });
    const text = inspectPdf(await oneSheet({ section, paper: 'a4', creationDate })).pageTexts.join(' ');
    expect(text).toContain(said);
  });

  it('has a map for each of several scores, with its own bars and takes', async () => {
    const rows = (['flute.musicxml', 'horn.musicxml'] as const).flatMap((file, i) =>
      [0, 1].map((k) => {
        const result = resultOf(sampleReview({ bars: i === 0 ? 24 : 12, player: `Player${i}${k}` }));
        return sectionRow(`take-${i}${k}`, { ...result, score: { ...result.score, file } });
      }),
    );
    const section = toSectionResult({ tool: sampleReview().tool, rows, failures: [] });
    const pdf = inspectPdf(await oneSheet({ section, paper: 'a4', creationDate }));
    const [flute, horn, ...others] = pdf.elements.filter(({ tag }) => tag === 'Figure');
    expect([flute?.alternative, horn?.alternative]).toEqual([
      expect.stringMatching(/bars 1 to 24\. Player00: bar 3 .*Player01: /),
      expect.stringMatching(/bars 1 to 12\. Player10: bar 3 .*Player11: /),
    ]);
    expect(others).toEqual([]);
    expect(flute?.alternative).not.toContain('Player1');
    const headings = pdf.bookmarks.map(({ title }) => title);
    expect(headings).toEqual(expect.arrayContaining(['Which bars: flute', 'Which bars: horn']));
    expect(pdf.faults).toBe('');
    const text = pdf.pageTexts.join(' ').replace(/\s+/g, ' ');
    expect(text).toMatch(/Bar 3, beat 2 \(flute\) An accidental was misread Notes 2 of 2/);
    expect(text).toContain('Player00, flute');
  });

  it('shows the latest take of each player, says what was not played, and asks nobody to rehearse what is mended', async () => {
    const { tool } = sampleReview();
    const of = (name: string, player: string, date: string, findings = SAMPLE_FINDINGS) =>
      sectionRow(name, { ...resultOf({ ...sampleReview({ findings }), player, date }) });
    const played = { played: 9, of: 24, stretches: [{ bar: '1', toBar: '9', pass: 1 }], restarts: 0 };
    const part = {
      ...resultOf({ ...sampleReview({ findings: [] }), player: 'Cy' }),
      played: { ...played, ending: 'broken-off' as const },
    };
    const cut = { ...part, take: { ...part.take, player: 'Di' }, played: { ...played, ending: 'cut-off' as const } };
    const rows = [
      ...[
        of('a1', 'Ada', '2026-03-02'),
        of('a2', 'Ada', '2026-03-09', []),
        of('b1', 'Bo', '2026-03-02'),
        of('b2', 'Bo', '2026-03-09'),
      ],
      ...[sectionRow('c', part), sectionRow('d', cut)],
    ];
    const section = toSectionResult({ tool, rows, failures: [] });
    expect(section.takes.map(({ latest }) => latest)).toEqual([false, true, false, true, true, true]);
    const text = inspectPdf(await oneSheet({ section, paper: 'a4', creationDate })).pageTexts.join(' ');
    expect(text).toContain('No place troubles more than one player.');
    expect(text.replace(/\s+/g, ' ')).toContain('2 older takes are in the list of results');
    expect(text).toMatch(/Cy \(9 of 24 bars\)/);
    expect(text.replace(/\s+/g, ' ')).toMatch(/Di \(cut off by/);
    expect(text.match(/9 March 2026/g)).toHaveLength(2);
  });

  it('holds a single take, and speaks of no section then', async () => {
    const pdf = inspectPdf(await draw(1));
    expect(pdf.pageTexts.join(' ')).not.toContain('To rehearse together');
    expect(pdf.pages).toBe(1);
  });

  it('is the same bytes every time', async () => {
    expect(Buffer.from(await draw(5)).equals(Buffer.from(await draw(5)))).toBe(true);
  });
});

describe('the section sheet of more takes than one holds', () => {
  it('goes on in further sheets, which list every take and failure once', async () => {
    const section = sectionOf(9);
    const texts: string[] = [];
    for await (const bytes of drawSectionSheets({ section, paper: 'a4', creationDate, mostLines: 4 })) {
      texts.push(inspectPdf(bytes).pageTexts.join(' ').replace(/\s+/g, ' '));
    }
    expect(texts).toHaveLength(3);
    for (let i = 0; i < 9; i += 1) {
      const where = texts.map((text) => text.includes(`Player${100 + i}`));
      // the first sheet also names players in its table of shared places
      expect(where.lastIndexOf(true)).toBe(Math.floor(i / 4));
    }
    expect(texts.map((text) => /Sheet (\d) of 3: (\S+) to (\S+)/.exec(text)?.slice(1))).toEqual([
      ['1', 'take-0', 'take-3'],
      ['2', 'take-4', 'take-7'],
      ['3', 'take-8', 'week'],
    ]);
    expect(texts.map((text) => text.includes('To rehearse together'))).toEqual([true, false, false]);
    expect(texts.map((text) => text.includes('week 1/broken.wav'))).toEqual([false, false, true]);
  });

  it('says nothing of sheets when there is one', async () => {
    expect(inspectPdf(await draw(9)).pageTexts.join(' ')).not.toContain('Sheet 1 of');
  });
});
