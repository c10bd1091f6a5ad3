import { describe, expect, it } from 'vitest';
import { CAUTIONS, type CodeTable, FAILURES, type FactShape, REASONS } from '../../src/base/index.js';
import { REMARKS } from '../../src/score/index.js';
import * as germanCautions from '../../src/words/de/cautions.js';
import * as germanFaults from '../../src/words/de/faults.js';
import * as germanReasons from '../../src/words/de/reasons.js';
import * as germanRemarks from '../../src/words/de/remarks.js';
import * as englishCautions from '../../src/words/en/cautions.js';
import * as englishFaults from '../../src/words/en/faults.js';
import * as englishReasons from '../../src/words/en/reasons.js';
import * as englishRemarks from '../../src/words/en/remarks.js';
import { cautionSaid, failureSaid, reasonSaid } from '../../src/words/index.js';
import { ENGLISH_WORDS as ENGLISH } from '../helpers/english-words.js';

type Facts = Readonly<Record<string, unknown>>;
type Saying = (facts: Facts) => string;
type Words = Readonly<Record<string, Saying>>;

const TABLES: readonly (readonly [what: string, table: CodeTable, english: unknown, german: unknown])[] = [
  ['reasons', REASONS, englishReasons.REASONS_IN_WORDS, germanReasons.REASONS_IN_WORDS],
  ['cautions', CAUTIONS, englishCautions.CAUTIONS_IN_WORDS, germanCautions.CAUTIONS_IN_WORDS],
  ['remarks', REMARKS, englishRemarks.REMARKS_IN_WORDS, germanRemarks.REMARKS_IN_WORDS],
  ['faults', FAILURES, englishFaults.FAULTS_IN_WORDS, germanFaults.FAULTS_IN_WORDS],
];

const CODES = TABLES.flatMap(([what, table, english, german]) =>
  Object.entries(table).map(([code, shapes]) => {
    return [what, code, shapes, (english as Words)[code] as Saying, (german as Words)[code] as Saying] as const;
  }),
);

/** Different facts of a kind. Letters of no word of either language, so that nothing is mistaken for a word. */
function factsOf(what: string, name: string, shape: FactShape): readonly unknown[] {
  if (typeof shape === 'object') return shape;
  if (name === 'step') return ['B', 'C'];
  const codes = what === 'reasons' ? ['no-note-heard', 'too-few-bars'] : ['file-missing', 'folder-for-file'];
  const kinds = {
    number: [7, 2, 1.5],
    numbers: [[1], [1, 2]],
    text: ['Xq', '', 'Zq'],
    texts: [['Xq', 'Zq'], [], ['Zq']],
    'yes-or-no': [true, false],
    code: codes.map((code) => ({ code, facts: {} })),
  };
  return kinds[shape];
}

/** Every choice of facts. */
function choicesOf(what: string, shapes: CodeTable[string]): Facts[] {
  return Object.entries(shapes).reduce<Facts[]>(
    (before, [name, shape]) =>
      before.flatMap((facts) => factsOf(what, name, shape).map((fact) => ({ ...facts, [name]: fact }))),
    [{}],
  );
}

/** Told where the language is known, and not in the table: words of an older result. */
const TOLD_ELSEWHERE = new Set(['told-there']);
/** What keeps its language: names of options, fields, files and formats, and what a system says. */
const TECHNICAL =
  /--[\w-]+|\bXq\b|\bZq\b|\.(?:musicxml|xml|mxl)\b|<[\w-]+>|MusicXML|blind-key\.csv|name: value|takesheet|\b(?:score-partwise|quarterBpm|tempo\.\w+|bar|beat|bpm|from|to|after|off|quarter|leastDb|leastTimes|mostTimes|watchCents|review)\b|„[^“]*“|D\. S\./g;

describe.each(CODES)('%s: %s', (what, code, shapes, english, german) => {
  const choices = choicesOf(what, shapes);

  it('is one printable line in both languages, and all is filled in', () => {
    for (const facts of choices) {
      for (const said of [english(facts), german(facts)]) {
        expect([facts, said]).toEqual([
          facts,
          expect.not.stringMatching(/[\p{Cc}\p{Zl}\p{Zp}\p{Cs}]|undefined|NaN|\[object/u),
        ]);
      }
      if (code !== 'told-before') expect(english(facts).length).toBeGreaterThan(5);
    }
  });

  it('tells each of its facts in both languages', () => {
    if (TOLD_ELSEWHERE.has(code)) return;
    for (const [name, shape] of Object.entries(shapes)) {
      for (const say of [english, german]) {
        const changes = choices.some((facts) =>
          factsOf(what, name, shape).some((fact) => say({ ...facts, [name]: fact }) !== say(facts)),
        );
        expect([name, changes]).toEqual([name, true]);
      }
    }
  });

  it('has no English word left in German', () => {
    for (const facts of choices) {
      const said = german(facts).replaceAll(TECHNICAL, '');
      expect(said).not.toMatch(ENGLISH);
    }
  });
});

describe('a remark on a part in German', () => {
  const said = germanRemarks.REMARKS_IN_WORDS;

  it('has German numbers, signs and names of notes', () => {
    expect(said['bar-too-long']({ bar: '7', quarters: 4.5, askedQuarters: 4 })).toBe(
      'Takt 7 ist zu lang: Er enthält 4,5 Viertel, die Taktart verlangt 4 Viertel.',
    );
    expect(said['sign-differs']({ bar: '3', step: 'B', octave: 4, sign: 'flat' })).toBe(
      'Takt 3: Das Zeichen bei h′ (Be) passt nicht zur Tonhöhe in der Datei; die Tonhöhe zählt.',
    );
    expect(said['other-voices']({ voice: '1', notes: 12 })).toBe(
      'Gelesen wird Stimme 1; 12 Noten stehen in anderen Stimmen oder Systemen.',
    );
  });
});

describe('a reason and a caution in German', () => {
  it('have all their facts', () => {
    expect(reasonSaid('de', { code: 'too-few-under-mark', facts: { mark: 'mf' } })).toBe(
      'zu wenige Noten unter mf waren zu hören',
    );
    const elsewhere = { code: 'sounds-elsewhere' } as const;
    expect([
      cautionSaid('de', { code: 'breaks-off', facts: { announcedSeconds: 42, heldSeconds: 17.3 } }),
      cautionSaid('de', { code: 'channels-empty', facts: { channels: [1], of: 2 } }),
      cautionSaid('de', { code: 'channels-empty', facts: { channels: [3, 4], of: 4 } }),
      cautionSaid('de', { code: 'damaged-samples', facts: { samples: 1 } }),
      cautionSaid('de', { code: 'damaged-samples', facts: { samples: 12 } }),
      cautionSaid('de', { code: 'packets-lost', facts: { packets: 1, seconds: [12.3] } }),
      cautionSaid('de', { code: 'packets-lost', facts: { packets: 3, seconds: [1, 12.3] } }),
      cautionSaid('de', { ...elsewhere, facts: { semitones: -2 } }),
      cautionSaid('de', { ...elsewhere, facts: { semitones: 12 } }),
    ]).toEqual([
      'Die Datei bricht ab: Sie sollte 42,0 s lang sein und ist 17,3 s lang.',
      'Leer und darum weggelassen: linker Kanal.',
      'Leer und darum weggelassen: Kanal 3, Kanal 4.',
      '1 beschädigter Abtastwert wurde durch Stille ersetzt.',
      '12 beschädigte Abtastwerte wurden durch Stille ersetzt.',
      '1 beschädigtes Stück wurde durch einen Augenblick Stille ersetzt, bei 12,3 s: Was dort gehört wurde, ist unsicher.',
      '3 beschädigte Stücke wurden durch einen Augenblick Stille ersetzt, bei 1,0 und 12,3 s: Was dort gehört wurde, ist unsicher.',
      'Die ganze Aufnahme klingt 2 Halbtöne tiefer als diese Noten. Vielleicht wurde aus den Noten für ein anderes Instrument gespielt. Alles andere hier ist in dieser Tonhöhe verglichen.',
      'Die ganze Aufnahme klingt eine Oktave höher als diese Noten. Alles andere hier ist in dieser Tonhöhe verglichen.',
    ]);
  });

  it('that an older result tells in its own words stays in that language', () => {
    const reason = { code: 'told-there', facts: { said: 'zu leise', language: 'de' } } as const;
    expect(reasonSaid('de', reason)).toBe('zu leise');
    expect(reasonSaid('en', reason)).toBe('the reason stands on the page of the take');
  });
});

describe('a fault that quotes a file', () => {
  it('is said on one printable line', () => {
    const said = failureSaid('en', { code: 'score-other-document', facts: { root: 'a\n\u001b[2Kb' } });
    expect(said).toBe('the document is <a \ufffd[2Kb>; <score-partwise> or <score-timewise> is needed');
  });
});
