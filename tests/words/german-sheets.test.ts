import { describe, expect, it } from 'vitest';
import type { Failure } from '../../src/base/index.js';
import { drawProgressSheet } from '../../src/report/index.js';
import {
  type SectionResult,
  sectionCsv,
  sectionRow,
  type TakeResult,
  toSectionResult,
} from '../../src/result/index.js';
import { MEASURE_IDS } from '../../src/standards/index.js';
import type { FoundResult, LostTake } from '../../src/weeks/index.js';
import { wordsIn } from '../../src/words/words-in.js';
import { ENGLISH_WORDS as ENGLISH, ENGLISH_OF_SHEETS } from '../helpers/english-words.js';
import { lix } from '../helpers/lix.js';
import { oneSheet } from '../helpers/one-sheet.js';
import { inspectPdf } from '../helpers/pdf-tools.js';
import { progressOf, wholeSheet } from '../helpers/progress-of.js';
import { resultOf, sampleReview } from '../helpers/sample-review.js';
import { atTempo, day, inBar, notJudged, takeOfWeeks } from '../helpers/weeks.js';

const creationDate = new Date('2026-03-16T00:00:00Z');
const { tool } = sampleReview();
const FAULT: Failure = { code: 'wav-ends-at-once', facts: { bytes: 10 } };
const GERMAN_MESSAGE = 'Die WAV-Datei endet nach 10 Bytes; die Aufnahme neu machen oder neu kopieren.';
const inOneLine = (text: string) => text.replace(/\s+/g, ' ');

/** Titles, names and files are what they are: these hold no word of either language that the tests look for. */
const SCORE = { title: 'Étude 3', file: 'etude.musicxml', part: 'Horn' };

function rows(language: 'en' | 'de') {
  const fits = [undefined, undefined, 'other', 'nothing'] as const;
  return fits.map((fit, i) => {
    const sample = sampleReview(fit === undefined ? {} : { fit, findings: [] });
    const result = resultOf({ ...sample, player: ['Ada', 'Bo', 'Cy', 'Di'][i] as string, language });
    const criteria = result.criteria.map((line) => ({ ...line, judged: line.criterion !== 'breath' || i > 0 }));
    return sectionRow(`x-${i}`, { ...result, criteria, score: { ...result.score, ...SCORE } });
  });
}

function section(language: 'en' | 'de', from: 'en' | 'de' = language): SectionResult {
  const failures = [{ file: 'x/y.wav', code: 'wav-damaged', fault: FAULT }];
  return toSectionResult({ tool, rows: rows(from), failures, language });
}

const drawnSection = async (document: SectionResult) =>
  inspectPdf(await oneSheet({ section: document, paper: 'a4', creationDate }));

describe('the section sheet in German', () => {
  // Source: BCP 47; ISO 14289-1, 7.2 (natural language).
  it('says that it is German, and has no English word left in text, bookmarks, title or what stands for its figures', async () => {
    const pdf = await drawnSection(section('de'));
    expect(pdf.catalog['/Lang']).toBe('u:de');
    expect([pdf.faults, pdf.unmarked]).toEqual(['', []]);
    const alternatives = pdf.elements.map(({ alternative }) => alternative ?? '');
    const all = [...pdf.pageTexts, ...alternatives, ...pdf.bookmarks.map(({ title }) => title), pdf.title].join(' ');
    expect(inOneLine(all)).not.toMatch(ENGLISH);
    expect(inOneLine(all)).not.toMatch(ENGLISH_OF_SHEETS);
    expect(all).not.toMatch(/undefined|NaN|\d\.\d(?!\.)/);
    const text = inOneLine(pdf.pageTexts.join(' '));
    expect(text).toContain('2. März 2026');
    expect(text).toContain('Takt 3');
    expect(text.replace(/- /g, '-')).toContain('endet nach 10 Bytes');
    expect(pdf.title).toBe('Étude 3 – Registerblatt');
  });

  it('breaks no word of its heads', async () => {
    const words = new Set((await drawnSection(section('de'))).words.map(({ text }) => text));
    for (const criterion of ['rhythm', 'articulation', 'intonation', 'continuity'] as const)
      expect(words).toContain(wordsIn('de').criterion(criterion));
  });

  it('is the same document, told again, whatever the language of the results', () => {
    expect(section('de', 'en')).toEqual(section('de'));
    expect(section('en', 'de')).toEqual(section('en'));
    const { takes, failures, language } = section('de', 'en');
    expect(language).toBe('de');
    expect(takes[2]?.notesAsWritten).toEqual({
      notMeasured: 'was gespielt wurde, passt nicht zu diesen Noten',
      code: 'other-part',
    });
    expect(takes[0]?.first[0]).toMatch(/^Takt 3, Schlag 2: /);
    expect(failures[0]?.message).toBe(GERMAN_MESSAGE);
  });

  it('keeps the heads and the words of the table that programs read', () => {
    const [heads, ...lines] = sectionCsv(section('de')).split('\r\n');
    const first = lines.find((line) => line.startsWith('x-0,'));
    expect(heads).toBe(sectionCsv(section('en')).split('\r\n')[0]);
    expect(first).toContain('not judged');
    expect(first).toContain('Takt 3, Schlag 2');
  });

  it('shows a message that nobody has translated as it is', () => {
    const fault: Failure = { code: 'told-before', facts: { said: 'quite another thing' } };
    const failures = [{ file: 'x.wav', code: 'x', fault }];
    expect(toSectionResult({ tool, rows: rows('de'), failures, language: 'de' }).failures[0]?.message).toBe(
      'quite another thing',
    );
  });
});

describe('what was not judged, on the section sheet', () => {
  it.each(['en', 'de'] as const)('is told from what was judged and is free: %s', async (language) => {
    const pdf = await drawnSection(section(language));
    const text = inOneLine(pdf.pageTexts.join(' '));
    // Ada's breathing is the only criterion that was not judged; Bo's was, and nothing was found.
    const rowOf = (who: string) =>
      new RegExp(`${who} +2\\.? \\p{L}+ 2026 ([^A-Z]*)`, 'u').exec(text)?.[1]?.trim() ?? '';
    expect(rowOf('Ada').split('–')).toHaveLength(2);
    expect(rowOf('Bo')).not.toContain('–');
    expect(rowOf('Bo')).toMatch(/ 0 0?/);
    const [note] = wordsIn(language).section.needsNotes([]);
    expect(note).toMatch(/0: .*–: /);
    expect(text).toContain(note);
  });
});

const gone: LostTake = {
  ...{ file: 'x/Ada.wav', scoreSha256: takeOfWeeks().result.score.sha256, player: 'Ada', date: day(9) },
  fault: FAULT,
};

/** Three players, with everything a sheet can tell: changes, gaps, what was not judged, repeats and failures. */
function weeks(language?: 'en' | 'de'): FoundResult[] {
  const slurred =
    language === 'de' ? 'nicht beurteilt: zum Üben alles gebunden' : 'not judged: all slurred for practice';
  const one = (player: string | null, after: number, changed: Partial<TakeResult>, bars: readonly string[] = []) => {
    const { result } = takeOfWeeks({
      player,
      date: day(after),
      findings: bars.map((bar) => inBar(bar)),
      changed,
    });
    const told = { ...result, ...(language === undefined ? {} : { language }), score: { ...result.score, ...SCORE } };
    return { file: `x/${after}-${player ?? 'q'}-${JSON.stringify(changed).length}.json`, result: told };
  };
  const twice = one('Ada', 0, atTempo(80), ['3', '9']);
  return [
    twice,
    { ...twice, file: 'y/2.json' },
    one('Ada', 0, atTempo(82), ['3']),
    one('Ada', 14, { ...atTempo(99), ...notJudged('articulation', slurred, 'brief-all-slurred') }, ['9']),
    one('Bo', 7, notJudged('articulation', slurred, 'brief-all-slurred'), ['9']),
    one('Bo', 14, { outcome: 'too-poor' }),
    one('Bo', 21, notJudged('articulation', slurred, 'brief-all-slurred')),
    one('Cy', 28, { outcome: 'not-this-score' }),
    one(null, 3, {}),
  ];
}

function progress(language: 'en' | 'de', from: 'en' | 'de' = language) {
  const failures = [{ file: 'x/9.json', code: 'bad-result', fault: { code: 'result-unread', facts: {} } as const }];
  return wholeSheet({ tool, language, results: weeks(from), lost: [gone], failures });
}

describe('the progress sheet in German', () => {
  it('says that it is German, and has no English word left', async () => {
    const pdf = inspectPdf(await drawProgressSheet({ ...progress('de'), paper: 'letter', creationDate }));
    expect(pdf.catalog['/Lang']).toBe('u:de');
    expect([pdf.faults, pdf.unmarked]).toEqual(['', []]);
    const alternatives = pdf.elements.map(({ alternative }) => alternative ?? '');
    const all = [...pdf.pageTexts, ...alternatives, ...pdf.bookmarks.map(({ title }) => title), pdf.title].join(' ');
    expect(inOneLine(all)).not.toMatch(ENGLISH);
    expect(inOneLine(all)).not.toMatch(ENGLISH_OF_SHEETS);
    expect(all).not.toMatch(/undefined|NaN|\d\.\d(?!\d*\.)/);
    const text = inOneLine(pdf.pageTexts.join(' '));
    for (const said of [
      'Das Tempo ist näher an der Vorgabe: 99 % der Vorgabe (2. März: 81).',
      'Bindungen: nicht beurteilt: zum Üben alles gebunden.',
      'Nicht gezählt, weil nicht deutlich genug zu hören: 16. März.',
      `die Aufnahme vom 11. März (x/Ada.wav: ${GERMAN_MESSAGE.slice(0, -1)}).`,
      '1,96 mal √2',
      'Das ist kein Ergebnis einer Aufnahme',
    ])
      expect(text).toContain(said);
  });

  it('is the same document, told again, whatever the language of the results', () => {
    const withoutFiles = (document: unknown) => JSON.stringify(document).replace(/"sha256":"[^"]*"/g, '');
    expect(withoutFiles(progress('de', 'en'))).toBe(withoutFiles(progress('de')));
    expect(withoutFiles(progress('en', 'de'))).toBe(withoutFiles(progress('en')));
  });

  it('leaves out what it cannot tell again, and says where it stands', () => {
    const changed = { language: 'de', ...notJudged('articulation', 'von Hand geändert') } as const;
    const document = progressOf({ tool, results: [takeOfWeeks({ changed })], lost: [], failures: [] });
    expect(JSON.stringify(document)).not.toContain('von Hand');
    expect(document.pieces[0]?.players[0]?.measures.find(({ measure }) => measure === 'slurs')?.days[0]?.value).toEqual(
      {
        notMeasured: 'the reason stands on the page of the take',
        code: 'told-there',
      },
    );
  });
});

describe('what a director reads in German', () => {
  const { labels, noise, told } = wordsIn('de').weeks;
  const changes = MEASURE_IDS.flatMap((measure) =>
    (['better', 'worse', 'different'] as const).map((verdict) =>
      told({ measure, verdict, fromDay: '2026-03-02', from: -12.5, to: 3 }),
    ),
  );

  it.each(changes)('%s', (sentence) => {
    expect(sentence).not.toMatch(ENGLISH);
    expect(sentence).toMatch(/^\p{Lu}[^:]+: .*3.*\(2\. März: −1[23](?:,5)?\)\.$/u);
  });

  // Björnsson 1968: 50 is plain non-fiction.
  it('is read without help', () => {
    const notes = [labels.standingsNote, labels.barsNote, labels.middleNote, labels.multiplesNote, labels.barsLegend];
    const section = wordsIn('de').section;
    const around = [
      labels.unplacedNote,
      ...section.needsNotes([]),
      ...section.needsNotes(['half', 'quarter']),
      section.whichBarsNote,
    ];
    for (const text of [changes.join(' '), notes.join(' '), noise(progress('de').progress).join(' '), around.join(' ')])
      expect([text, lix(text) <= 50]).toEqual([text, true]);
  });

  it('addresses nobody as a pupil', () => {
    const all = JSON.stringify([labels, wordsIn('de').section, wordsIn('de').smallPrint.teacher]);
    expect(all).not.toMatch(/\b(?:du|dir|dich|dein\p{L}*)\b/iu);
  });

  it('names short days as the locale data do', () => {
    // Source: Intl of the ECMAScript Internationalization API, with the data of the Unicode CLDR.
    const format = new Intl.DateTimeFormat('de-DE', { day: 'numeric', month: 'numeric', timeZone: 'UTC' });
    const long = new Intl.DateTimeFormat('de-DE', { day: 'numeric', month: 'long', timeZone: 'UTC' });
    for (const date of ['2026-03-02', '2026-12-31']) {
      expect(wordsIn('de').shortDay(date)).toBe(format.format(new Date(date)));
      expect(wordsIn('de').day(date)).toBe(long.format(new Date(date)));
    }
    expect(wordsIn('de').shortDay('soon')).toBe('soon');
  });
});
