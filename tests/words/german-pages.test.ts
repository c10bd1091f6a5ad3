import { beforeAll, describe, expect, it } from 'vitest';
import type { Facts } from '../../src/judge/observed/observation.js';
import { drawTakeReport } from '../../src/report/index.js';
import type { TakeResult } from '../../src/result/index.js';
import { wordsIn } from '../../src/words/words-in.js';
import { ENGLISH_WORDS as ENGLISH } from '../helpers/english-words.js';
import { FACTS_AS_THEY_COME_UP } from '../helpers/facts.js';
import { lix } from '../helpers/lix.js';
import { type InspectedPdf, inspectPdf } from '../helpers/pdf-tools.js';
import { lineOf, saidOfKind } from '../helpers/said.js';
import { resultOf, SAMPLE_FINDINGS, type SampleOptions, sampleReview } from '../helpers/sample-review.js';

const words = wordsIn('de');
const KINDS = Object.keys(FACTS_AS_THEY_COME_UP) as (keyof Facts)[];

const spoken = (kind: keyof Facts, facts: unknown) => saidOfKind('de', kind, facts);

const reviewed = (options: SampleOptions = {}) => {
  const { part, loudness, ...rest } = sampleReview(options);
  return { part, loudness, result: resultOf({ part, ...rest, language: 'de' }) };
};

/** The sample's own reason, which no room says. */
const UNKNOWN_REASON = 'fewer than four notes of it could be measured';
/** What is measured in the sample is written by hand as well. */
const AS_JUDGED = { value: 92.1, unit: 'quarter notes a minute', expected: words.expected.about({ value: 96 }) };

/** The sample as a German review words it: its findings are written by hand in English. */
function sample(options: SampleOptions = {}) {
  const { part, loudness, result } = reviewed({ title: 'Die Fähre', player: 'Ada Lindqvist', ...options });
  const findings = result.findings.map((finding): TakeResult['findings'][number] => {
    const { text, practice } = spoken(finding.kind, FACTS_AS_THEY_COME_UP[finding.kind][0]);
    const { measured, ...rest } = finding;
    return { ...rest, text, practice, ...(measured === undefined ? {} : { measured: AS_JUDGED }) };
  });
  const criteria = result.criteria.map((line) => ({
    ...line,
    summary: lineOf('de', { code: 'played-through', facts: {} }),
  }));
  const german = { ...result, findings, criteria, score: { ...result.score, part: 'Klarinette in B' } };
  return { result: german, part, loudness };
}

function draw(options: SampleOptions = {}): Promise<Uint8Array> {
  return drawTakeReport({ ...sample(options), paper: 'a4', creationDate: new Date('2026-03-02T00:00:00Z') });
}

describe('the measure of reading', () => {
  // By hand: 6 words, 1 sentence, no long word; 5 words, 1 sentence, 2 long words (Fermate, Schläge): 5 + 40.
  it('is the formula', () => {
    expect(lix('Der Ton ist hier zu hoch.')).toBeCloseTo(6, 9);
    expect(lix('Zähl bei Fermate alle Schläge.')).toBeCloseTo(45, 9);
  });
});

describe('what a player reads in German', () => {
  const told = KINDS.flatMap((kind) =>
    FACTS_AS_THEY_COME_UP[kind].map((facts) => {
      const misreading = 'misreading' in facts ? facts.misreading : undefined;
      const { headline, why } = words.finding({ kind, misreading });
      const { text, practice } = spoken(kind, facts);
      const body = [text, why, practice, words.caption(kind) ?? ''].filter((one) => one !== '').join(' ');
      return { kind, headline, body };
    }),
  );

  it.each(told.map(({ kind, headline, body }) => [kind, headline, body] as const))(
    '%s: is German',
    (_, headline, body) => {
      expect(`${headline} ${body}`).not.toMatch(ENGLISH);
      expect(`${headline} ${body}`).not.toMatch(/undefined|NaN|["”]|\d\.\d/);
      expect(body).not.toMatch(/\b(?:Sie haben|Ihre|Ihnen)\b/);
    },
  );

  // Björnsson 1968: 40 is light fiction, 50 plain non-fiction. A single finding is short, so its figure scatters.
  it.each(told.map(({ kind, body }) => [kind, body] as const))('%s: is read without help at thirteen', (_, body) => {
    expect([body, lix(body) <= 50]).toEqual([body, true]);
  });

  it('is light as a whole', () => {
    expect(lix(told.map(({ body }) => body).join(' '))).toBeLessThanOrEqual(40);
    const around = [words.page.nothing, words.smallPrint.practice, words.smallPrint.panel, words.table.weights];
    const tries = Object.values(words.notReviewed).flatMap((page) => [page.what, ...page.tries]);
    expect(lix([...around, ...tries].join(' '))).toBeLessThanOrEqual(45);
  });
});

describe('a German page', () => {
  let pdf: InspectedPdf;
  let text: string;

  beforeAll(async () => {
    pdf = inspectPdf(await draw({ cautions: [{ code: 'noisy', facts: {} }] }));
    text = pdf.pageTexts.join('\n');
  });

  // Source: BCP 47; ISO 14289-1, 7.2 (natural language).
  it('says that it is German', () => {
    expect(pdf.catalog['/Lang']).toBe('u:de');
    expect(pdf.faults).toBe('');
  });

  it('has no English word left, in its text or in what stands for its figures', () => {
    const plain = text
      .replace(/\s+/g, ' ')
      .replaceAll(UNKNOWN_REASON, '')
      .replace(/\S+\.wav/g, '');
    expect(plain).not.toMatch(ENGLISH);
    for (const { alternative } of pdf.elements) expect(alternative ?? '').not.toMatch(ENGLISH);
  });

  it('has German headings, date, numbers and caution', () => {
    for (const heading of ['Was gelungen ist', 'Die ganze Aufnahme auf einen Blick', 'Nach Bereichen', 'Zur Aufnahme'])
      expect(text).toContain(heading);
    expect(text).toMatch(/\d,\d/);
    expect(text).not.toMatch(/\d\.\d/);
    expect(text).toContain('Rauschen');
  });

  it('cuts no word of its own: what is broken in narrow columns is broken at spaces', () => {
    const set = new Set(text.split(/\s+/));
    for (const { weight } of SAMPLE_FINDINGS) {
      if (weight === 'watch') expect(set).toContain(words.table.weight.watch);
    }
    for (const head of [words.table.toWatch, words.table.criterion]) expect(set).toContain(head);
  });

  it.each(['other', 'nothing'] as const)('speaks German about a take of which nothing is said: %s', async (fit) => {
    const page = inspectPdf(await draw({ fit, findings: [] }));
    expect(page.pageTexts.join(' ').replace(/\S+\.wav/g, '')).not.toMatch(ENGLISH);
    expect(page.catalog['/Lang']).toBe('u:de');
  });

  it('names letters that it cannot draw in German', async () => {
    const page = inspectPdf(await draw({ player: 'மீனா' }));
    expect(page.pageTexts.join(' ')).toContain('[tamilisch 0BAE-0BC0-0BA9-0BBE]');
  });
});

describe('a German result', () => {
  it('keeps its language, and tells reasons, cautions and what is expected in it', () => {
    const { result } = reviewed({ cautions: [{ code: 'noisy', facts: {} }] });
    expect(result.language).toBe('de');
    expect(result.recording.cautions).toEqual([
      'In der Aufnahme ist viel Rauschen: Leise Töne können darin untergehen.',
    ]);
    expect(reviewed({ fit: 'other' }).result.tempo).toEqual({
      notMeasured: 'was gespielt wurde, passt nicht zu diesen Noten',
      code: 'other-part',
    });
  });

  it('is English when nothing is asked for', () => {
    const { loudness: _, ...input } = sampleReview();
    expect(resultOf(input).language).toBe('en');
  });
});

describe('German numbers, dates and places', () => {
  // Source: Intl of the ECMAScript Internationalization API, with the data of the Unicode CLDR.
  it('are those of the Unicode locale data', () => {
    const format = new Intl.DateTimeFormat('de-DE', {
      day: 'numeric',
      month: 'long',
      year: 'numeric',
      timeZone: 'UTC',
    });
    for (let month = 0; month < 12; month++) {
      const date = new Date(Date.UTC(2026, month, 2 + month));
      expect(words.date(date.toISOString().slice(0, 10))).toBe(format.format(date));
    }
    expect(words.number(12.34, 1)).toBe(new Intl.NumberFormat('de-DE', { maximumFractionDigits: 1 }).format(12.34));
    expect(words.number(-3.5, 1)).toBe('−3,5');
  });

  it('name bars and beats', () => {
    const at = { kind: 'late-entry', bar: '12', pass: 1 } as const;
    expect(words.place({ ...at, beat: 2.5 })).toBe('Takt 12, Schlag 2½');
    expect(words.place({ ...at, beat: 1.2 })).toBe('Takt 12, nach Schlag 1');
    expect(words.place({ ...at, toBar: '14', pass: 2 })).toBe('Takt 12–14 (beim 2. Mal)');
    expect(words.place({ ...at, kind: 'tuning-off' })).toBe('Im Ganzen');
  });

  it('say what was measured', () => {
    expect(words.measured({ value: 24.6, unit: 'cents' })).toBe('25 Cent, etwa ein Viertel eines Halbtons');
    expect(words.measured({ value: 3.26, unit: 'times the written length', expected: '1,25 bis 3' })).toBe(
      '3,3-mal die notierte Länge; erwartet: 1,25 bis 3',
    );
    for (const unit of ['dB', '%', 's', 'cents', 'semitones', 'times the written length', 'quarter notes a minute'])
      expect(words.measured({ value: 2, unit })).not.toMatch(ENGLISH);
    expect(words.measured({ value: -1, unit: 'semitones' })).toBe('−1 Halbton');
    expect(words.measured({ value: -0.2, unit: 's' }, 'early-entry')).toBe('0,2 s zu früh');
    expect(words.measured({ value: -12, unit: '%' }, 'dragging')).toBe('12 % langsamer');
    expect(words.measured({ value: 38, unit: 'cents' }, 'note-out-of-tune')).toMatch(/^38 Cent zu hoch/);
  });
});
